import { groupBy } from '../../../shared/review/group-by';
import { oneLine } from '../../../shared/review/one-line';
import type { PlacedFinding } from '../../report/placed-finding';
import { type CheckReport, plural, taken, tally } from './check-report';

/**
 * `file:line:column: severity: message [rule]`, one a line, then what can be mended by a quick fix. What has one cause in
 * several files is told at the first of its places, where that is asked for.
 */
export function textReport(report: CheckReport): string {
    const groups = report.together === true ? byCause(report.findings) : report.findings.map((each) => [each]);
    const lines = groups.flatMap(([{ finding, file, line, column }, ...others]) => [
        oneLine(`${file}:${line}:${column}: ${finding.severity}: ${finding.message} [${finding.rule}]`),
        ...finding.fixes.slice(0, 1).map((fix) => `    to mend: ${oneLine(fix.title)}`),
        ...(others.length === 0 ? [] : [alsoAt(others)]),
    ]);
    const also = taken(report);
    return `${[...lines, `${plural(report.files.length, 'file')}: ${tally(report.findings)}`, ...(also === '' ? [] : [also])].join('\n')}\n`;
}

type Group = readonly [PlacedFinding, ...PlacedFinding[]];

/** From this many files on, what says the same is told once. */
const leastFiles = 3;
/** More other places than these are only counted. */
const mostPlaces = 4;

/** Findings of one rule with one cause: the place in another file that they lead to, or else the same words. */
function byCause(findings: readonly PlacedFinding[]): Group[] {
    const groups = [...groupBy(findings, causeOf).values()] as unknown as Group[];
    return groups.flatMap((group): Group[] =>
        new Set(group.map(({ file }) => file)).size >= leastFiles ? [group] : group.map((each): Group => [each]),
    );
}

function causeOf({ finding: { rule, message, severity }, file, related }: PlacedFinding): string {
    const elsewhere = related.find((place) => place.file !== file);
    return `${rule} ${severity} ${elsewhere === undefined ? message : `${elsewhere.file}:${elsewhere.line}`}`;
}

function alsoAt(others: readonly PlacedFinding[]): string {
    const files = new Set(others.map(({ file }) => file)).size;
    const shown = others.slice(0, mostPlaces).map(({ file, line }) => `${file}:${line}`);
    const more = others.length - shown.length;
    const places = `${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
    return oneLine(
        `    the same cause: ${plural(others.length, 'more finding')} in ${plural(files, 'other file')}: ${places}`,
    ).replace(/^/, '    ');
}
