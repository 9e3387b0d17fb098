import { farthest } from '../geometry/grid';
import { flatteningTolerance } from '../geometry/shapes';
import { identity } from '../geometry/transform';
import type { Art } from './art';
import { boundingBox } from './draw/bounding-box';
import type { Drawing, Place } from './draw/drawing';
import { painter } from './draw/painter';
import { walk } from './draw/walk';
import { pageOf } from './frame/page';
import type { ArtWish } from './frame/wish';
import { limits } from './limits';
import { Problems } from './problems';
import { Cascade } from './style/cascade';
import { computeStyle } from './style/computed';
import { initialStyle } from './style/properties';
import { buildTree, type SvgTree } from './xml/tree';
import { readXml } from './xml/xml';

/**
 * Reads an SVG file's text as it is seen: what is painted, in mm, in painter's order. Never throws
 * and opens nothing: whatever cannot be read, drawn or reached is among the problems.
 */
export function readSvg(text: string, wish: ArtWish = {}): Art {
    const source = text.startsWith('\uFEFF') ? text.slice(1) : text;
    const problems = new Problems(source);
    try {
        return read(source, wish, problems);
    } catch (error) {
        const reason = error instanceof Error ? error.message : String(error);
        problems.add('unreadable', 'SVG', `This drawing could not be read (${reason}).`);
        return nothing(problems);
    }
}

function read(text: string, wish: ArtWish, problems: Problems): Art {
    if (!looksLikeXml(text, problems)) return nothing(problems);
    const normal = readXml(text, problems);
    if (normal === undefined) {
        problems.add('unreadable', 'SVG', 'There is no <svg> in this file.');
        return nothing(problems);
    }
    const tree = buildTree(normal);
    return draw(tree, wish, problems);
}

function looksLikeXml(text: string, problems: Problems): boolean {
    if (text.length > limits.text) {
        problems.add('too-large', 'file', `The file is longer than the ${limits.text} characters that are read.`);
        return false;
    }
    if (text.trim() === '') {
        problems.add('empty', 'file', 'The file is empty.');
        return false;
    }
    if (text.startsWith('\u001f')) {
        problems.add('unreadable', 'file', 'The file is compressed; save it as plain SVG.');
        return false;
    }
    if (text.slice(0, 100).includes('\0')) {
        problems.add('unreadable', 'file', 'The file is not text as UTF-8 has it; save it as UTF-8.');
        return false;
    }
    return true;
}

function draw(tree: SvgTree, wish: ArtWish, problems: Problems): Art {
    const { root } = tree;
    const drawing: Drawing = {
        tree,
        cascade: new Cascade(tree, problems),
        problems,
        tolerance: wish.tolerance !== undefined && wish.tolerance > 0 ? wish.tolerance : flatteningTolerance,
        allowance: { corners: limits.corners, told: false },
        rootFontSize: initialStyle.fontSize,
        parts: [],
        clipRegions: new Map(),
        drawn: limits.drawn,
    };
    const page = pageOf(root, wish) ?? pageOf(root, wish, contentSize(drawing));
    if (page === undefined || !(page.width > 0 && page.height > 0) || Math.max(page.width, page.height) > farthest) {
        const kind = page !== undefined && page.width > 0 && page.height > 0 ? 'too-large' : 'empty';
        problems.add(kind, 'svg', 'The page of this drawing has no size that could be burnt.', root.offset);
        return nothing(problems);
    }
    if (!page.physical && wish.width === undefined && wish.height === undefined) {
        const message = 'The file does not say how large it is; 96 px are taken as an inch.';
        problems.add('unsized', 'svg', message, root.offset);
    }
    const place: Place = {
        ...startPlace,
        matrix: page.matrix,
        ...page.viewport,
        clip: { box: { minX: 0, minY: 0, maxX: page.width, maxY: page.height }, region: undefined },
    };
    walkRoot(drawing, place);
    if (drawing.parts.length === 0) problems.add('empty', 'svg', 'Nothing is painted in this drawing.', root.offset);
    const { width, height, physical } = page;
    return { kind: 'vector', page: { width, height }, physical, parts: drawing.parts, problems: problems.all() };
}

const startPlace: Place = {
    matrix: identity,
    width: 300,
    height: 150,
    style: initialStyle,
    clip: { box: { minX: 0, minY: 0, maxX: 0, maxY: 0 }, region: undefined },
    opacity: 1,
    ids: [],
    classes: [],
    depth: 0,
    within: [],
};

function walkRoot(drawing: Drawing, place: Place): void {
    const { root } = drawing.tree;
    const visitor = painter(drawing);
    const computed = computeStyle(
        root,
        initialStyle,
        drawing.cascade,
        { ...place, rootFontSize: drawing.rootFontSize },
        drawing.problems,
    );
    if (!computed.style.shown) return;
    visitor.around(root, computed, { ...place, style: computed.style }, (inner) => {
        for (const child of root.children) walk(drawing, child, inner, visitor);
    });
}

/** px from the origin to the far corner of what is drawn, for a drawing that says nothing of its size. */
function contentSize(drawing: Drawing): { width: number; height: number } | undefined {
    const box = boundingBox(drawing, drawing.tree.root, startPlace);
    return box !== undefined && box.maxX > 0 && box.maxY > 0 ? { width: box.maxX, height: box.maxY } : undefined;
}

function nothing(problems: Problems): Art {
    return { kind: 'vector', page: { width: 0, height: 0 }, physical: false, parts: [], problems: problems.all() };
}
