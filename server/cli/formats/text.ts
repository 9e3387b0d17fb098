import { oneLine } from '../../../shared/review/one-line';
import { type CheckReport, plural, taken, tally } from './check-report';

/** `file:line:column: severity: message [rule]`, one a line, then what can be mended by a quick fix. */
export function textReport(report: CheckReport): string {
    const lines = report.findings.flatMap(({ finding, file, line, column }) => [
        oneLine(`${file}:${line}:${column}: ${finding.severity}: ${finding.message} [${finding.rule}]`),
        ...finding.fixes.slice(0, 1).map((fix) => `    to mend: ${oneLine(fix.title)}`),
    ]);
    const also = taken(report);
    return `${[...lines, `${plural(report.files.length, 'file')}: ${tally(report.findings)}`, ...(also === '' ? [] : [also])].join('\n')}\n`;
}
