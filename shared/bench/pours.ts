/** A deep fill, poured in layers. */
export interface Pours {
    readonly count: number;
    /** Depth of each layer, mm; equal, so that none is deeper than it may be. */
    readonly each: number;
}

/** More layers than anybody would pour: a figure in the wrong unit. */
const most = 1000;

/**
 * Layers for a fill that may only be poured so deep at once: resin warms as it cures, and a deep
 * pour cracks, foams or yellows. A depth of nothing takes no pour.
 *
 * @param depth of the deepest place, mm
 * @param deepest pour the resin allows, mm; absent or not positive means that one pour does
 */
export function poursFor(depth: number, deepest: number | undefined): Pours {
    if (!(depth > 0)) return { count: 0, each: 0 };
    if (deepest === undefined || !(deepest > 0)) return { count: 1, each: depth };
    const count = Math.min(most, Math.max(1, Math.ceil(depth / deepest - 1e-9)));
    return { count, each: depth / count };
}

/**
 * Whether the next layer bonds by itself. Inside the recoat window a layer still links with the
 * next one; before it, it is too soft to carry it, and after it, it has to be sanded dull first.
 *
 * @param elapsed since the layer before was poured, s
 * @param window the resin's recoat window, s
 */
export function recoat(
    elapsed: number,
    window: { readonly from: number; readonly to: number },
): 'too-soft' | 'bonds' | 'sand-first' {
    if (elapsed < window.from) return 'too-soft';
    return elapsed <= window.to ? 'bonds' : 'sand-first';
}
