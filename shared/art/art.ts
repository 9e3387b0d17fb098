import type { Region } from '../geometry/region';

/**
 * Art as it has been read: what is painted, in real millimetres, parts in painter's order.
 * The origin is the page's top left corner, y points down.
 */
export interface Art {
    readonly kind: 'vector' | 'bitmap';
    /** Size of the page in mm, after the recipe's width or height. */
    readonly page: { readonly width: number; readonly height: number };
    /** Whether the file itself says how large it is; if not and the recipe gives no size, px are taken as CSS px. */
    readonly physical: boolean;
    readonly parts: readonly ArtPart[];
    readonly problems: readonly ArtProblem[];
}

/** One painted shape, its stroke widened to an area, clipped as it is seen. */
export interface ArtPart {
    /** The shape's own id and those of the groups around it, innermost first; the same for classes. */
    readonly ids: readonly string[];
    readonly classes: readonly string[];
    /** 0 white to 1 black, after opacity over white. */
    readonly darkness: number;
    /** How much of what lies below it covers: 1 hides it, 0.25 lets three quarters show through. */
    readonly opacity: number;
    /** sRGB hex, for the bench view. */
    readonly colour: string;
    readonly region: Region;
    /** Whether a filled path was left open and closed by filling. */
    readonly open: boolean;
}

/** Something in the art file that a maker should know of. `line` and `column` are 1-based places in the art file. */
export interface ArtProblem {
    readonly kind:
        | 'unreadable'
        | 'unsupported'
        | 'refused'
        | 'unsized'
        | 'empty'
        | 'open-path'
        | 'text'
        | 'too-large'
        | 'off-page';
    /** What it concerns, such as an element's name. */
    readonly subject: string;
    readonly message: string;
    readonly line?: number;
    readonly column?: number;
}
