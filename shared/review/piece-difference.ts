import { exclude, union } from '../geometry/boolean';
import { area } from '../geometry/measure';
import { emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { type Column, hair, isGone, type Layer, layersAbove, ownLayer } from '../piece/column';
import { type Cell, type Face, isMasked } from '../piece/face';
import { boxesMeet, halve, type Remembered, TooTangled } from '../piece/partition';
import type { Plan } from '../plan/plan';

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

/** A blank at a moment of a version; without a face where that version has no such blank. */
export interface Side {
    readonly plan: Plan;
    readonly face: Face | undefined;
}

/** Undefined where the two are alike. */
export function pieceDifference(before: Side, after: Side, steps: Renumbering, memo: Remembered): PieceDifference | undefined {
    const [old, now] = [before.face, after.face];
    if (old === undefined || now === undefined) {
        const face = (now ?? old)!;
        return { blank: face.blank, words: [old === undefined ? 'new' : 'gone'], region: emptyRegion, area: 0 };
    }
    const words = new Set(stateWords(before.plan, old, after.plan, now));
    const regions: Region[] = [];
    const isSame = (a: number | undefined, b: number | undefined): boolean => (a === undefined ? a : steps.get(a)) === b;
    try {
        for (const { region, columns } of overlaid(old, now, memo)) {
            const found = columnWords(columns, { before: before.plan, after: after.plan, isSame, old, now });
            if (found.length === 0 || area(region) < leastArea) continue;
            for (const word of found) words.add(word);
            regions.push(region);
        }
    } catch (problem) {
        if (!(problem instanceof TooTangled)) throw problem;
        words.add('shape');
    }
    regions.push(...drawnDifferences(old, now, isSame, words, memo));
    const region = regions.length < 2 ? (regions[0] ?? emptyRegion) : united(regions, memo);
    return words.size === 0 ? undefined : { blank: now.blank, words: [...words], region, area: area(region) };
}

function stateWords(before: Plan, old: Face, after: Plan, now: Face): string[] {
    const words: string[] = [];
    if (Math.abs(old.level.value - now.level.value) > leastStep) words.push('height of the face');
    if (isMasked(old) !== isMasked(now)) words.push('mask');
    if (isCoated(before, old, 'seal') !== isCoated(after, now, 'seal')) words.push('seal');
    if (isCoated(before, old, 'finish') !== isCoated(after, now, 'finish')) words.push('finish');
    if (old.backed !== now.backed) words.push('backing');
    if ((old.inside === undefined) !== (now.inside === undefined)) words.push('where it lies');
    return words;
}

function isCoated(plan: Plan, { bare }: Face, kind: 'seal' | 'finish'): boolean {
    return layersAbove(bare).some((layer) => layer.kind === 'coat' && plan.steps[layer.step ?? -1]?.step.kind === kind);
}

interface Overlaid {
    readonly region: Region;
    readonly columns: readonly [Column, Column];
}

/** Both partitions laid over each other, but for what is bare in both. What is the same drawing in both is not cut. */
function overlaid(old: Face, now: Face, memo: Remembered): Overlaid[] {
    const found: Overlaid[] = [];
    const leftOfNow = new Map<Cell, Region>(now.cells.map((cell) => [cell, cell.region]));
    for (const was of old.cells) {
        let left = was.region;
        for (const is of now.cells) {
            if (!boxesMeet(was.box, is.box) || left.rings.length === 0) continue;
            const rest = leftOfNow.get(is)!;
            if (left === rest) {
                found.push({ region: left, columns: [was.column, is.column] });
                leftOfNow.set(is, emptyRegion);
                left = emptyRegion;
                continue;
            }
            const { inside, outside } = halve(left, rest, memo);
            if (inside.rings.length === 0) continue;
            found.push({ region: inside, columns: [was.column, is.column] });
            leftOfNow.set(is, halve(rest, left, memo).outside);
            left = outside;
        }
        if (left.rings.length > 0) found.push({ region: left, columns: [was.column, now.bare] });
    }
    for (const [is, left] of leftOfNow) if (left.rings.length > 0) found.push({ region: left, columns: [old.bare, is.column] });
    return found;
}

interface Compared {
    readonly before: Plan;
    readonly after: Plan;
    readonly old: Face;
    readonly now: Face;
    readonly isSame: (before: number | undefined, after: number | undefined) => boolean;
}

/** In what a place differs. */
function columnWords([was, is]: Overlaid['columns'], compared: Compared): string[] {
    const { isSame, old, now } = compared;
    const [workedThen, workedNow] = [workOn(was), workOn(is)];
    if (workedThen === undefined || workedNow === undefined) {
        if (workedThen === workedNow) return [];
        // The same step has burnt something else elsewhere: its outline has moved.
        const other = workedThen === undefined ? old : now;
        const moved = other.cells.some(({ column }) => {
            const there = workOn(column);
            return workedThen === undefined ? isSame(there, workedNow) : isSame(workedThen, there);
        });
        return [moved ? 'shape' : workedThen === undefined ? 'burnt now' : 'burnt before'];
    }
    const words: string[] = [];
    const [floorThen, floorNow] = [ownFloor(was, old), ownFloor(is, now)];
    if (floorThen === undefined || floorNow === undefined ? floorThen !== floorNow : Math.abs(floorThen - floorNow) > leastStep)
        words.push('depth');
    if (toneOf(compared.before, was) !== toneOf(compared.after, is)) words.push('tone');
    if (fillingDiffers(was, is, compared)) words.push('filling');
    return words;
}

/** The step that has worked here last with a beam; undefined for bare wood. */
function workOn({ tone, digs, layers }: Column): number | undefined {
    return tone ?? digs.findLast(({ depth }) => depth.value > hair)?.step ?? layers.find(({ kind }) => kind === 'resin')?.step;
}

/** Where the blank's own wood begins, below the first face; of a mere colour, nothing has been taken from the face. */
function ownFloor(column: Column, { level }: Face): number | undefined {
    if (isGone(column)) return undefined;
    const { top, layers } = column;
    const own = ownLayer(column);
    const upper = layers[(own < 0 ? layers.length : own + 1) - 2]?.down ?? top;
    return column.digs.length === 0 ? upper.value - level.value : upper.value;
}

function toneOf(plan: Plan, { tone }: Column): number | undefined {
    return tone === undefined ? undefined : (plan.steps[tone]?.laser?.tone ?? 1);
}

function fillingDiffers(was: Column, is: Column, { before, after }: Compared): boolean {
    const [then, now] = [was, is].map(({ layers }) => layers.filter(isFilling));
    if (then!.length !== now!.length) return true;
    if (then!.length === 0) return false;
    if (Math.abs(was.top.value - is.top.value) > leastStep) return true;
    return then!.some((layer, index) => {
        const other = now![index]!;
        return layer.kind !== other.kind || layer.name !== other.name || colourOf(before, layer) !== colourOf(after, other);
    });
}

function isFilling({ kind, step }: Layer): boolean {
    return kind === 'resin' || (kind === 'wood' && step !== undefined);
}

function colourOf(plan: Plan, { step }: Layer): string | undefined {
    const made = plan.steps[step ?? -1]?.step;
    return made?.kind === 'fill' ? made.resin?.colour : undefined;
}

/** Lines of cuts, registration marks, and the outline of what is left. */
function drawnDifferences(old: Face, now: Face, isSame: Compared['isSame'], words: Set<string>, memo: Remembered): Region[] {
    const found: Region[] = [];
    for (const [then, later] of [
        [old.kerfs, now.kerfs],
        [old.marks, now.marks],
    ] as const) {
        for (const one of then) {
            const other = later.find(({ step }) => isSame(one.step, step));
            if (other === undefined) {
                words.add('burnt before');
                found.push(one.region);
                continue;
            }
            const apart = apartOf(one.region, other.region, memo);
            if (apart !== undefined) {
                words.add('shape');
                found.push(apart);
            }
        }
        for (const one of later) {
            if (then.some(({ step }) => isSame(step, one.step))) continue;
            words.add('burnt now');
            found.push(one.region);
        }
    }
    return found;
}

function apartOf(a: Region, b: Region, memo: Remembered): Region | undefined {
    if (a === b) return undefined;
    const found = memo.get('apart', `${memo.keyOf(a)} ${memo.keyOf(b)}`, () => exclude(a, b));
    return found === tangledRegion || area(found) < leastArea ? undefined : found;
}

function united(regions: readonly Region[], memo: Remembered): Region {
    const whole = memo.get('differing', regions.map((region) => memo.keyOf(region)).join(' '), () => union(regions));
    return whole === tangledRegion ? emptyRegion : whole;
}
