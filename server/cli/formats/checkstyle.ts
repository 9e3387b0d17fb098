import type { Severity } from '../../../shared/recipe/finding';
import { groupBy } from '../../../shared/review/group-by';
import { escapeMarkup as xml } from '../../../shared/sheets/escape';
import type { CheckReport } from './check-report';

/** The XML that most build servers and review tools read (checkstyle 4.3's elements): an element for each file, one for each finding. */
export function checkstyleReport({ files, findings }: CheckReport): string {
    const byFile = groupBy(findings, ({ file }) => file);
    return [
        '<?xml version="1.0" encoding="UTF-8"?>',
        '<checkstyle version="4.3">',
        ...files.flatMap((file) => [
            `<file name="${xml(file)}">`,
            ...(byFile.get(file) ?? []).map(
                ({ finding, line, column }) =>
                    `<error line="${line}" column="${column}" severity="${levels[finding.severity]}" message="${xml(finding.message)}" source="kerfbook.${xml(finding.rule)}"/>`,
            ),
            '</file>',
        ]),
        '</checkstyle>',
        '',
    ].join('\n');
}

const levels: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'info', hint: 'info' };
