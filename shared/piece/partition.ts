import { divide, subtract, union } from '../geometry/boolean';
import { area, bounds, vertexCount } from '../geometry/measure';
import { outlined } from '../geometry/outline-meetings';
import { type Bounds, type Region, tangledRegion } from '../geometry/region';
import { type Spliced, splice } from '../geometry/splice';

/** What remembers answers by content; see Memo in the plan's room. */
export interface Remembered {
    get<T>(stage: string, key: string, compute: () => T): T;
    keyOf(thing: object): string;
}

/** A region with the box around it, so that what does not meet is never cut against each other. */
export interface Boxed {
    readonly region: Region;
    readonly box: Bounds;
}

/** Undefined for an empty region. */
export function boxed(region: Region): Boxed | undefined {
    const box = bounds(region);
    return box === undefined ? undefined : { region, box };
}

/** Whether boxes overlap, or come closer than `reach` mm. */
export function boxesMeet(a: Bounds, b: Bounds, reach = 0): boolean {
    return a.minX < b.maxX + reach && b.minX < a.maxX + reach && a.minY < b.maxY + reach && b.minY < a.maxY + reach;
}

/** A region cut in two by another. */
export interface Halved {
    readonly inside: Region;
    readonly outside: Region;
}

/** Shapes cross so often that nothing can be said. */
export class TooTangled extends Error {}

/** What of `region` lies inside and outside of `by`: the areas of both have to make up the whole. @throws TooTangled */
export function halve(region: Region, by: Region, memo: Remembered): Halved {
    return memo.get(
        'piece-halves',
        `${memo.keyOf(region)} ${memo.keyOf(by)}`,
        () =>
            alongOutlines(region, by, memo) ??
            addingUp(
                () => halved(region, by),
                () => {
                    const turned = halved(onSide(region), onSide(by));
                    return { inside: onSide(turned.inside), outside: onSide(turned.outside) };
                },
                (answer) => imbalance(region, answer),
                tolerance(region, by),
            ),
    );
}

/** Below this many corners a sweep is as quick. */
const heavy = 2000;

/** Two regions of many corners cut against each other where they cross; undefined where a sweep has to say. */
function alongOutlines(region: Region, by: Region, memo: Remembered): Spliced | undefined {
    if (vertexCount(region) + vertexCount(by) < heavy) return undefined;
    const [one, other] = [region, by].map((each) => memo.get('piece-outline', memo.keyOf(each), () => outlined(each)));
    return one === undefined || other === undefined ? undefined : splice(one, other);
}

/**
 * The straight answer if what is amiss of it is no more than the slack, or the better one of it and the turned one. The polygon
 * engine mends its own slips where few points hang together; of many it may still fill or lose a hole where shapes touch.
 * @param turned the same with x and y exchanged
 */
export function addingUp<T>(straight: () => T, turned: () => T, amiss: (answer: T) => number, slack: number): T {
    const first = straight();
    const off = amiss(first);
    if (off <= slack) return first;
    const second = turned();
    return amiss(second) < off ? second : first;
}

function halved(region: Region, by: Region): Halved {
    const { inside, outside } = divide(region, by);
    if (inside === tangledRegion || outside === tangledRegion) throw new TooTangled();
    return inside.rings.length === 0 ? { inside, outside: region } : { inside, outside };
}

/**
 * What of a region is in none of some disjoint others.
 * @param expected its area by what of the region the others were found to take, mm2
 * @throws TooTangled
 */
export function remainder(region: Region, taken: readonly Boxed[], expected: number, memo: Remembered): Region {
    if (taken.length === 0) return region;
    const key = [region, ...taken.map((one) => one.region)].map((one) => memo.keyOf(one)).join(' ');
    return memo.get('piece-remainder', key, () => {
        const others = { rings: taken.flatMap((one) => one.region.rings) };
        return addingUp(
            () => {
                const straight = subtract(region, others);
                if (straight === tangledRegion) throw new TooTangled();
                return straight;
            },
            () => onSide(subtract(onSide(region), onSide(others))),
            (left) => Math.abs(area(left) - expected),
            tolerance(region, others),
        );
    });
}

/** What many cells cover, in parts whose boxes do not overlap. */
export type Covered = readonly Boxed[];

/**
 * What of a region is in none of the cells that `covered` is made of, and what they cover together; undefined where a sweep has to say.
 * @param expected area of the first, mm2, by what the cells were found to take
 */
export function addedTo(covered: Covered, whole: Boxed, expected: number, memo: Remembered): Added | undefined {
    const near = covered.filter(({ box }) => boxesMeet(box, whole.box));
    const far = covered.filter((part) => !near.includes(part));
    if (near.length === 0) return { more: whole.region, covered: [...far, whole] };
    const key = [...near, whole].map(({ region }) => memo.keyOf(region)).join(' ');
    const added = memo.get('piece-added', key, () => {
        const there = near.length === 1 ? near[0]!.region : { rings: near.flatMap(({ region }) => region.rings) };
        const spliced = alongOutlines(there, whole.region, memo);
        const all = spliced?.all();
        return spliced && all && { more: spliced.more, all };
    });
    const all = added && boxed(added.all);
    if (added === undefined || all === undefined || Math.abs(area(added.more) - expected) > tolerance(whole.region))
        return undefined;
    return { more: added.more, covered: [...far, all] };
}

export interface Added {
    readonly more: Region;
    readonly covered: Covered;
}

function imbalance(whole: Region, { inside, outside }: Halved): number {
    return Math.abs(area(inside) + area(outside) - area(whole));
}

/** Corners fall on a grid of 0.1 um: the area that this can move, mm2, with room to spare. */
function tolerance(...regions: readonly Region[]): number {
    let points = 0;
    for (const { rings } of regions) for (const ring of rings) points += ring.length;
    return 1e-3 + 1e-5 * points;
}

function onSide({ rings }: Region): Region {
    return { rings: rings.map((ring) => ring.toReversed()) };
}

/** Regions that do not overlap as one; those that cannot touch are only put side by side. @throws TooTangled */
export function unite(parts: readonly Boxed[], memo: Remembered): Boxed {
    const apart = parts.every((part, i) => parts.slice(i + 1).every((other) => !boxesMeet(part.box, other.box, reachOfTouch)));
    const key = parts.map(({ region }) => memo.keyOf(region)).join(' ');
    const region = memo.get('piece-united', key, () =>
        apart ? { rings: parts.flatMap(({ region }) => region.rings) } : union(parts.map((part) => part.region)),
    );
    if (region === tangledRegion) throw new TooTangled();
    return { region, box: parts.map((part) => part.box).reduce(joinBounds) };
}

const reachOfTouch = 1e-3;

function joinBounds(a: Bounds, b: Bounds): Bounds {
    return {
        minX: Math.min(a.minX, b.minX),
        minY: Math.min(a.minY, b.minY),
        maxX: Math.max(a.maxX, b.maxX),
        maxY: Math.max(a.maxY, b.maxY),
    };
}
