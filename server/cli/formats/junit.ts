import { groupBy } from '../../../shared/review/group-by';
import { escapeMarkup as xml } from '../../../shared/sheets/escape';
import type { PlacedFinding } from '../../report/placed-finding';
import { type CheckReport, type Failing, fails } from './check-report';

/**
 * JUnit's XML as build servers read it (there is no standard; the elements that all of them know): a
 * suite for each file, a failed case for each finding that fails the check, and a passed case for the
 * file itself, with what only warns as its output.
 */
export function junitReport({ files, findings, failing: by }: CheckReport): string {
    const byFile = groupBy(findings, ({ file }) => file);
    const failing = findings.filter(({ finding }) => fails(finding, by)).length;
    return [
        '<?xml version="1.0" encoding="UTF-8"?>',
        `<testsuites name="kerfbook check" tests="${failing + files.length}" failures="${failing}" errors="0">`,
        ...files.flatMap((file) => suite(file, byFile.get(file) ?? [], by)),
        '</testsuites>',
        '',
    ].join('\n');
}

function suite(file: string, findings: readonly PlacedFinding[], by: Failing): string[] {
    const failing = findings.filter(({ finding }) => fails(finding, by));
    const telling = findings.filter(({ finding }) => !fails(finding, by));
    const output = telling.length === 0 ? [] : [`<system-out>${xml(telling.map(line).join('\n'))}</system-out>`];
    return [
        `<testsuite name="${xml(file)}" tests="${failing.length + 1}" failures="${failing.length}" errors="0" skipped="0">`,
        `<testcase classname="${xml(file)}" name="read">${output.join('')}</testcase>`,
        ...failing.map(
            (placed) =>
                `<testcase classname="${xml(file)}" name="${xml(`${placed.finding.rule} at ${placed.line}:${placed.column}`)}">` +
                `<failure type="${xml(placed.finding.rule)}" message="${xml(placed.finding.message)}">${xml(line(placed))}</failure></testcase>`,
        ),
        '</testsuite>',
    ];
}

function line({ finding, file, line: at, column }: PlacedFinding): string {
    return `${file}:${at}:${column}: ${finding.severity}: ${finding.message}`;
}
