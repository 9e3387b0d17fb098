import { insetAt, stepsDown } from './round-mesh';
import type { RoundView } from './round-view';

/** A wall as a section shows it: what stands beyond the upright line through its rim. Lengths mm. */
export interface LeanAt {
    /** Where the rim is crossed. */
    readonly rim: number;
    /** How the wall runs out from the rim's height down to its foot. */
    readonly steps: readonly { readonly x: number; readonly z: number }[];
}

/** The leaning walls that a cut straight across a piece at `y` meets. O(n) of the bands. */
export function leanAt({ walls }: Pick<RoundView, 'walls'>, y: number): LeanAt[] {
    const found: LeanAt[] = [];
    for (const { bands, lean } of walls) {
        if (lean === undefined) continue;
        for (let i = 0, n = 0; i + 5 < bands.length; i += 6, n += 4) {
            const [x0, y0, x1, y1, low, high] = bands.slice(i, i + 6) as [number, number, number, number, number, number];
            const [ox0, oy0, ox1, oy1] = lean.ways.slice(n, n + 4) as [number, number, number, number];
            /** Where the wall is cut at so far out of its rim; undefined where the cut goes by this band. */
            const crossing = (inset: number): number | undefined => {
                const from = y0 + inset * oy0;
                const part = (y - from) / (y1 + inset * oy1 - from);
                if (!(part >= 0 && part < 1)) return undefined;
                return x0 + inset * ox0 + part * (x1 + inset * ox1 - x0 - inset * ox0);
            };
            const rim = crossing(0);
            if (rim === undefined) continue;
            const steps = [[high, insetAt(lean, high)] as const, ...stepsDown(lean, low, high)].flatMap(([z, inset]) => {
                const x = crossing(inset);
                return x === undefined ? [] : { x, z };
            });
            if (steps.length > 1) found.push({ rim, steps });
        }
    }
    return found;
}
