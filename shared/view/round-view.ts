/**
 * A piece at a moment of its work as it stands in the round: what its surfaces and walls are, measured from the model of the piece. Plain,
 * serialisable data made by the worker. Lengths mm; x right and y down on the face as in the bench view, z up from the blank's lower side.
 */
export interface RoundView {
    readonly blank: string;
    /** Index into the frames. */
    readonly frame: number;
    readonly width: number;
    readonly height: number;
    readonly thickness: number;
    /** The recipe does not say how thick the blank is: a thickness was assumed. */
    readonly assumed?: true;
    readonly looks: readonly LookView[];
    readonly surfaces: readonly SurfaceView[];
    readonly walls: readonly WallView[];
    /** Colour that lies on surfaces without a height of its own, laid one over the other in this order. */
    readonly paints: readonly PaintView[];
    /** What is there, in words, for whoever does not see the picture. */
    readonly words: string;
}

export type LookKind = 'wood' | 'char' | 'resin' | 'metal' | 'foil' | 'tape' | 'glue';

/** How something looks, seen straight from above. */
export interface LookView {
    readonly kind: LookKind;
    readonly colour: string;
    /** 0 is as dull as soot, 1 as glossy as poured resin. */
    readonly gloss: number;
    /** Which wood's grain is in it; absent where none shows. */
    readonly grain?: GrainView;
}

/** What the drawn grain follows. It is drawn by rule, no picture of this very board. */
export interface GrainView {
    /** The same name always gives the same board. */
    readonly name: string;
    readonly along: 'width' | 'height';
    readonly sawn: 'quarter' | 'rift' | 'flat';
    readonly pores: 'diffuse' | 'semi-ring' | 'ring' | 'softwood';
}

/** Level places that look alike. */
export interface SurfaceView {
    /** Index into the looks. */
    readonly look: number;
    readonly z: number;
    /** Seen from below. */
    readonly down?: true;
    /** x0, y0, x1, y1, … */
    readonly points: readonly number[];
    /** Three indices of points a triangle. */
    readonly corners: readonly number[];
}

/** Upright bands between two heights that look alike. */
export interface WallView {
    readonly look: number;
    /** x0, y0, x1, y1, low, high of each; what stands lies on the left of the way from 0 to 1 with y up. */
    readonly bands: readonly number[];
    /** How the beam made it lean. */
    readonly lean?: LeanView;
}

/** A wall that runs out inwards from its rim to its foot. */
export interface LeanView {
    /** Below the rim's height, and how far inside of it, in pairs from the rim down. */
    readonly profile: readonly number[];
    /** Direction in which it runs out at both ends of each band: x, y at 0 and x, y at 1, longer at corners. */
    readonly ways: readonly number[];
}

export interface PaintView {
    readonly colour: string;
    readonly opacity: number;
    readonly z: number;
    readonly points: readonly number[];
    readonly corners: readonly number[];
}
