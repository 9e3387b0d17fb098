/**
 * Hands-on times of bench work, in seconds. Common practice, no source: a small shop's own
 * estimate, meant to be replaced by what its runs measure.
 */
export const benchTimes = {
    laserSetUp: 5 * 60,
    maskBlank: 4 * 60,
    sealCoat: 5 * 60,
    mixAndFill: 12 * 60,
    glueAndPress: 15 * 60,
    peel: 4 * 60,
    sandPerGrit: 4 * 60,
    finishCoat: 6 * 60,
    check: 2 * 60,
} as const;
