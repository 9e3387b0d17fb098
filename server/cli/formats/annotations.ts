import type { Severity } from '../../../shared/recipe/finding';
import { oneLine } from '../../../shared/review/one-line';
import type { CheckReport } from './check-report';

/**
 * Workflow commands, one a line: build services that know them put each finding beside its line. What is
 * escaped is a line's ends and `%`, and in properties `:` and `,` too.
 */
export function annotationsReport({ findings }: CheckReport): string {
    return findings
        .map(({ finding, file, line, column, endLine, endColumn }) => {
            const place = [
                `file=${property(file)}`,
                `line=${line}`,
                `endLine=${endLine}`,
                // Columns are read only within one line.
                ...(line === endLine ? [`col=${column}`, `endColumn=${endColumn}`] : []),
                `title=${property(finding.rule)}`,
            ];
            return `::${levels[finding.severity]} ${place.join(',')}::${data(finding.message)}\n`;
        })
        .join('');
}

const levels: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'notice', hint: 'notice' };

function data(text: string): string {
    return oneLine(text).replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function property(text: string): string {
    return data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
