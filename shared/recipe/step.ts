import type { Quantity } from '../quantity/quantity';
import type { Where, Written } from '../quantity/where';
import type { Allow } from './allow';
import type { Abrasive, Coat, Extent, Glue, Masking, Resin, Sealer } from './stock';

/**
 * The steps, in the order in which the work is done. Steps point at blanks and at other steps by
 * name (unique within a recipe), so that a recipe stays plain, serialisable data.
 */
export type Step = Engrave | Cut | Seal | Fill | Inlay | Wait | Peel | Sand | Finish | Mask | Flip | Check | Do;
export type StepKind = Step['kind'];

interface StepBase {
    readonly index: number;
    /** The whole step. */
    readonly whole: Where;
    /** The step's first word: the narrowest place that stands for the step. */
    readonly where: Where;
    readonly allows: readonly Allow[];
    /** What its maker says of it for others (`///`), a paragraph a line. */
    readonly about?: string;
    /** The routine in which it is written, where it is not the recipe's own. */
    readonly followed?: Followed;
}

/** Climate in which something hardens: degC, and relative humidity 0 to 1. */
export interface Climate {
    readonly temperature?: Quantity;
    readonly humidity?: Quantity;
}

/** What is said of a step that lays something: the climate in which that hardens, where it is not the shop's. */
interface Hardens {
    readonly climate?: Climate;
}

/** A routine that a recipe follows: `where` is the line that does, `whole` the routine itself. */
export interface Followed {
    readonly name: string;
    /** The name that stands for the blank in it. */
    readonly piece: string;
    readonly where: Where;
    readonly whole: Where;
}

/** A name as it was written in a reference; `value` is absent where it could not be resolved. */
export interface Ref {
    readonly value?: string;
    readonly where: Where;
}

export interface Point {
    readonly x: Quantity;
    readonly y: Quantity;
    readonly where: Where;
}

export type Outline =
    | { readonly kind: 'circle'; readonly diameter: Quantity }
    | { readonly kind: 'rectangle'; readonly size: Extent };
export type Boundary = Outline | { readonly kind: 'blank' } | { readonly kind: 'grown'; readonly by: Quantity };

/** Copies on a grid, laid out about the middle of the placement. */
export interface Repeat {
    readonly columns: number;
    readonly rows: number;
    /** From one copy to the next. */
    readonly step: Extent;
    readonly where: Where;
}

/** Places that are said once and meant by name; the middle of a grid and the grid itself stand in `at` and `repeat`. */
export interface PlacesUse extends Ref {
    /** Each place of a list; absent for a grid. */
    readonly points?: readonly Point[];
}

/** Art laid on the blank: which parts, whether turned inside out, and where its middle goes. */
export interface ArtPlacement {
    readonly kind: 'art';
    readonly art: Ref;
    /** `#id` and `.class` picks; all of the art when empty. */
    readonly picks: readonly Written<string>[];
    /** What is left out of them. */
    readonly leaves?: readonly Written<string>[];
    readonly inverse?: Written<Boundary>;
    /** Where the middle of the art's own page goes, from the blank's top left; the blank's middle when absent. */
    readonly at?: Point;
    readonly places?: PlacesUse;
    readonly turn?: Quantity;
    readonly repeat?: Repeat;
    readonly where: Where;
}

export interface ShapePlacement {
    readonly kind: 'shape';
    readonly outline: Outline;
    readonly at?: Point;
    readonly places?: PlacesUse;
    /** About its own middle. */
    readonly turn?: Quantity;
    readonly repeat?: Repeat;
    readonly where: Where;
}

export type Placement = ArtPlacement | ShapePlacement;

export interface Scan {
    /** Absent: across the grain, when the grain is known. Along the outline there is no area: the beam follows the edge alone. */
    readonly direction?: 'across' | 'along' | 'outline' | Quantity;
    readonly bothWays: boolean;
    readonly where: Where;
}

interface LaserStep extends StepBase {
    readonly name: string;
    readonly nameWhere: Where;
    readonly blank: Ref;
    readonly placements: readonly Placement[];
    readonly mirror: readonly Where[];
    /** The statement that says no to it. */
    readonly mirrorOff?: Where;
    readonly air?: Written<'on' | 'off'>;
    readonly power?: Quantity;
    readonly speed?: Quantity;
    readonly passes?: Written<number>;
    /** The statements that hold power, speed, pitch and passes, whole: what is taken out to have them solved again. */
    readonly settingsWhere: readonly Where[];
    readonly offset?: Quantity;
    /** The whole statement of the offset. */
    readonly offsetWhere?: Where;
}

/** All the way through; `sure` is the share of pieces that are to come out at the back, where the recipe says one. */
export interface Through {
    readonly through: true;
    readonly sure?: Quantity;
    readonly where: Where;
}

/** A depth that was measured after some of the passes. `where` is the whole of what says so. */
export interface Reached {
    readonly depth: Quantity;
    readonly passes: number;
    readonly where: Where;
}

