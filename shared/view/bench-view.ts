import type { Side } from '../piece/lie';
import type { Where } from '../quantity/where';
import type { Severity } from '../recipe/finding';
import type { StepKind } from '../recipe/step';
import type { GrainView } from './round-view';
import type { RunView } from './run-view';

/**
 * What the bench view draws, and nothing it would have to work out: plain, serialisable data made
 * by the server from a Plan. Lengths in mm, times in s. y points down, origin at a blank's top left.
 */
export interface BenchView {
    readonly version: 1;
    readonly uri: string;
    /** Version of the text this was planned from, so that a late answer can be told apart. */
    readonly textVersion: number;
    readonly recipe: string;
    readonly title: string;
    readonly revision: number;
    readonly make: number;
    /** Every recipe of the file, for choosing. */
    readonly recipes: readonly { readonly name: string; readonly title: string }[];
    /** Set when the recipe's text is broken: the picture is of what could be read of it. */
    readonly stale?: string;
    readonly blanks: readonly BlankView[];
    readonly steps: readonly StepView[];
    /** What other numbers of passes would cost is still being worked out. */
    readonly more?: boolean;
    /** Path data in mm by a name made from it; frames point at them. What the asker said it has is left out. */
    readonly paths: Readonly<Record<string, string>>;
    /** The film strip: one frame before the first step, then one after each. */
    readonly frames: readonly FrameView[];
    readonly inlays: readonly InlayView[];
    readonly findings: readonly FindingView[];
    /** Absent where `unknown` says why they are not known. */
    readonly totals?: TotalsView;
    readonly unknown?: string;
    readonly supplies: readonly SupplyView[];
    readonly run: RunView;
    readonly cautions: readonly string[];
}

/** A number as it stands in the text, to be typed over. */
export interface WrittenView {
    readonly where: Where;
    readonly text: string;
}

/** Art or a shape that can be moved about on its blank: the only one of its step. */
export interface MovableView {
    readonly what: string;
    /** Where its middle lies, mm. */
    readonly x: number;
    readonly y: number;
    readonly unit: string;
    /** The place that is written, or the whole line that has none yet. */
    readonly where: Where;
}

export interface BlankView {
    readonly name: string;
    readonly label: string;
    readonly width: number;
    readonly height: number;
    readonly thickness: number;
    /** The unit of length in which the maker wrote its size. */
    readonly unit?: string;
    readonly colour: string;
    readonly burnt: string;
    /** Along which side the grain runs; absent when the recipe does not say. */
    readonly grain?: 'width' | 'height';
    /** How it was sawn and how its pores lie, for the drawn grain; absent where none is drawn. */
    readonly figure?: Pick<GrainView, 'sawn' | 'pores'>;
    readonly backing: 'foil' | 'tape' | 'none';
    /** Its size as it is written. */
    readonly size?: WrittenView;
    readonly where: Where;
}

export interface StepView {
    readonly index: number;
    /** The same as in the checklist. */
    readonly id: string;
    readonly kind: StepKind;
    /** Such as "Engrave pocket". */
    readonly title: string;
    /** Short facts, each a line: depth and its interval, settings, area, volume, what is left. */
    readonly facts: readonly FactView[];
    readonly blank?: string;
    readonly machine: number;
    readonly attended: number;
    readonly waiting: number;
    /** Why it could not be planned, in the maker's words. */
    readonly unplanned?: string;
    readonly movable?: MovableView;
    /** By how many passes its depth can be reached, the fewest first; absent while that is being worked out, too. */
    readonly trade?: readonly TradeView[];
    readonly where: Where;
}

/** One way to a depth: what it costs. */
export interface TradeView {
    readonly passes: number;
    /** The machine's, s. */
    readonly time: number;
    /** How far the depth may be off, mm. */
    readonly off: number;
    /** What one pass takes off, mm, by which it chars. */
    readonly each: number;
    readonly chosen: boolean;
    /** As many passes as planned at a lower speed, at which the head turns sooner. */
    readonly sooner?: true;
    /** "3 passes: 24 min, ± 0.14 mm, 0.18 mm and 0.72 J/mm² a pass". */
    readonly words: string;
}

export interface FactView {
    readonly label: string;
    readonly value: string;
    /** The place of the number in the text, when there is one. */
    readonly where?: Where;
    /** What stands there, where it is a number that can be typed over. */
    readonly written?: string;
}

export interface FrameView {
    /** Index of the step just done; -1 before the first. */
    readonly step: number;
    readonly pieces: readonly PieceView[];
}

