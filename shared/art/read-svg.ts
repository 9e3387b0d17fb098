import { phrase } from '../recipe/phrase';
import type { Art } from './art';
import { drawTree } from './draw/draw-tree';
import type { ArtWish } from './frame/wish';
import { limits } from './limits';
import { Problems } from './problems';
import { buildTree } from './xml/tree';
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
        problems.add('unreadable', 'SVG', phrase`This drawing could not be read (${reason}).`);
        return nothing(problems);
    }
}

function read(text: string, wish: ArtWish, problems: Problems): Art {
    if (!looksLikeXml(text, problems)) return nothing(problems);
    const normal = readXml(text, problems);
    if (normal === undefined) {
        problems.add('unreadable', 'SVG', phrase`There is no <svg> in this file.`);
        return nothing(problems);
    }
    return drawTree(buildTree(normal), wish, problems) ?? nothing(problems);
}

function looksLikeXml(text: string, problems: Problems): boolean {
    if (text.length > limits.text) {
        problems.add('too-large', 'file', phrase`The file is longer than the ${limits.text} characters that are read.`);
        return false;
    }
    if (text.trim() === '') {
        problems.add('empty', 'file', phrase`The file is empty.`);
        return false;
    }
    if (text.startsWith('\u001f')) {
        problems.add('unreadable', 'file', phrase`The file is compressed; save it as plain SVG.`);
        return false;
    }
    if (text.slice(0, 100).includes('\0')) {
        problems.add('unreadable', 'file', phrase`The file is not text as UTF-8 has it; save it as UTF-8.`);
        return false;
    }
    return true;
}

function nothing(problems: Problems): Art {
    return { kind: 'vector', page: { width: 0, height: 0 }, physical: false, parts: [], problems: problems.all() };
}
