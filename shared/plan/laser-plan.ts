import type { BitmapArt } from '../art/bitmap';
import type { LawNumbers } from '../burn/dose';
import type { RangeUse } from '../burn/interval-words';
import type { KerfWidth } from '../burn/kerf-width';
import type { SettlingSquare } from '../burn/settling-square';
import type { WallProfile } from '../burn/wall';
import type { Bounds, Region } from '../geometry/region';
import type { Lie } from '../piece/lie';
import type { Interval } from '../quantity/interval';
import type { Backing } from '../recipe/recipe';
import type { Cut, Engrave } from '../recipe/step';
import type { DotGrid } from '../toolpath/dots';

/** What one laser step does to its blank. Lengths mm, speeds mm/s, powers W, energies J. */
export interface LaserPlan {
    readonly step: Engrave | Cut;
    readonly blank: string;
    /** How the blank lies under it; absent where it was never turned over. */
    readonly lie?: Lie;
    /** What is burnt (engrave) or enclosed by the cut (cut), in the blank's coordinates, mirrored as the step says. */
    readonly region: Region;
    /** The edge that is followed, where the beam goes along it and leaves the area: the region is then as wide as the spot. */
    readonly line?: Region;
    /** Of a cut, how wide the beam parts the sheet. */
    readonly kerf?: KerfWidth;
    /** Of a cut, how much larger all round than its opening a part may be drawn that still goes in, as the coupon's clearance ladder found it, mm. */
    readonly fits?: number;
    /** The way of a cut's beam beside the drawn edge, in the waste; absent where it follows the edge itself. */
    readonly cutLine?: CutLine;
    /** What of it burns whole, where pictures burn as dots: the region holds wherever a dot may lie. */
    readonly whole?: Region;
    readonly pictures?: readonly DottedPicture[];
    /** What the beam goes over, mm2: of pictures only the dots. */
    readonly area: number;
    readonly perimeter: number;
    /** Art and places that made it, for rules about one placement. */
    readonly placed: readonly PlacedArt[];
    /** Axis about which the step mirrors, mm from the blank's left edge; absent when it does not. */
    readonly mirrorAxis?: number;
    /** Depth below the blank's first face; absent when neither wish, settings nor coupon tell. */
    readonly depth?: Interval;
    readonly through: boolean;
    /** How surely it comes out at the back; absent where it is not to, and where the thickness or the settings are not known. */
    readonly breakthrough?: Breakthrough;
    /** 0 bare to 1 darkest, for steps that only colour. */
    readonly tone?: number;
    readonly settings?: LaserSettings;
    /** Angle of the scan lines against the blank's width axis, rad. */
    readonly scanAngle: number;
    /** Of a pocket that was measured after its first passes: the settings are for what is left. */
    readonly goesOn?: GoesOn;
    readonly outlinePasses: number;
    /** With what an engraving's outline is burnt; absent without one, and while the settings are not known. */
    readonly outline?: OutlineSettings;
    /** Of a step that follows its outline, where it gets most. */
    readonly strongest?: StrongPlace;
    /** Height of the focus below the face for each area pass; absent where it stays on the face. */
    readonly focus?: readonly number[];
    /** Lean of the walls against the upright, rad. */
    readonly taper: number;
    /** Its walls as the beam makes them; absent where settings or spot are not known. */
    readonly wall?: WallProfile;
    /** How sure they are; absent where they are no deeper than the beam's width tells. */
    readonly deepWall?: DeepWall;
    /** How far the rim lies outside of what is drawn, from the width of the beam. */
    readonly growth: number;
    /** The narrowest burnt slot of which the bottom reaches half of the depth, and the narrowest strip between two that keeps its top, mm. */
    readonly finest?: { readonly slot: number; readonly rib: number };
    /** How far the drawn edge was moved outwards: the written offset and an inlay's clearance, less the growth. */
    readonly edge: number;
    /** Seconds the machine runs, all passes, marks included. */
    readonly machine: number;
    /** What the head moves over for it (mm on the blank), run-ups and marks included; absent while the settings are not known. */
    readonly reach?: Bounds;
    /** Lines that it takes in the machine file, all passes, marks included. */
    readonly fileLines: number;
    /** Marks of the inlays that this half belongs to, burnt in the same set-up. */
    readonly marks?: readonly MarkWork[];
}

/** The way along a cut that leaves what is kept at its drawn size. */
export interface CutLine {
    /** What it encloses, disjoint unless parts are nearer to each other than the kerf is wide. */
    readonly encloses: Region;
    /** The same as it is followed: with the waste on the right of each ring. */
    readonly followed: Region;
    /** Shapes that are kept, and those that fall out as waste, as they are drawn. */
    readonly parts: Region;
    readonly openings: Region;
    /** Half the kerf: how far it lies beside the edge, mm. */
    readonly shift: number;
    /** Lines so narrow that the kerf is wider: those are cut along their middle. */
    readonly lines: Region;
}

/** What settings promise of a burn that is to go all the way through. Lengths mm. */
export interface Breakthrough {
    /** Probability with which it is to come out at the back where the sheet is thickest. */
    readonly asked: number;
    /** Thick end of the sheet. */
    readonly thickest: number;
    /** What is reached at least with that probability. */
    readonly surely: number;
    readonly certain: boolean;
    /** How far half of all burns go beyond the back of a sheet of the usual thickness; negative where they do not reach it. */
    readonly spare: number;
    /** What the spare goes into. */
    readonly behind: Backing;
}

