import { oneLine } from '../../../shared/review/one-line';
import type { PlacedFinding } from '../../report/placed-finding';
import { type CheckReport, plural, taken, tally } from './check-report';

/** `file:line:column: severity: message [rule]`, one a line, then what can be mended by a quick fix, and what follows from it. */
export function textReport(report: CheckReport): string {
    return asText(report, report.findings.map(findingLines));
}

export function findingLines({ finding, related, file, line, column }: PlacedFinding): string[] {
    return [
        oneLine(`${file}:${line}:${column}: ${finding.severity}: ${finding.message} [${finding.rule}]`),
        ...finding.fixes.slice(0, 1).map((fix) => `    to mend: ${oneLine(fix.title)}`),
        ...related
            .filter(({ rule }) => rule !== undefined)
            .map(
                (also) =>
                    `    it follows: ${oneLine(`${also.file}:${also.line}:${also.column}: ${also.message} [${also.rule}]`)}`,
            ),
    ];
}

/** @param lines of the findings */
export function asText(report: CheckReport, lines: readonly (readonly string[])[]): string {
    const also = taken(report);
    return `${[...lines.flat(), `${plural(report.files.length, 'file')}: ${tally(report.findings)}`, ...(also === '' ? [] : [also])].join('\n')}\n`;
}
