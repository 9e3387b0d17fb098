import type { Resin } from '../recipe/stock';

/** What goes into the cups for one fill. Volumes in mm3, masses in g. */
export interface FillMix {
    readonly volume: number;
    /** Parts by volume and by mass; absent when the resin does not say how it is mixed. */
    readonly parts?: { readonly resin: number; readonly hardener: number; readonly by: 'volume' | 'weight' };
    readonly mass?: number;
    readonly pigment?: number;
    /** Metal powder. */
    readonly powder?: number;
}

/**
 * Fill volume is area x depth x (1 + overfill), then by the resin's mix ratio. Parts by volume are
 * in mm3, parts by weight in g. The mass counts the mixed resin at its written density.
 */
export function fillMix(area: number, depth: number, overfill: number, resin: Resin): FillMix {
    const volume = Math.max(0, area) * Math.max(0, depth) * (1 + Math.max(0, overfill));
    const mass = resin.density === undefined ? undefined : volume * resin.density.value;
    const whole = resin.mix?.by === 'weight' ? mass : volume;
    const ratio = resin.mix;
    const sum = ratio === undefined ? 0 : ratio.resin + ratio.hardener;
    return {
        volume,
        ...(ratio !== undefined && whole !== undefined && sum > 0
            ? { parts: { resin: (whole * ratio.resin) / sum, hardener: (whole * ratio.hardener) / sum, by: ratio.by } }
            : {}),
        ...(mass === undefined ? {} : { mass }),
        ...(mass === undefined || resin.pigment === undefined ? {} : { pigment: mass * resin.pigment.value }),
        ...(mass === undefined || resin.powder === undefined ? {} : { powder: mass * resin.powder.value }),
    };
}