/** The registration marks of one inlay on one of its halves: burnt with settings of their own. */
export interface MarkWork {
    /** Index of the inlay step. */
    readonly inlay: number;
    readonly region: Region;
    readonly points: readonly { readonly x: number; readonly y: number }[];
    /** Holes through the veneer, or only a light tone that sanding takes away again. */
    readonly tone?: number;
    readonly settings?: LaserSettings;
}

/** A picture burnt as dots. */
export interface DottedPicture {
    /** Index among the step's placements. */
    readonly placement: number;
    readonly artName: string;
    readonly grid: DotGrid;
    /** How many dots burn. */
    readonly dots: number;
    /** Part of the picture's cells that they darken, counting what dots as wide as the spot share; absent while the spot is not known. */
    readonly covered?: number;
    /** Greys to look at, as nested regions: the k-th of n where at least k - 0.5 of n parts are burnt. */
    readonly tones: readonly Region[];
}

export interface PlacedArt {
    /** Index among the step's placements. */
    readonly index: number;
    readonly artName?: string;
    readonly bitmap: boolean;
    /** The picture, where it is burnt as dots. */
    readonly dithered?: BitmapArt;
    readonly inverse: boolean;
    /** Where its middle lies on the blank. */
    readonly centre: { readonly x: number; readonly y: number };
    /** mm between the points at which paint was looked at that lies on one another too often to be taken exactly. */
    readonly grid?: number;
    /** What it burns, before the step's mirror. */
    readonly region: Region;
    /** What it shows before it is turned inside out, and the boundary it was turned within. */
    readonly figure: Region;
    readonly boundary?: Region;
}

/** The walls of a deep pocket, mm. */
export interface DeepWall {
    /** Tangent by which it leans in the deep part beyond what the beam's width makes of it. */
    readonly lean: Interval;
    /** From the rim to the foot of the wall along one edge: 95 % of such walls. */
    readonly width: Interval;
    /** Measured ones on this board; without any the range is a usual one. */
    readonly walls: number;
}

/** Settings of passes along the edge of an engraved area. */
export interface OutlineSettings {
    readonly power: number;
    readonly powerRatio: number;
    readonly speed: number;
    readonly passes: number;
    /** What it is for: an edge as deep as the floor, or as dark as the area. */
    readonly purpose: 'depth' | 'tone';
    /** In the middle of the line, each pass, J/mm2; absent while the laser's spot is not known. */
    readonly dose?: number;
    /** How deep the deepest place across a straight edge is, mm; more than the floor where the laser cannot hold so little power. */
    readonly deepest?: number;
    /** Where the edge gets most, since the head is slow there; absent where no place gets more than the rest. */
    readonly strongest?: StrongPlace;
}

/** A burn that goes on from a depth that was measured in it. */
export interface GoesOn {
    /** So deep after so many passes, mm. */
    readonly reached: number;
    readonly passes: number;
    /** What the law said of them before, mm; and whether a piece can be so unlike it. */
    readonly expected: Interval;
    readonly credible: boolean;
    /** What is left, mm; through a sheet, to its thick end. */
    readonly left: number;
    /** All passes as the walls go by them: the law of this piece and one dose (J/mm2) that would give the whole depth. */
    readonly whole: { readonly law: LawNumbers; readonly dose: number; readonly passes: number };
}

/** A place of a line that gets more than the rest of it: where the head is slow and the power does not go down as far. Mm on the blank. */
export interface StrongPlace {
    /** Its dose against that of the rest. */
    readonly times: number;
    readonly deepest: number;
    readonly x: number;
    readonly y: number;
}

export interface LaserSettings {
    readonly power: number;
    readonly powerRatio: number;
    readonly speed: number;
    readonly pitch: number;
    readonly passes: number;
    /** Depth that they give by the law, whatever was asked for. */
    readonly gives: Interval;
    /** What the range of that depth is for; absent for a cut. */
    readonly givesFor?: RangeUse;
    /** Tone that they give, where the coupon was judged by tone. */
    readonly givesTone?: Interval;
    /** Whether the depth asked for can be reached. */
    readonly reached: boolean;
    /** Codes of the limits it ran into, as burn/solve names them. */
    readonly limits: readonly string[];
    /** Least and greatest dose (J/mm²) that was measured, where these settings lie outside of them. */
    readonly measuredDoses?: { readonly low: number; readonly high: number };
    /** The darkest tone of a judged square, where these settings are for a darker one. */
    readonly darkestJudged?: number;
    /** Pitch (mm) at which tones were judged, where these settings are for a tone. */
    readonly judgedPitch?: number;
    /** They are for a tone and burn through masking tape, which no square was judged through. */
    readonly throughTape?: true;
    /** Depth of one more square on the board that was measured, and of the mean of a pocket in it; absent where `gives` is for one of them, or a guess. */
    readonly onBoard?: { readonly square: Interval; readonly pocket: Interval };
    /** The square that would narrow the range of its depth most; absent of tones, cuts and pockets that go on from a measured depth. */
    readonly settling?: SettlingSquare;
    /** No coupon stands behind it. */
    readonly guess: boolean;
}
