import type { Art } from '../art/art';
import type { Cost } from '../bench/cost';
import type { FillMix } from '../bench/fill-volume';
import type { Batches } from '../bench/mix-batches';
import type { Pours } from '../bench/pours';
import type { PressFit } from '../bench/press-fit';
import type { Schedule } from '../bench/schedule';
import type { SheetYield } from '../bench/sheet-yield';
import type { InlayStack } from '../bench/stack';
import type { DifferentialMovement } from '../bench/wood-movement';
import type { Work } from '../bench/work';
import type { BoardRuns } from '../burn/board-runs';
import type { Region } from '../geometry/region';
import type { Face } from '../piece/face';
import type { Interval } from '../quantity/interval';
import type { SupplyUnit } from '../quantity/show-supply';
import type { Message } from '../recipe/phrase';
import type { Blank, Recipe } from '../recipe/recipe';
import type { Cut, Engrave, Step } from '../recipe/step';
import type { Sheet } from '../recipe/stock';
import type { LaserPlan } from './laser-plan';
import type { LaidAside } from './laying';
import type { VeneerHalf } from './veneer-half';

/** Everything that can be worked out of a recipe and its art. Lengths mm, areas mm2, volumes mm3, times s. */
export interface Plan {
    readonly version: 1;
    readonly recipe: Recipe;
    readonly arts: ReadonlyMap<string, ArtState>;
    readonly blanks: readonly BlankPlan[];
    readonly steps: readonly StepPlan[];
    /** What lies where on the face of each blank: faces[0] before the first step, faces[i + 1] after step i. */
    readonly faces: readonly (readonly Face[])[];
    /** For one piece; absent where `unknown` says why. */
    readonly totals?: Times;
    /** Why times, amounts and cost in all are not known; absent where they are. */
    readonly unknown?: string;
    readonly supplies: readonly Supply[];
    /** When everything is done for all the pieces, in hours of the shop where it says them; too short where `unknown` says why. */
    readonly schedule: PlanSchedule;
    /** Sheets to buy and how to cut them, for all the pieces. */
    readonly cuttings: readonly Cutting[];
    /** For all the pieces; absent without a shop that says its currency, and where `unknown` says why. */
    readonly cost?: PlanCost;
    readonly cautions: readonly string[];
    /** What runs say of each board and veneer on the recipe's laser. */
    readonly boards: readonly BoardRuns[];
}

/** What became of an art file. */
export type ArtState =
    | { readonly kind: 'art'; readonly art: Art }
    | { readonly kind: 'missing' | 'outside' | 'too-large' | 'unreadable'; readonly message: Message };

export interface BlankPlan {
    readonly blank: Blank;
    readonly name: string;
    /** Absent when the recipe does not say. */
    readonly size?: { readonly width: number; readonly height: number };
    readonly thickness?: Interval;
    /** Angle of the grain from the blank's width axis, rad. */
    readonly grain?: number;
}

export interface Times {
    /** The laser runs; somebody has to be there. */
    readonly machine: number;
    /** Hands on. */
    readonly attended: number;
    readonly waiting: number;
}

export interface StepPlan {
    readonly step: Step;
    readonly title: string;
    /** Name of the blank it works on. */
    readonly blank?: string;
    /** The same while its front is up, else another name: what is done on one face says nothing of the other. */
    readonly face?: string;
    /** Why it could not be worked out, in a maker's words. */
    readonly unplanned?: string;
    readonly times: Times;
    readonly laser?: LaserPlan;
    readonly fill?: FillPlan;
    readonly inlay?: InlayPlan;
    readonly sand?: SandPlan;
    readonly wood?: WoodPlan;
    /** The dangers of this step by itself; absent where there are none but the general ones. */
    readonly cautions?: readonly string[];
    /** What to mind that is no fault of the recipe; absent where there is nothing. */
    readonly advice?: readonly string[];
}

export interface FillPlan {
    readonly pocket: Engrave;
    readonly area: number;
    readonly depth: Interval;
    /** For one piece. */
    readonly mix: FillMix;
    /** Several fills of one pocket are layers that share its depth: which this is, from 1, and of how many. */
    readonly layer: { readonly number: number; readonly of: number; readonly depth: number };
    /** Pours that this layer takes, and the time between two of them, s. */
    readonly pours: Pours & { readonly between: number };
    /** Cups to mix for all the pieces of a run, by the pot life; one where that is not known. */
    readonly cups: Batches;
}

export interface InlayPlan {
    /** What goes in: burnt out of a veneer, or cut out of a sheet. */
    readonly relief: Engrave | Cut;
    /** What it goes into: a pocket, or a cut-through opening. */
    readonly pocket: Engrave | Cut;
    /** The half is turned over to go in: one of both is mirrored. Cut out and not mirrored, it goes in face up. */
    readonly turnedOver: boolean;
    readonly reliefLaser: LaserPlan;
    readonly pocketLaser: LaserPlan;
    /** What is left standing of the veneer inside its boundary, as it lies under the laser. */
    readonly standing: Region;
    /** The same turned over and laid onto the pocket, in the pocket blank's coordinates. */
    readonly turned: Region;
    readonly fits: Region;
    readonly collides: Region;
    readonly empty: Region;
    readonly clearance: number;
    /** What the halves leave between them along each edge as they are drawn: the clearance and the offsets written in either. */
    readonly gap: number;
    readonly film: Interval;
    /** All that later sanding takes off the board's face. */
    readonly below: Interval;
    /** What the steps before it have left of the relief's blank. */
    readonly half: VeneerHalf;
    /** What stands of it. */
    readonly veneer?: Interval;
    readonly stack?: InlayStack;
    readonly fit?: PressFit;
    /** The same with the walls at the wide end of what is known of them; absent where none is so deep that it is uncertain. */
    readonly fitIfWide?: PressFit;
    /** How far burns in several set-ups that make one edge may be off; absent where each edge is burnt in one. */
    readonly aside?: LaidAside;
    /** How the art answers to being mirrored and turned, judged on the pocket. */
    readonly symmetry: { readonly mirror: boolean; readonly mirrorResidual: number; readonly turns: number };
    /** Absent when none are asked for, or a blank's size is not known. */
    readonly marks?: InlayMarks;
}

