import type { Spot } from './beam';
import { pitchForRipple, sigmaOf } from './dose';

// Ripple below five per cent of the depth is lost in the grain of the wood. @commonPractice
const MOST_RIPPLE = 0.05;

/** The pitch (mm) that a spot wants when none is written: the widest with little ripple, on a round hundredth. */
export function pitchForSpot(spot: Spot | undefined): number | undefined {
    if (spot === undefined) return undefined;
    const widest = pitchForRipple(sigmaOf(spot.diameter), MOST_RIPPLE);
    const round = Math.floor(widest * 100 + 1e-9) / 100;
    return round > 0 ? round : widest;
}

/**
 * The pitch (mm) at which the middle of a single line gets the dose that an area gets: a line of power P at
 * speed v peaks at P/(v·σ√(2π)). With it the depth law of area passes speaks of cuts and outlines too.
 */
export function linePitch(spot: Spot | undefined): number | undefined {
    return spot === undefined ? undefined : sigmaOf(spot.diameter) * Math.sqrt(2 * Math.PI);
}
