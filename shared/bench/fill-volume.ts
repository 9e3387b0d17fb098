import type { Resin } from '../recipe/stock';

/** What goes into the cups for one fill. Volumes in mm3, masses in g. */
export interface FillMix {
    readonly volume: number;
    /** Parts by volume and by mass; absent when the resin does not say how it is mixed. */
    readonly parts?: { readonly resin: number; readonly hardener: number; readonly by: 'volume' | 'weight' };
    /** Of resin and hardener together. */
    readonly mass?: number;
    readonly pigment?: number;
    /** Metal powder. */
    readonly powder?: number;
}

/**
 * Fill volume is area x depth x (1 + overfill), then by the resin's mix ratio. Parts by volume are
 * in mm3, parts by weight in g. The mass counts the mixed resin at its written density. Pigment and metal powder are
 * shares of the whole, of which resin and hardener are the rest; the room that they take themselves is spare. They are
 * absent where nothing would be left for the resin.
 */
export function fillMix(area: number, depth: number, overfill: number, resin: Resin): FillMix {
    const volume = Math.max(0, area) * Math.max(0, depth) * (1 + Math.max(0, overfill));
    const mass = resin.density === undefined ? undefined : volume * resin.density.value;
    const whole = resin.mix?.by === 'weight' ? mass : volume;
    const ratio = resin.mix;
    const sum = ratio === undefined ? 0 : ratio.resin + ratio.hardener;
    const left = 1 - (resin.pigment?.value ?? 0) - (resin.powder?.value ?? 0);
    const everything = mass === undefined || !(left > 0) ? undefined : mass / left;
    return {
        volume,
        ...(ratio !== undefined && whole !== undefined && sum > 0
            ? { parts: { resin: (whole * ratio.resin) / sum, hardener: (whole * ratio.hardener) / sum, by: ratio.by } }
            : {}),
        ...(mass === undefined ? {} : { mass }),
        ...(everything === undefined || resin.pigment === undefined ? {} : { pigment: everything * resin.pigment.value }),
        ...(everything === undefined || resin.powder === undefined ? {} : { powder: everything * resin.powder.value }),
    };
}