export const paces = ['fast', 'gentle'] as const;
export type Pace = (typeof paces)[number];

export interface Engrave extends LaserStep {
    readonly kind: 'engrave';
    /** What is wanted: a depth, all the way through, or only a tone (0 bare, 1 darkest without digging). */
    readonly depth?: Quantity | Through;
    /** Of the piece on the bench: how deep it is after its first passes; the rest goes on from there. */
    readonly reached?: Reached;
    readonly tone?: Quantity;
    /** The whole statement of the tone: where a depth is written instead. */
    readonly toneWhere?: Where;
    readonly pitch?: Quantity;
    readonly scan?: Scan;
    /** Which settings are chosen of those that give the depth; light passes where nothing is said. */
    readonly pace?: Written<Pace>;
    /** Outline passes after the area passes. */
    readonly outline?: Written<number>;
}

export interface Cut extends LaserStep {
    readonly kind: 'cut';
    /** Share of cuts that are to come through, where the recipe says one. */
    readonly sure?: Quantity;
    readonly tabs?: Written<number>;
    /** How far out in the waste the beam begins. */
    readonly leadIn?: Quantity;
    /** Width of the kerf on the face, where the recipe says it. */
    readonly kerf?: Quantity;
    /** The statement that says no to moving the line out into the waste by half of it. */
    readonly kerfOff?: Where;
}

export interface Seal extends StepBase, Hardens {
    readonly kind: 'seal';
    readonly blank: Ref;
    readonly sealer?: Sealer;
    readonly coats: number;
}

export interface Fill extends StepBase, Hardens {
    readonly kind: 'fill';
    readonly pocket: Ref;
    readonly resin?: Resin;
    readonly overfill?: Quantity;
}

export interface Inlay extends StepBase, Hardens {
    readonly kind: 'inlay';
    readonly relief: Ref;
    readonly pocket: Ref;
    readonly glue?: Glue;
    /** The whole statement that names the glue, also where the name leads nowhere, or that says no to it. */
    readonly glueWhere?: Where;
    /** Gap wanted on each side of a part, between the pocket's mouth and the face of the piece that goes in. */
    readonly clearance?: Quantity;
    /** The whole statement of it, also where the length in it cannot be read. */
    readonly clearanceWhere?: Where;
    readonly marks?: Written<number>;
}

export interface Wait extends StepBase {
    readonly kind: 'wait';
    /** What passes at least; of a written range its shorter end. */
    readonly time: Quantity;
    /** The longer end of a written range: what may have passed before the next step. */
    readonly longest?: Quantity;
    readonly reason?: string;
}

export interface Peel extends StepBase {
    readonly kind: 'peel';
    readonly blank: Ref;
}

export interface Sand extends StepBase {
    readonly kind: 'sand';
    readonly blank: Ref;
    /** Down to the wood's face first, taking off what stands proud. */
    readonly flush: boolean;
    /** The whole statement of it. */
    readonly flushWhere?: Where;
    /** What comes off the face itself (`take`, or `flush then`). */
    readonly take?: Quantity;
    readonly grits: readonly Abrasive[];
    readonly gritsWhere?: Where;
}

export interface Finish extends StepBase, Hardens {
    readonly kind: 'finish';
    readonly blank: Ref;
    readonly coat?: Coat;
    readonly coats: number;
}

export interface Mask extends StepBase {
    readonly kind: 'mask';
    readonly blank: Ref;
    /** Ordinary masking tape where nothing is said. */
    readonly film?: Masking;
}

export const flipAxes = ['upright', 'level'] as const;
export type FlipAxis = (typeof flipAxes)[number];

export const placeFinders = ['fence', 'pins', 'marks', 'frame'] as const;
export type PlaceFinder = (typeof placeFinders)[number];

/** How a blank is laid where it lay before, for what is burnt next. */
export interface Found {
    readonly by: PlaceFinder;
    /** The step that burnt or cut what it is found by. */
    readonly of?: Ref;
    /** How far off it may lie at most, mm; absent where nothing is said. */
    readonly within?: Quantity;
    /** The whole line. */
    readonly where: Where;
}

/** Turns a blank over: the steps after it are done on its other face. */
export interface Flip extends StepBase {
    readonly kind: 'flip';
    readonly blank: Ref;
    /** The line on the bed that stays where it is: left and right change places about an upright one, far and near about a level one. */
    readonly axis: FlipAxis;
    readonly found?: Found;
}

export interface Check extends StepBase {
    readonly kind: 'check';
    readonly step: Ref;
    readonly depth?: Quantity;
    readonly width?: Quantity;
    /** How dark it should look, 0 to 1. */
    readonly tone?: Quantity;
    /** Whether it came through is looked at. */
    readonly through?: Where;
}

export interface Do extends StepBase {
    readonly kind: 'do';
    readonly text: string;
    readonly time?: Quantity;
    /** The statement that says that the piece leaves the bed for it. */
    readonly takenOff?: Where;
    readonly found?: Found;
}
