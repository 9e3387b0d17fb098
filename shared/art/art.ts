import type { Region } from '../geometry/region';
import type { Message } from '../recipe/phrase';
import type { Shading } from './compose/shading';

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
    /** 0 white to 1 black, after opacity over white; of a gradient the mean. */
    readonly darkness: number;
    /** How much of what lies below it covers: 1 hides it, 0.25 lets three quarters show through; of a gradient the mean. */
    readonly opacity: number;
    /** How darkness and opacity run over the page, for a gradient. */
    readonly shading?: Shading;
    /** The translucent groups that it is part of with others, outermost first; the same object for all parts of one. */
    readonly groups?: readonly ArtGroup[];
    /** sRGB hex, for the bench view. */
    readonly colour: string;
    readonly region: Region;
    /** Whether a filled path was left open and closed by filling. */
    readonly open: boolean;
}

/** Parts that are put together first and then seen through as one. */
export interface ArtGroup {
    readonly opacity: number;
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
    readonly message: Message;
    /** In how many more places the same was met. */
    readonly more?: number;
    readonly line?: number;
    readonly column?: number;
}
