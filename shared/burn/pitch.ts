import type { Spot } from './beam';
import { pitchForRipple, sigmaOf } from './dose';

// Ripple below five per cent of the depth is lost in the grain of the wood (common practice, no source).
const MOST_RIPPLE = 0.05;

/** The pitch (mm) that a spot wants when none is written: the widest with little ripple, on a round hundredth. */
export function pitchForSpot(spot: Spot | undefined): number | undefined {
    if (spot === undefined) return undefined;
    const widest = pitchForRipple(sigmaOf(spot.diameter), MOST_RIPPLE);
    const round = Math.floor(widest * 100 + 1e-9) / 100;
    return round > 0 ? round : widest;
}