/** Marks by which the halves find each other: the same discs on both, turned over. */
export interface InlayMarks {
    readonly wanted: number;
    /** How many have room; fewer than wanted is a finding. */
    readonly placed: number;
    readonly diameter: number;
    /** How far they are from any symmetry, mm. */
    readonly asymmetry: number;
    /** How far they are from lying on each other in another turn of the art, mm; absent where its art has no other. */
    readonly apart?: number;
    /** In the coordinates of the relief's and of the pocket's blank. */
    readonly relief: Region;
    readonly pocket: Region;
}

export interface SandPlan {
    /** Taken off the face itself, mm. */
    readonly below: Interval;
    readonly grits: readonly number[];
    /** What each grit has to take off so that the scratches of the one before it go, mm; none where the whole is too little for it. */
    readonly takes: readonly number[];
}

export interface Supply {
    readonly item: string;
    readonly kind:
        | 'board'
        | 'veneer'
        | 'backing'
        | 'resin'
        | 'hardener'
        | 'pigment'
        | 'powder'
        | 'glue'
        | 'sealer'
        | 'finish'
        | 'abrasive'
        | 'tape';
    readonly amount: number;
    readonly unit: SupplyUnit;
    readonly note: string;
    /** What is used up of it costs, in the shop's currency; absent where nobody has said a price. */
    readonly cost?: number;
}

export type LaserStep = Engrave | Cut;

/** What wood itself says to a step: how it will move, and how its figure shows. */
export interface WoodPlan {
    /** Inlay against board over a year indoors; absent where a grain or a coefficient is not known. */
    readonly movement?: DifferentialMovement;
    /** The same where a half does not say how it is sawn, at the cuts at which it is most. */
    readonly movementAtMost?: DifferentialMovement;
    /** Two colours that have to be told apart, and how far they are. */
    readonly contrast?: Contrast;
}

export interface Contrast {
    /** What is to be seen, such as a resin, and the wood around it. */
    readonly figure: string;
    readonly ground: string;
    /** CIEDE2000. */
    readonly difference: number;
}

/** How the blanks of one kind of sheet are cut, for all the pieces. */
export interface Cutting {
    readonly sheet: Sheet;
    /** Size in which it is bought, mm. */
    readonly size: { readonly width: number; readonly height: number };
    readonly yielded: SheetYield;
    /** Sheets used up: of the last one only what lies up to the end of its last blank, since the rest can be kept. */
    readonly consumed: number;
}

/** Cost and price of a run, in the shop's currency. */
export interface PlanCost extends Cost {
    /** ISO 4217, such as EUR. */
    readonly currency: string;
    /** Name of the shop that reckons so. */
    readonly shop: string;
    readonly hourly: number;
    readonly laserHourly: number;
    readonly overheadShare: number;
    readonly markup: number;
    /** Hours paid: at the bench and beside the laser, and of the laser itself; s. */
    readonly attended: number;
    readonly runs: number;
}

/** When each step is done for all the pieces, and when they are ready. Times in s from the start. */
export interface PlanSchedule extends Schedule {
    /** What the turns' `work` stands for: a step, or one coat or pour of it. */
    readonly works: readonly StepWork[];
    readonly spans: readonly StepSpan[];
    readonly sittings: readonly Sitting[];
    /** Hours of each day in which hands can work, s; absent: day and night. */
    readonly workday?: number;
    /** Time that the laser runs, for all the pieces. */
    readonly machine: number;
}

export interface StepWork extends Work {
    readonly step: number;
    /** Which coat or pour, such as "coat 2 of 3"; empty where the step is done in one. */
    readonly part: string;
}

/** One step over all pieces that were laid out. */
export interface StepSpan {
    readonly step: number;
    readonly start: number;
    /** When the last piece leaves the hands. */
    readonly end: number;
    /** When the last piece may go on. */
    readonly ready: number;
}

/**
 * A stretch of time in which somebody is at the bench or beside the laser without a pause. Times in s from the start.
 * A wait is the step that it belongs to, or that step in words.
 */
export interface Sitting<SomeJob = SittingJob, Wait = number> {
    readonly start: number;
    readonly end: number;
    readonly jobs: readonly SomeJob[];
    /** Waits that go on all the while: what cures or dries by itself. */
    readonly meanwhile: readonly Wait[];
    /** Waits that keep the next sitting waiting, in the order in which they are over; none after the last. */
    readonly until: readonly Wait[];
}

/** One step, or one coat or pour of it, for some pieces in a row. */
export interface SittingJob {
    readonly step: number;
    readonly part: string;
    readonly pieces: number;
    readonly start: number;
    readonly end: number;
    /** Of it, time in which the laser runs. */
    readonly machine: number;
}
