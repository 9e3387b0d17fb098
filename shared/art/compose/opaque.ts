import { subtract, union } from '../../geometry/boolean';
import { emptyRegion, type Region } from '../../geometry/region';

/** A region of one darkness that hides what lies below it. */
export interface Sheet {
    readonly region: Region;
    readonly dark: boolean;
}

/** What a run of sheets makes dark and what it makes light, whatever lies below. */
export interface Layer {
    readonly dark: Region;
    readonly light: Region;
}

/**
 * Lays the sheets from `from` to before `to` down, the later on top. Halving the run keeps the
 * work near linear, where one sheet after the other would cost its square.
 */
export function layDown(sheets: readonly Sheet[], from = 0, to = sheets.length): Layer {
    if (to - from <= 0) return { dark: emptyRegion, light: emptyRegion };
    if (sheets.slice(from, to).every(({ dark }) => dark === sheets[from]!.dark)) {
        const all = union(sheets.slice(from, to).map(({ region }) => region));
        return sheets[from]!.dark ? { dark: all, light: emptyRegion } : { dark: emptyRegion, light: all };
    }
    const middle = (from + to) >> 1;
    const below = layDown(sheets, from, middle);
    const above = layDown(sheets, middle, to);
    return {
        dark: union([subtract(below.dark, above.light), above.dark]),
        light: union([subtract(below.light, above.dark), above.light]),
    };
}

/** What is dark after a layer is put on what was. */
export function cover(dark: Region, layer: Layer): Region {
    return union([subtract(dark, layer.light), layer.dark]);
}
