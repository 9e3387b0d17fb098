import { farthest, unitsPerMillimetre } from '../../geometry/grid';
import { flatteningTolerance } from '../../geometry/shapes';
import { identity } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import type { Art } from '../art';
import { type Page, pageOf } from '../frame/page';
import type { ArtWish } from '../frame/wish';
import { limits } from '../limits';
import type { Problems } from '../problems';
import { Cascade } from '../style/cascade';
import { hexOverWhite } from '../style/colour';
import { computeStyle } from '../style/computed';
import { InheritedStyles } from '../style/inherited';
import { initialStyle } from '../style/properties';
import type { SvgTree } from '../xml/tree';
import { boundingBox } from './bounding-box';
import type { Drawing, Place } from './drawing';
import { painter } from './painter';
import { walk } from './walk';

/** mm; a wish for a coarser drawing than this is a slip. */
const coarsest = 10;

const rootFontSize = initialStyle.fontSize;

/** The viewport of a drawing that says nothing of its size: CSS's for replaced content. */
const startPlace: Place = {
    matrix: identity,
    width: 300,
    height: 150,
    style: initialStyle,
    clip: { box: { minX: 0, minY: 0, maxX: 0, maxY: 0 }, region: undefined },
    groups: [],
    ids: [],
    classes: [],
    depth: 0,
    within: [],
    context: undefined,
};

/** Draws a tree on its page; undefined, with a problem, if that has no usable size. */
export function drawTree(tree: SvgTree, wish: ArtWish, problems: Problems): Art | undefined {
    const { root } = tree;
    const cascade = new Cascade(tree, problems);
    const page = pageOf(root, wish) ?? pageOf(root, wish, contentSize(tree, cascade, problems));
    const kind =
        page === undefined || !(page.width > 0 && page.height > 0) ? 'empty' : isTooLarge(page) ? 'too-large' : undefined;
    if (page === undefined || kind !== undefined) {
        problems.add(kind ?? 'empty', 'svg', phrase`The page of this drawing has no size that could be burnt.`, root.offset);
        return undefined;
    }
    if (!page.physical && wish.width === undefined && wish.height === undefined) {
        problems.add('unsized', 'svg', phrase`The file does not say how large it is; 96 px are taken as an inch.`, root.offset);
    }
    const drawing = newDrawing(tree, cascade, problems, page, toleranceOf(wish));
    const { width, height, physical } = page;
    const box = { minX: 0, minY: 0, maxX: width, maxY: height };
    drawRoot(drawing, { ...startPlace, matrix: page.matrix, ...page.viewport, clip: { box, region: undefined } });
    if (drawing.parts.length === 0) problems.add('empty', 'svg', phrase`Nothing is painted in this drawing.`, root.offset);
    const parts = drawing.parts.map(({ paint, ...part }) => ({ ...part, colour: hexOverWhite(paint, part.opacity) }));
    return { kind: 'vector', page: { width, height }, physical, parts, problems: problems.all() };
}

/** Finer than the grid of the polygon library makes points and nothing else. */
function toleranceOf({ tolerance }: ArtWish): number {
    if (tolerance === undefined || !(tolerance > 0 && tolerance < coarsest)) return flatteningTolerance;
    return Math.max(tolerance, 1 / unitsPerMillimetre);
}

function isTooLarge({ width, height }: Page): boolean {
    return !(Math.max(width, height) <= farthest);
}

function newDrawing(
    tree: SvgTree,
    cascade: Cascade,
    problems: Problems,
    page: Omit<Page, 'matrix' | 'physical'>,
    tolerance: number,
): Drawing {
    const { viewport, pixel, width, height } = page;
    return {
        tree,
        cascade,
        inherited: new InheritedStyles(cascade, problems, { ...viewport, rootFontSize }),
        problems,
        tolerance,
        allowance: { corners: limits.corners, told: false },
        rootFontSize,
        pixel,
        page: { width, height },
        parts: [],
        clipRegions: new Map(),
        drawn: limits.drawn,
        patterned: { left: limits.patterned },
        masks: { left: limits.masks, known: new Map() },
    };
}

function drawRoot(drawing: Drawing, place: Place): void {
    const { root } = drawing.tree;
    const visitor = painter(drawing);
    const computed = computeStyle(root, initialStyle, drawing.cascade, { ...place, rootFontSize }, drawing.problems);
    if (!computed.style.shown) return;
    if (computed.text('transform') !== undefined) {
        const message = phrase`A transform of the outermost <svg> is not supported and is left out.`;
        drawing.problems.add('unsupported', 'transform', message, root.offset);
    }
    visitor.around(root, computed, { ...place, style: computed.style }, (inner) => {
        for (const child of root.children) walk(drawing, child, inner, visitor);
    });
}

/** px from the origin to the far corner of what is drawn, for a drawing that says nothing of its size. */
function contentSize(tree: SvgTree, cascade: Cascade, problems: Problems): { width: number; height: number } | undefined {
    const drawing = newDrawing(
        tree,
        cascade,
        problems,
        { width: 0, height: 0, viewport: startPlace, pixel: 1 },
        flatteningTolerance,
    );
    const box = boundingBox(drawing, tree.root, startPlace);
    return box !== undefined && box.maxX > 0 && box.maxY > 0 ? { width: box.maxX, height: box.maxY } : undefined;
}
