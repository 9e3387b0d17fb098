import type { Resin } from '../recipe/stock';
import { powderShare } from './powder';

/** What goes into the cups for one fill. Volumes in mm3, masses in g. */
export interface FillMix {
    readonly volume: number;
    /** Parts by volume and by mass; absent when the resin does not say how it is mixed. */
    readonly parts?: { readonly resin: number; readonly hardener: number; readonly by: 'volume' | 'weight' };
    /** Of resin and hardener together. */
    readonly mass?: number;
    readonly pigment?: number;
    /** Metal, stone or mica powder. */
    readonly powder?: number;
}

/**
 * Fill volume is area x depth x (1 + overfill), then by the resin's mix ratio. Parts by volume are
 * in mm3, parts by weight in g. The mass counts the mixed resin at its written density. Pigment and powder are
 * shares of the whole, of which resin and hardener are the rest. Powder of a known density takes room from the resin; that of
 * pigment, and of other powder, is spare. They are absent where nothing would be left for the resin.
 */
export function fillMix(area: number, depth: number, overfill: number, resin: Resin): FillMix {
    const volume = Math.max(0, area) * Math.max(0, depth) * (1 + Math.max(0, overfill));
    const { mass: powder, room = 0 } = powderShare(resin);
    const poured = volume * Math.max(0, 1 - room);
    const mass = resin.density === undefined ? undefined : poured * resin.density.value;
    const whole = resin.mix?.by === 'weight' ? mass : poured;
    const ratio = resin.mix;
    const sum = ratio === undefined ? 0 : ratio.resin + ratio.hardener;
    const left = 1 - (resin.pigment?.value ?? 0) - (powder ?? 0);
    const everything = mass === undefined || !(left > 0) ? undefined : mass / left;
    return {
        volume,
        ...(ratio !== undefined && whole !== undefined && sum > 0
            ? { parts: { resin: (whole * ratio.resin) / sum, hardener: (whole * ratio.hardener) / sum, by: ratio.by } }
            : {}),
        ...(mass === undefined ? {} : { mass }),
        ...(everything === undefined || resin.pigment === undefined ? {} : { pigment: everything * resin.pigment.value }),
        ...(everything === undefined || powder === undefined ? {} : { powder: everything * powder }),
    };
}
