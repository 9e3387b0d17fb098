/**
 * How deep the scratches of a grit are, as a part of its median grain.
 * @commonPractice An own estimate for dry hand and orbital sanding of wood.
 */
export const scratchShare = 0.3;

/** Widest ratio of one grain to the next that takes the former's scratches out in reasonable time: about one skipped grade. @commonPractice */
export const widestJump = 1.75;

/** What each grit of a sequence has to take off, in the order in which they are used; mm. */
export interface SandingSequence {
    /** The first takes the bulk, each later one the scratches of the one before it. */
    readonly takes: readonly number[];
    /** How much more would have to come off for the scratches of all but the last grit to go; 0 when it is enough. */
    readonly short: number;
}

/**
 * Shares what is to come off the face among the grits.
 *
 * @param grains median grains in mm, in the order of use
 * @param take taken off the face in all, mm
 */
export function sandingSequence(grains: readonly number[], take: number): SandingSequence {
    const scratches = grains.slice(0, -1).map((grain) => grain * scratchShare);
    const later = scratches.reduce((sum, scratch) => sum + scratch, 0);
    const bulk = Math.max(0, take - later);
    return { takes: grains.length === 0 ? [] : [bulk, ...scratches], short: Math.max(0, later - take) };
}

/** A step of the sequence that leaves scratches behind: the places of two grits, and their ratio. */
export interface Jump {
    readonly from: number;
    readonly to: number;
    readonly ratio: number;
}

/** Steps from a grit to one that is too much finer. @param grains median grains in mm, in the order of use */
export function jumps(grains: readonly number[]): Jump[] {
    return grains.slice(1).flatMap((grain, i) => {
        const ratio = grains[i]! / grain;
        return ratio > widestJump ? [{ from: i, to: i + 1, ratio }] : [];
    });
}

/**
 * Grits that would close a jump, out of those at hand: as few as will do, evenly spread by ratio.
 *
 * @param between grains at hand, mm
 */
export function bridge(coarse: number, fine: number, between: readonly number[]): number[] {
    const inside = between.filter((grain) => grain < coarse && grain > fine);
    const steps = Math.ceil(Math.log(coarse / fine) / Math.log(widestJump) - 1e-9);
    const chosen: number[] = [];
    for (let step = 1; step < steps; step++) {
        const wanted = coarse * (fine / coarse) ** (step / steps);
        const nearest = inside.toSorted((a, b) => Math.abs(Math.log(a / wanted)) - Math.abs(Math.log(b / wanted)))[0];
        if (nearest !== undefined && !chosen.includes(nearest)) chosen.push(nearest);
    }
    return chosen.sort((a, b) => b - a);
}
