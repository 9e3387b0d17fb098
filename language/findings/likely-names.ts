import { nearest } from '../../shared/recipe/nearest';

const most = 3;
const shortest = 3;

/**
 * What was most likely meant, best first: the name that is one slip away, or else those that end alike
 * (`oak` for `red-oak` and `white-oak`, `cedar` for `western-redcedar`), if they are few enough to choose from.
 */
export function likelyNames(written: string, names: Iterable<string>): string[] {
    const known = [...new Set(names)];
    const slip = nearest(written, known);
    if (slip !== undefined) return [slip];
    const end = written.toLowerCase().split('-').at(-1)!;
    if (end.length < shortest) return [];
    const alike = known.filter((name) => name.toLowerCase().endsWith(end));
    return alike.length <= most ? alike : [];
}
