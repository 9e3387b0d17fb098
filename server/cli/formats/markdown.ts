import { codeSpan, escapeMarkdown, spokenMarkdown, table } from '../../../shared/review/markdown';
import type { PlacedFinding } from '../../report/placed-finding';
import { type CheckReport, plural, tally } from './check-report';

/** Most findings in one summary: a pull request's comment holds about 65 000 characters, and nobody reads more. */
const mostRows = 60;

/** A summary for a pull request: what fails first, then every exception that was taken and every guess. */
export function markdownReport({ files, findings, notes }: CheckReport): string {
    const order = ['error', 'warning', 'info', 'hint'];
    const sorted = findings.toSorted((a, b) => order.indexOf(a.finding.severity) - order.indexOf(b.finding.severity));
    const shown = sorted.slice(0, mostRows);
    const allows = notes.flatMap(({ recipe, allows: list }) => list.map((allow) => ({ recipe, ...allow })));
    const guesses = notes.flatMap(({ recipe, guesses: list }) => list.map((title) => ({ recipe, title })));
    const pinned = notes.flatMap(({ recipe, pinned: list }) => list.map((each) => ({ recipe, ...each })));
    return [
        `## Kerfbook: ${tally(findings)} in ${plural(files.length, 'file')}`,
        '',
        ...table(['', 'where', 'what', 'rule'], shown.map(row)),
        ...(sorted.length > mostRows ? [`… and ${sorted.length - mostRows} more.`, ''] : []),
        ...list(
            `Allowed: ${plural(allows.length, 'exception')}`,
            allows.map(
                ({ recipe, rule, reason, title }) =>
                    `${codeSpan(rule)} in ${codeSpan(recipe)}${title === undefined ? '' : `, ${escapeMarkdown(title)}`}: ${reason === '' ? '*no reason given*' : escapeMarkdown(reason)}`,
            ),
        ),
        ...list(
            `Guessed: ${plural(guesses.length, 'setting')} without a coupon`,
            guesses.map(({ recipe, title }) => `${codeSpan(recipe)}, ${escapeMarkdown(title)}`),
        ),
        ...(pinned.length === 0 ? [] : [`### Pinned: ${plural(pinned.length, 'setting')}`, '']),
        ...table(
            ['recipe', 'step', 'setting', 'pinned', 'solving would give'],
            pinned
                .slice(0, mostRows)
                .map(({ recipe, title, setting, written, solved }) => [
                    codeSpan(recipe),
                    escapeMarkdown(title),
                    setting,
                    escapeMarkdown(written),
                    escapeMarkdown(solved),
                ]),
        ),
        ...(pinned.length > mostRows ? [`… and ${pinned.length - mostRows} more.`, ''] : []),
    ].join('\n');
}

function row({ finding, file, line }: PlacedFinding): string[] {
    return [finding.severity, codeSpan(`${file}:${line}`), spokenMarkdown(finding.message), codeSpan(finding.rule)];
}

function list(title: string, items: readonly string[]): string[] {
    if (items.length === 0) return [];
    const shown = items.slice(0, mostRows).map((item) => `- ${item}`);
    return [`### ${title}`, '', ...shown, ...(items.length > mostRows ? [`- … and ${items.length - mostRows} more`] : []), ''];
}
