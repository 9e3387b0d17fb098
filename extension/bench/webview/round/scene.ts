import type { SectionView } from '../../../../shared/view/bench-view';
import type { RoundView } from '../../../../shared/view/round-view';
import type { Orbit } from './orbit';

/** One piece of the picture and how it lies; lengths mm. */
export interface PlacedPiece {
    readonly view: RoundView;
    /** Where the point about which it turns lies on the bench, and how high its lower side. */
    readonly x: number;
    readonly y: number;
    readonly z: number;
    /** Turned over about the line that runs away from the maker, rad: π lies face down. */
    readonly turn: number;
    /** The point of its face about which it turns; its middle, where absent. */
    readonly about?: { readonly x: number; readonly y: number };
}

/** A part of the bench, mm. */
export interface Bounds {
    readonly left: number;
    readonly right: number;
    readonly far: number;
    readonly near: number;
}

/** Everything that a picture in the round depends on. */
export interface RoundScene {
    readonly pieces: readonly PlacedPiece[];
    /** What the picture has to show; all pieces, where absent. */
    readonly within?: Bounds;
    /** Cut open there: what is nearer to the maker is left out. */
    readonly section?: SectionView | undefined;
    readonly orbit: Orbit;
    /** From where the light comes: 0 from the right, growing against the clock; and how high it stands. rad. */
    readonly light: { readonly around: number; readonly above: number };
    /** How many times heights are drawn. */
    readonly heights: number;
}

/** What draws it. */
export interface RoundViewer {
    show(scene: RoundScene): void;
    resize(width: number, height: number): void;
    /** The picture as a PNG in base64, `width` px wide. */
    picture(width: number): string;
    dispose(): void;
}

/** What the chunk that is loaded for it offers. */
export interface RoundChunk {
    /** @throws where there is no WebGL */
    readonly createViewer: (canvas: HTMLCanvasElement) => RoundViewer;
    /** A still picture without WebGL. */
    readonly createStill: (canvas: HTMLCanvasElement) => RoundViewer;
}
