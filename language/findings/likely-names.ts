import { nearest } from '../../shared/recipe/nearest';

/** What makers bring along, and what the built-in stock has of its kind. */
const byTrade: readonly (readonly [RegExp, readonly string[]])[] = [
    [/^((danish|teak|tung|walnut|hemp|(boiled-|raw-)?linseed)-oil|blo)$/i, ['drying-oil']],
    [/^(poly|(poly)?urethane|spar-varnish)$/i, ['oil-varnish', 'water-varnish']],
    [/^(pva|(white|yellow)-glue)$/i, ['wood-glue']],
    [/^(ca(-glue)?|super-?glue)$/i, ['cyanoacrylate']],
];

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
    const ours = oursFor(written).filter((name) => known.includes(name));
    if (ours.length > 0) return ours;
    const end = written.toLowerCase().split('-').at(-1)!;
    if (end.length < shortest) return [];
    const alike = known.filter((name) => name.toLowerCase().endsWith(end));
    return alike.length <= most ? alike : [];
}

/** Names of the built-in stock for what the trade calls otherwise. */
export function oursFor(written: string): readonly string[] {
    return byTrade.find(([called]) => called.test(written))?.[1] ?? [];
}
