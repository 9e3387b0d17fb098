import type { Region } from '../geometry/region';
import type { Interval } from '../quantity/interval';

/**
 * One blank as it is at a moment of the work. Depths are mm below its first face; `face` is how far
 * the face has come down by sanding.
 */
export interface Piece {
    readonly blank: string;
    readonly face: Interval;
    readonly masked: boolean;
    /** Coats of sealer on it since it was last sanded to the wood. */
    readonly sealed: number;
    readonly finished: number;
    readonly sanded: boolean;
    /** Its backing has been taken off. */
    readonly peeled: boolean;
    /** Glued face down into another blank. */
    readonly inside?: string;
    readonly marks: readonly Mark[];
}

/** One thing a laser step made, and what has been put into it since. Later marks lie over earlier ones. */
export interface Mark {
    readonly step: number;
    readonly kind: 'toned' | 'pocket' | 'through' | 'cut';
    readonly region: Region;
    /** Floor of it below the first face; of a mere colour, the face that it was burnt into. */
    readonly depth: Interval;
    readonly tone: number;
    /** Burnt as dots: nested regions, the k-th of n where at least k - 0.5 of n parts are burnt. */
    readonly tones?: readonly Region[];
    readonly sealed: boolean;
    /** A registration mark of an inlay, which takes nothing in. */
    readonly registration?: true;
    readonly content?: Content;
}

export type Content =
    | {
          readonly kind: 'resin';
          readonly step: number;
          readonly name: string;
          readonly colour: string;
          readonly opacity: number;
          /** Top of the resin above the first face (before sanding) or level with the sanded face (0 proud). */
          readonly proud: number;
      }
    | {
          readonly kind: 'inlay';
          readonly step: number;
          readonly from: string;
          /** What of the veneer lies in here, in this blank's coordinates. */
          readonly region: Region;
          readonly collides: Region;
          readonly film: number;
          readonly veneer: number;
          /** Top of the veneer above the first face; 0 once flush. */
          readonly proud: number;
      };
