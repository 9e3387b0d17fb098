/** Seconds of hands-on work: once for a run of pieces, and for each piece. */
export interface HandTime {
    readonly setUp: number;
    readonly each: number;
}

/**
 * Hands-on times of bench work, s, to be replaced by what the runs of a shop measure.
 * @commonPractice A small shop's own estimate.
 */
export const benchTimes = {
    laser: { setUp: 4 * 60, each: 60 },
    mask: { setUp: 60, each: 3 * 60 },
    sealCoat: { setUp: 2 * 60, each: 3 * 60 },
    mixAndFill: { setUp: 8 * 60, each: 4 * 60 },
    glueAndPress: { setUp: 5 * 60, each: 10 * 60 },
    peel: { setUp: 0, each: 4 * 60 },
    sandGrit: { setUp: 60, each: 3 * 60 },
    finishCoat: { setUp: 2 * 60, each: 4 * 60 },
    flip: { setUp: 0, each: 60 },
    check: { setUp: 0, each: 2 * 60 },
} as const satisfies Record<string, HandTime>;
