import { parseArgs } from 'node:util';
import type { Severity } from '../../shared/recipe/finding';
import { allFindings, type PlacedFinding, shortPath } from './all-findings';
import { openFiles, UsageError } from './open-files';

/** `kerfbook check`: the same findings as in the editor. Exit code 1 when there is an error, or with --strict a warning. */
export async function check(args: string[]): Promise<number> {
    const { values, positionals } = parseArgs({
        args,
        allowPositionals: true,
        options: { format: { type: 'string', default: 'text' }, strict: { type: 'boolean', default: false } },
    });
    if (values.format !== 'text' && values.format !== 'json') throw new UsageError('--format is text or json.');
    const { workshop, documents } = await openFiles(positionals);
    const all: PlacedFinding[] = [];
    for (const document of documents) all.push(...(await allFindings(workshop, document)));
    if (values.format === 'json') process.stdout.write(`${JSON.stringify(asJson(all, documents.map(shortPath)), null, 2)}\n`);
    else process.stdout.write(asText(all, documents.length));
    const count = counts(all);
    return count.error > 0 || (values.strict && count.warning > 0) ? 1 : 0;
}

/** `file:line:column: severity: message [rule]`, one a line, then what can be mended by a quick fix. */
function asText(all: readonly PlacedFinding[], files: number): string {
    const lines = all.flatMap(({ finding, file, line, column }) => [
        `${file}:${line}:${column}: ${finding.severity}: ${finding.message} [${finding.rule}]`,
        ...finding.fixes.slice(0, 1).map((fix) => `    to mend: ${fix.title}`),
    ]);
    const { error, warning, info, hint } = counts(all);
    const quiet = info + hint;
    const summary = `${plural(files, 'file')}: ${plural(error, 'error')}, ${plural(warning, 'warning')}${quiet > 0 ? `, ${plural(quiet, 'note')}` : ''}`;
    return `${[...lines, summary].join('\n')}\n`;
}

function asJson(all: readonly PlacedFinding[], files: readonly string[]): unknown {
    return {
        schema: 1,
        files,
        counts: counts(all),
        findings: all.map(({ finding, ...place }) => ({
            ...place,
            rule: finding.rule,
            severity: finding.severity,
            message: finding.message,
            related: finding.related.map((related) => ({
                message: related.message,
                uri: related.where.uri,
                offset: related.where.offset,
            })),
            fixes: finding.fixes.map((fix) => fix.title),
        })),
    };
}

function counts(all: readonly PlacedFinding[]): Record<Severity, number> {
    const sum: Record<Severity, number> = { error: 0, warning: 0, info: 0, hint: 0 };
    for (const { finding } of all) sum[finding.severity] += 1;
    return sum;
}

export function plural(count: number, word: string): string {
    return `${count} ${word}${count === 1 ? '' : 's'}`;
}
