import type { Do, Flip, PlaceFinder } from '../recipe/step';
import type { LaserPlan } from './laser-plan';

/** How a blank is laid where it lay before, and how far off it may lie then. */
export interface FoundPlace {
    readonly by: PlaceFinder;
    /** How far off it may lie at most along either axis, mm. */
    readonly exact: number;
    /** Whether the maker says so, it follows from how wide the kerf is, or it is what is common. */
    readonly from: 'maker' | 'kerf' | 'practice';
    /** The step that says it. */
    readonly said: Do | Flip;
    /** What was burnt or cut on this blank to find it by; absent where it is none of the recipe's own work. */
    readonly mark?: LaserPlan;
}

/** Burns in several set-ups make the edge of a half: how far they may be off against each other. */
export interface LaidAside {
    /** mm, at worst, both halves together. */
    readonly most: number;
    /** The burn that is off farthest against the half it belongs to, and how its set-up was laid. */
    readonly burn: LaserPlan;
    readonly place: FoundPlace;
}
