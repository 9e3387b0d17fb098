import type { Bounds, Region } from '../../geometry/region';
import type { Matrix } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import type { ArtGroup, ArtPart } from '../art';
import { limits } from '../limits';
import type { Problems } from '../problems';
import type { Allowance } from '../shape/flatten';
import type { Cascade } from '../style/cascade';
import type { Colour } from '../style/colour';
import type { InheritedStyles } from '../style/inherited';
import type { Style } from '../style/properties';
import type { SvgElement, SvgTree } from '../xml/tree';

/** What a mask lets through of one part of the page: all of it at 1. */
export interface Pane {
    readonly region: Region;
    readonly through: number;
}

/** A part with the colour of its paint, as long as groups around it may still pale it. */
export interface DrawnPart extends Omit<ArtPart, 'colour'> {
    readonly paint: Colour;
}

/** What all of one file's drawing shares. */
export interface Drawing {
    readonly tree: SvgTree;
    readonly cascade: Cascade;
    readonly inherited: InheritedStyles;
    readonly problems: Problems;
    /** How far a flattened curve may stray from the true one, in mm on the page. */
    readonly tolerance: number;
    readonly allowance: Allowance;
    readonly rootFontSize: number;
    /** mm on the page of one px of the outermost viewport, for strokes that do not scale. */
    readonly pixel: number;
    /** mm */
    readonly page: { readonly width: number; readonly height: number };
    readonly parts: DrawnPart[];
    readonly clipRegions: Map<string, Region>;
    /** Elements drawn so far; counted down from limits.drawn. */
    drawn: number;
    /** Corners that patterns may still add; counted down from limits.patterned. */
    readonly patterned: { left: number };
    /** What masks let through, by where they are used; `left` counts down from limits.masks. */
    readonly masks: { left: number; readonly known: Map<string, readonly Pane[] | undefined> };
}

/** What is visible at a place of the page, in mm: inside the box, and inside the region if there is one. */
export interface Clip {
    readonly box: Bounds;
    readonly region: Region | undefined;
}

/** Whose paints `context-fill` and `context-stroke` mean. */
export interface Context {
    readonly element: SvgElement;
    readonly style: Style;
    readonly place: Place;
}

/** Where an element stands: everything it takes over from what is around it. */
export interface Place {
    /** From user units to mm on the page. */
    readonly matrix: Matrix;
    /** The nearest viewport, in user units. */
    readonly width: number;
    readonly height: number;
    readonly style: Style;
    readonly clip: Clip;
    /** The shape whose marker, or the `use` whose content, is drawn. */
    readonly context: Context | undefined;
    /** The translucent groups around, outermost first. */
    readonly groups: readonly ArtGroup[];
    readonly ids: readonly string[];
    readonly classes: readonly string[];
    readonly depth: number;
    /** What is being drawn by reference, so that nothing is drawn inside itself. */
    readonly within: readonly SvgElement[];
}

/** Counts one more element to draw; false once there have been too many. */
export function mayDraw(drawing: Drawing, element: SvgElement): boolean {
    if (drawing.drawn-- > 0) return true;
    if (drawing.drawn === -1) {
        drawing.problems.add(
            'too-large',
            element.name,
            phrase`Only ${limits.drawn} shapes are drawn; the rest is left out.`,
            element.offset,
        );
    }
    return false;
}

export function lengthsOf(drawing: Drawing, place: Place) {
    return { width: place.width, height: place.height, rootFontSize: drawing.rootFontSize };
}
