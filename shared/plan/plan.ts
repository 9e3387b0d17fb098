import type { Art } from '../art/art';
import type { FillMix } from '../bench/fill-volume';
import type { Batches } from '../bench/mix-batches';
import type { Pours } from '../bench/pours';
import type { PressFit } from '../bench/press-fit';
import type { InlayStack } from '../bench/stack';
import type { Region } from '../geometry/region';
import type { Interval } from '../quantity/interval';
import type { SupplyUnit } from '../quantity/show-supply';
import type { Blank, Recipe } from '../recipe/recipe';
import type { Cut, Engrave, Step } from '../recipe/step';
import type { Cutting } from './cutting';
import type { LaserPlan } from './laser-plan';
import type { Piece } from './piece';
import type { PlanCost } from './plan-cost';
import type { PlanSchedule } from './plan-schedule';
import type { WoodPlan } from './plan-wood';

/** Everything that can be worked out of a recipe and its art. Lengths mm, areas mm2, volumes mm3, times s. */
export interface Plan {
    readonly version: 1;
    readonly recipe: Recipe;
    readonly arts: ReadonlyMap<string, ArtState>;
    readonly blanks: readonly BlankPlan[];
    readonly steps: readonly StepPlan[];
    /** The pieces before the first step and after each: frames[0] is the start, frames[i + 1] follows step i. */
    readonly frames: readonly (readonly Piece[])[];
    readonly totals: Times;
    readonly supplies: readonly Supply[];
    /** When everything is done for all the pieces, in hours of the shop where it says them. */
    readonly schedule: PlanSchedule;
    /** Sheets to buy and how to cut them, for all the pieces. */
    readonly cuttings: readonly Cutting[];
    /** For all the pieces; absent without a shop that says its currency. */
    readonly cost?: PlanCost;
    readonly cautions: readonly string[];
}

/** What became of an art file. */
export type ArtState =
    | { readonly kind: 'art'; readonly art: Art }
    | { readonly kind: 'missing' | 'outside' | 'too-large' | 'unreadable'; readonly message: string };

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
    readonly relief: Engrave;
    readonly pocket: Engrave;
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
    readonly veneer?: Interval;
    readonly stack?: InlayStack;
    readonly fit?: PressFit;
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
