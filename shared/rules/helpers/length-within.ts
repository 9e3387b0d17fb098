import { fromBase, toBase } from '../../quantity/quantity';

/** What a length is rounded to in the unit that the maker uses; the finest that anybody sets by hand. */
const steps: Readonly<Record<string, number>> = { mm: 0.01, cm: 0.001, m: 1e-5, in: 5e-4, thou: 0.5, um: 10, nm: 10_000 };

/** Rounded finer than that by at most this many digits. */
const finer = 2;

/** Both ends belong to it, mm. */
export interface Within {
    readonly low: number;
    readonly high: number;
    /** What would be best, mm. */
    readonly best: number;
}

/** A round length between two bounds, as near to the best as it can be and as it is written; undefined where there is none. */
export function lengthWithin(
    { low, high, best }: Within,
    unit: string,
): { readonly mm: number; readonly text: string } | undefined {
    const known = Object.hasOwn(steps, unit) ? unit : 'mm';
    for (let digits = 0; digits <= finer; digits++) {
        const step = steps[known]! / 10 ** digits;
        const hair = 1e-9;
        const least = Math.ceil(fromBase(low, known) / step - hair);
        const most = Math.floor(fromBase(high, known) / step + hair);
        if (least > most) continue;
        const count = Math.min(most, Math.max(least, Math.round(fromBase(best, known) / step)));
        const written = Number((count * step).toFixed(9));
        return { mm: toBase(written, known) ?? written, text: `${written} ${known}` };
    }
    return undefined;
}
