import type { Matrix } from '../../geometry/transform';
import type { SvgElement } from '../xml/tree';
import { isPhysical, millimetresPerPixel, toPixels } from './length';
import { parseViewBox, type ViewBox, viewBoxMatrix } from './view-box';
import { type ArtWish, wishedSize } from './wish';

/** The outermost svg on the page. */
export interface Page {
    /** mm */
    readonly width: number;
    readonly height: number;
    /** Whether the file itself says how large it is. */
    readonly physical: boolean;
    /** From the root's user units to mm on the page. */
    readonly matrix: Matrix;
    /** The root's viewport in its own user units. */
    readonly viewport: { readonly width: number; readonly height: number };
    /** mm of one px of the outermost viewport. */
    readonly pixel: number;
}

/**
 * The page that a root element and a wish give. With one side wished for, the other keeps the
 * proportions; with both, the drawing is fitted in as its preserveAspectRatio says. Undefined if
 * neither size nor viewBox says how large it is: then `content`, the extent of what is drawn in
 * px, does.
 */
export function pageOf(root: SvgElement, wish: ArtWish, content?: { width: number; height: number }): Page | undefined {
    const { width, height, viewBox, preserveAspectRatio } = root.attributes;
    const box = parseViewBox(viewBox);
    const size = sizeOf(absolute(width), absolute(height), box) ?? content;
    if (size === undefined) return undefined;
    const page = wishedSize(toMillimetres(size.width), toMillimetres(size.height), wish);
    const shown: ViewBox = box ?? { x: 0, y: 0, ...size };
    return {
        ...page,
        physical: isPhysical(width ?? '') || isPhysical(height ?? ''),
        matrix: viewBoxMatrix(shown, page.width, page.height, preserveAspectRatio),
        viewport: { width: shown.width, height: shown.height },
        pixel: Math.min(page.width / size.width, page.height / size.height),
    };
}

/** Without the last digits that a way through px leaves: 140mm is 140. */
function toMillimetres(pixels: number): number {
    return Math.round(pixels * millimetresPerPixel * 1e9) / 1e9;
}

/** px; undefined for what depends on a window that is not there. */
function absolute(text: string | undefined): number | undefined {
    if (text === undefined || /%|v[wh]|vm/i.test(text)) return undefined;
    return toPixels(text, 'x', { width: 0, height: 0, fontSize: 16, rootFontSize: 16 });
}

function sizeOf(width: number | undefined, height: number | undefined, box: ViewBox | undefined) {
    if (width !== undefined && height !== undefined) return { width, height };
    if (box === undefined) return undefined;
    if (width !== undefined) return { width, height: (width * box.height) / box.width };
    if (height !== undefined) return { width: (height * box.width) / box.height, height };
    return { width: box.width, height: box.height };
}
