import type { Interval } from '../quantity/interval';
import type { Quantity } from '../quantity/quantity';
import type { Where, Written } from '../quantity/where';
import type { Ref } from './step';
import type { Laser } from './stock';

/** How a recipe went on one day, as it was written down. */
export interface Run {
    readonly recipe: string;
    /** ISO 8601, `2026-11-20`; a day that there is. */
    readonly date: Written<string>;
    /** The revision that was followed, if it was written. */
    readonly revision?: number;
    /** Fingerprint of what recipe and stock said then, lower-case hexadecimal (language/fingerprint.ts). */
    readonly plan?: Written<string>;
    readonly laser?: Laser;
    readonly burnt: readonly BurntStep[];
    readonly notes: readonly string[];
    /** Paths from the file of the run. */
    readonly photos?: readonly string[];
    readonly links?: readonly string[];
    /** Pieces that came out well, and those that did not; absent where nobody has counted. */
    readonly made?: number;
    readonly spoiled?: number;
    /** Hours at the bench and beside the laser, s. */
    readonly took?: Quantity;
    readonly by?: string;
    /** How warm the workshop was; no sum goes by it. */
    readonly temperature?: Quantity;
    readonly whole: Where;
}

/** What one step was burnt in and with, and what was measured. Settings that are not written are not known. */
export interface BurntStep {
    readonly step: Ref;
    /** Name of the board or veneer. */
    readonly sheet?: string;
    /** Address of the file that declares it: another one may have one of that name, too. */
    readonly sheetFile?: string;
    /** Which lot of it. */
    readonly lot?: string;
    readonly power?: Quantity;
    readonly speed?: Quantity;
    readonly passes: number;
    readonly pitch?: Quantity;
    /** Depth that the plan gave, with its half width. */
    readonly planned?: Quantity;
    readonly depth?: Quantity;
    /** Depth after each pass; the last is `depth`. Figures of one place that hang together: they are shown, and one counts. */
    readonly passDepths?: readonly Quantity[];
    /** At the face. */
    readonly width?: Quantity;
    /** The same at the floor, where that was measured too. */
    readonly floorWidth?: Quantity;
    /** 0 bare, 1 the darkest. */
    readonly tone?: Quantity;
    /** Whether it came through. */
    readonly through?: Written<boolean>;
    /** The whole line. */
    readonly where: Where;
}

/** What was burnt with which settings and measured afterwards; base units. */
export interface MeasuredBurn {
    /** W; NaN where a setting means none. */
    readonly power: number;
    readonly speed: number;
    readonly pitch: number;
    readonly passes: number;
    readonly depth: number;
    /** Half width of the measurement, 0 if not written. */
    readonly tolerance: number;
}

/** A pocket or square of a run, of whatever recipe, that says what it was burnt with and how deep it came out. */
export interface MeasuredPocket extends MeasuredBurn {
    readonly recipe: string;
    readonly step: string;
    /** ISO 8601. */
    readonly date: string;
    readonly laser: string;
    /** Name of the board or veneer. */
    readonly sheet: string;
    /** Which lot of it, where that is known. */
    readonly lot?: string;
    /** Depth that the plan gave, where the run keeps it, with its range. */
    readonly planned?: Interval;
    /** Depth after each pass (mm), where it was measured. */
    readonly passDepths?: readonly number[];
    /** How wide its wall is along one edge, from face to floor, and one standard deviation of that reading; mm. */
    readonly wall?: { readonly width: number; readonly reading: number };
    /** How warm the workshop was, degC. */
    readonly temperature?: number;
    readonly where: Where;
}