export interface PieceView {
    readonly blank: string;
    /** Which face is up; absent for a blank that is never turned over. */
    readonly side?: Side;
    /** An inlaid half lies face down in the other and is no longer a piece of its own. */
    readonly gone: boolean;
    readonly masked: boolean;
    readonly sealed: boolean;
    readonly finished: boolean;
    readonly sanded: boolean;
    /** Through which colour its coats have it seen; the light that they take away is multiplied away. */
    readonly tint?: string | undefined;
    /** What is left of the blank, where parts have been cut free or holes have fallen out; absent while it is whole. */
    readonly outline?: string;
    /** Painted in this order over the bare face. */
    readonly layers: readonly LayerView[];
    /** Cut straight across at `section.y`. */
    readonly section: SectionView;
}

export interface LayerView {
    readonly path: string;
    readonly kind: 'burnt' | 'toned' | 'through' | 'filled' | 'inlaid' | 'spilled' | 'cut';
    readonly colour: string;
    readonly opacity: number;
    /** Step that made it. */
    readonly step: number;
    /** Depth below the blank's first face, for shading. */
    readonly depth: number;
    /** Of the line of a cut, how wide it parts the wood, mm. */
    readonly width?: number;
    /** Metal powder is in it. */
    readonly metal?: true;
    /** Through which colour the coats on it have it seen. */
    readonly tint?: string | undefined;
    /** Grain direction of what was let in, when it differs from the blank's. */
    readonly grain?: 'width' | 'height';
    readonly label: string;
}

/** A cut along a straight line; x runs along it. Heights are mm above the blank's bottom. */
export interface SectionView {
    readonly y: number;
    readonly width: number;
    /** Height of the sheet's first face. */
    readonly top: number;
    /** Height of its face now. */
    readonly face: number;
    readonly spans: readonly SpanView[];
}

export interface SpanView {
    readonly from: number;
    readonly to: number;
    readonly bottom: number;
    readonly top: number;
    readonly kind: 'wood' | 'resin' | 'inlay' | 'glue' | 'foil' | 'char' | 'coat' | 'tape';
    readonly colour: string;
    /** The band in which `top` may be; absent where it is known. */
    readonly band?: { readonly low: number; readonly high: number };
    readonly label: string;
}

/** A place on a blank, mm. */
export interface PlaceView {
    readonly x: number;
    readonly y: number;
}

/** Both halves of an inlay, as they are and as they meet. */
export interface InlayView {
    readonly step: number;
    readonly relief: HalfView;
    readonly pocket: HalfView;
    /** A part that was cut out and goes in as it came from the laser, not turned over. */
    readonly faceUp?: true;
    /** The relief laid onto the pocket: where wood meets wood and where there is a hole. Paths are ids. */
    readonly meeting: { readonly fits: string; readonly collides: string; readonly empty: string };
    /** Where labels can point to what does not meet, on the pocket's blank; absent where the halves fit. */
    readonly amiss?: { readonly collides?: PlaceView; readonly empty?: PlaceView };
    readonly verdict: string;
    readonly good: boolean;
}

export interface HalfView {
    readonly blank: string;
    /** What stands (relief) or what is dug (pocket), in its own blank as it lies under the laser. */
    readonly path: string;
    readonly colour: string;
    readonly burnt: string;
    readonly width: number;
    readonly height: number;
    /** Middle of its art, about which a relief is turned over and which comes to lie on the pocket's, mm. */
    readonly middle: { readonly x: number; readonly y: number };
    /** Registration marks, in the same coordinates. */
    readonly marks?: string;
    /** What is left of the sheet around a relief's boundary. */
    readonly frame?: string;
}

export interface FindingView {
    readonly rule: string;
    readonly severity: Severity;
    readonly message: string;
    readonly step?: number;
    readonly where: Where;
    /** What its fix does, where there is one. */
    readonly fix?: string;
    /** Its fix is still being tried out; a later picture of the same text has it. */
    readonly trying?: boolean;
    /** What is said of the things that follow from it. */
    readonly follows?: readonly string[];
    readonly spots: readonly { readonly blank: string; readonly x: number; readonly y: number; readonly size: number }[];
}

export interface TotalsView {
    readonly machine: number;
    readonly attended: number;
    readonly waiting: number;
}

export interface SupplyView {
    readonly item: string;
    readonly amount: string;
    readonly note: string;
    /** With its currency; absent where nobody has said a price. */
    readonly cost?: string;
}
