import type { Resin } from '../recipe/stock';

/** What of a fill is powder: share of the mass of the whole, and share of the room that it takes. */
interface PowderShare {
    /** Absent where a share by volume is written without a density. */
    readonly mass?: number;
    /** Absent where no density is known. */
    readonly room?: number;
}

/** Densest that equal balls lie without order: no dry powder packs denser. From memory: random close packing, 0.64. */
export const densestPacking = 0.64;

/**
 * Powder by mass and by room: m = v·ρp / (v·ρp + (1 − v)·ρr), and back. Pigment is left out of it: it is little and its density
 * is not known.
 */
export function powderShare({ powder, powderBy, solidDensity, density }: Resin): PowderShare {
    if (powder === undefined) return {};
    const [grains, resin] = [solidDensity?.value, density?.value];
    const share = powder.value;
    if (powderBy === 'volume') {
        if (grains === undefined || resin === undefined) return { room: share };
        return { room: share, mass: (share * grains) / (share * grains + (1 - share) * resin) };
    }
    if (grains === undefined || resin === undefined) return { mass: share };
    return { mass: share, room: share / grains / (share / grains + (1 - share) / resin) };
}
