import { groupBy } from '../../../shared/review/group-by';
import type { PlacedFinding } from '../../report/placed-finding';
import { plural } from './check-report';

/** Findings of one cause, the one that is told first. */
export type Group = readonly [PlacedFinding, ...PlacedFinding[]];

/** From this many files on, what says the same is told once. */
const leastFiles = 3;
/** More other places than these are only counted. */
const mostPlaces = 4;

/** Findings of one rule with one cause: the place in another file that they lead to, or else the same words. */
export function byCause(findings: readonly PlacedFinding[]): Group[] {
    const groups = [...groupBy(findings, causeOf).values()] as unknown as Group[];
    return groups.flatMap((group): Group[] =>
        new Set(group.map(({ file }) => file)).size >= leastFiles ? [group] : group.map((each): Group => [each]),
    );
}

function causeOf({ finding: { rule, message, severity }, file, related }: PlacedFinding): string {
    const elsewhere = related.find((place) => place.file !== file);
    return `${rule} ${severity} ${elsewhere === undefined ? message : `${elsewhere.file}:${elsewhere.line}`}`;
}

/** "the same cause: 14 more findings in 14 other files: a.kerf:33, …"; nothing where there are no others. */
export function othersOf([, ...others]: Group): string[] {
    if (others.length === 0) return [];
    const files = new Set(others.map(({ file }) => file)).size;
    const shown = others.slice(0, mostPlaces).map(({ file, line }) => `${file}:${line}`);
    const more = others.length - shown.length;
    const places = `${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
    return [`the same cause: ${plural(others.length, 'more finding')} in ${plural(files, 'other file')}: ${places}`];
}
