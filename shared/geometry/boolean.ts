import { combine, combineBoth } from './engine';
import { emptyRegion, type Region, type Ring } from './region';

/** The region that rings in mm fill by a rule: SVG's `nonzero` (default) or `evenodd`. Rings may cross themselves and each other. */
export function unite(rings: readonly Ring[], rule: 'nonzero' | 'evenodd' = 'nonzero'): Region {
    return rings.length === 0 ? emptyRegion : combine('union', rule, rings, []);
}

/** Everything that is in at least one of the regions. */
export function union(regions: readonly Region[]): Region {
    const filled = regions.filter((region) => region.rings.length > 0);
    if (filled.length <= 1) return filled[0] ?? emptyRegion;
    return combine(
        'union',
        'nonzero',
        filled.flatMap((region) => region.rings),
        [],
    );
}

/** What is in `a` and not in `b`. */
export function subtract(a: Region, b: Region): Region {
    if (a.rings.length === 0 || b.rings.length === 0) return a;
    return combine('difference', 'nonzero', a.rings, b.rings);
}

/** What is in both. */
export function intersect(a: Region, b: Region): Region {
    if (a.rings.length === 0 || b.rings.length === 0) return emptyRegion;
    return combine('intersection', 'nonzero', a.rings, b.rings);
}

/** What of `a` lies in `b`, and what does not: both for little more than the price of one. */
export function divide(a: Region, b: Region): { readonly inside: Region; readonly outside: Region } {
    if (a.rings.length === 0 || b.rings.length === 0) return { inside: emptyRegion, outside: a };
    const [inside, outside] = combineBoth(['intersection', 'difference'], 'nonzero', a.rings, b.rings);
    return { inside: inside!, outside: outside! };
}

/** What is in exactly one of them. */
export function exclude(a: Region, b: Region): Region {
    if (a.rings.length === 0) return b;
    if (b.rings.length === 0) return a;
    return combine('exclusion', 'nonzero', a.rings, b.rings);
}
