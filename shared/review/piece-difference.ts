import { exclude, union } from '../geometry/boolean';
import { area } from '../geometry/measure';
import { emptyRegion, type Region } from '../geometry/region';
import type { Memo } from '../plan/memo';
import type { Content, Mark, Piece } from '../plan/piece';

/** How one blank differs at the same moment of two versions. */
export interface PieceDifference {
    readonly blank: string;
    /** In what: "depth", "shape", "filling" and the like, each once. */
    readonly words: readonly string[];
    /** Where on its face, in mm of the blank; empty when it differs as a whole. */
    readonly region: Region;
    readonly area: number;
}

/** Less than this is no difference that a gauge would show, mm. */
const leastStep = 0.005;
/** Less than this is rounding of the grid, mm2. */
const leastArea = 0.01;

/** Steps of the earlier version have other numbers; this says which step of the later one each has become. */
export type Renumbering = ReadonlyMap<number, number>;

/** Undefined where the two are alike. */
export function pieceDifference(
    old: Piece | undefined,
    now: Piece | undefined,
    steps: Renumbering,
    memo: Memo,
): PieceDifference | undefined {
    if (old === undefined || now === undefined) {
        const piece = (now ?? old)!;
        return { blank: piece.blank, words: [old === undefined ? 'new' : 'gone'], region: emptyRegion, area: 0 };
    }
    const words = new Set(stateWords(old, now));
    const parts: Region[] = [];
    for (const [was, is] of pairs(old.marks, now.marks, steps)) {
        const part = markDifference(was, is, words, memo);
        if (part.rings.length > 0) parts.push(part);
    }
    const region = parts.length < 2 ? (parts[0] ?? emptyRegion) : memo.get('differing', keys(parts, memo), () => union(parts));
    const size = area(region);
    if (size < leastArea) words.delete('shape');
    return words.size === 0 ? undefined : { blank: now.blank, words: [...words], region, area: size };
}

function stateWords(old: Piece, now: Piece): string[] {
    const words: string[] = [];
    if (Math.abs(old.face.value - now.face.value) > leastStep) words.push('height of the face');
    if (old.masked !== now.masked) words.push('mask');
    if (old.sealed > 0 !== now.sealed > 0) words.push('seal');
    if (old.finished > 0 !== now.finished > 0) words.push('finish');
    if (old.peeled !== now.peeled) words.push('backing');
    if ((old.inside === undefined) !== (now.inside === undefined)) words.push('where it lies');
    return words;
}

function pairs(before: readonly Mark[], after: readonly Mark[], steps: Renumbering): [Mark | undefined, Mark | undefined][] {
    const left = partsOf(before, (step) => steps.get(step) ?? -1 - step);
    const found: [Mark | undefined, Mark | undefined][] = [];
    for (const [part, mark] of partsOf(after, (step) => step)) {
        found.push([left.get(part), mark]);
        left.delete(part);
    }
    return [...found, ...[...left.values()].map((mark): [Mark, undefined] => [mark, undefined])];
}

/** By the step that made them and which of its marks they are: one step may leave areas, pictures and an inlay's marks. */
function partsOf(marks: readonly Mark[], numberOf: (step: number) => number): Map<string, Mark> {
    const parts = new Map<string, Mark>();
    for (const mark of marks) {
        const what = mark.registration === true ? 'registration' : mark.tones === undefined ? 'area' : 'picture';
        const kind = `${numberOf(mark.step)} ${what}`;
        let count = 0;
        while (parts.has(`${kind} ${count}`)) count++;
        parts.set(`${kind} ${count}`, mark);
    }
    return parts;
}

function markDifference(old: Mark | undefined, now: Mark | undefined, words: Set<string>, memo: Memo): Region {
    if (old === undefined || now === undefined) {
        words.add(old === undefined ? 'burnt now' : 'burnt before');
        return (now ?? old)!.region;
    }
    // A mere colour has no depth of its own, only the face that it was burnt into.
    const deeper = now.kind !== 'toned' && Math.abs(old.depth.value - now.depth.value) > leastStep;
    const deep = old.kind !== now.kind || deeper;
    const toned = old.tone !== now.tone;
    const filled = contentDiffers(old.content, now.content);
    if (deep) words.add('depth');
    if (toned) words.add('tone');
    if (filled) words.add('filling');
    const parts = [regionDifference(old.region, now.region, words, memo)];
    if (old.content?.kind === 'inlay' && now.content?.kind === 'inlay') {
        parts.push(regionDifference(old.content.region, now.content.region, words, memo));
    }
    if (deep || toned || filled) parts.push(old.region, now.region);
    return memo.get('differing', keys(parts, memo), () => union(parts));
}

function contentDiffers(old: Content | undefined, now: Content | undefined): boolean {
    if (old === undefined || now === undefined) return old !== now;
    if (old.kind !== now.kind || Math.abs(old.proud - now.proud) > leastStep) return true;
    if (old.kind === 'resin' && now.kind === 'resin') return old.name !== now.name || old.colour !== now.colour;
    return (
        old.kind === 'inlay' && now.kind === 'inlay' && (old.from !== now.from || Math.abs(old.veneer - now.veneer) > leastStep)
    );
}

function regionDifference(old: Region, now: Region, words: Set<string>, memo: Memo): Region {
    if (old === now) return emptyRegion;
    const found = memo.get('apart', keys([old, now], memo), () => exclude(old, now));
    if (area(found) < leastArea) return emptyRegion;
    words.add('shape');
    return found;
}

function keys(regions: readonly Region[], memo: Memo): string {
    return regions.map((region) => memo.keyOf(region)).join(' ');
}
