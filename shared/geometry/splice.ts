import type { EdgeIndex } from './edge-index';
import { area } from './measure';
import { type Meetings, type Node, type Outlined, outlineMeetings } from './outline-meetings';
import { Path } from './path';
import type { Region, Ring } from './region';
import { reversed } from './reverse';

/** Two regions by what is common to them. */
export interface Spliced {
    /** What of the first lies in the second, and what does not. */
    readonly inside: Region;
    readonly outside: Region;
    /** What of the second lies outside of the first. */
    readonly more: Region;
    /** Both as one; undefined where its area is not that of the parts. */
    all(): Region | undefined;
}

/**
 * Cuts two normalised regions against each other by going along their outlines and turning off where these meet: the price is in the
 * meetings, not in the corners. Corners stay as they are; crossings come to lie on the grid. Undefined where outlines meet so often that
 * a sweep does better, or where the areas of the parts do not make up those of the regions.
 */
export function splice(a: Outlined, b: Outlined): Spliced | undefined {
    const found = outlineMeetings(a.index, b.index);
    if (found === undefined) return undefined;
    const { ofA, ofB } = sortedOut(a.index, b.index, found);
    const inside = joined([...ofA.within, ...ofB.within, ...ofA.along], [...ofA.loose.inside, ...ofB.loose.inside]);
    const outside = joined(
        [...ofA.without, ...ofB.within.map(back), ...ofA.against],
        [...ofA.loose.outside, ...ofB.loose.inside.map(reversed)],
    );
    const more = joined(
        [...ofB.without, ...ofA.within.map(back), ...ofB.against],
        [...ofB.loose.outside, ...ofA.loose.inside.map(reversed)],
    );
    if (inside === undefined || outside === undefined || more === undefined) return undefined;
    const common = area(inside);
    const isOff = (sum: number, whole: number): boolean => Math.abs(sum - whole) > found.slack;
    // A part taken for the wrong one would be amiss in both sums of one region, and seen in that of the other.
    if (isOff(common + area(outside), a.area) || isOff(common + area(more), b.area)) return undefined;
    return {
        inside,
        outside,
        more,
        all() {
            const all = joined([...ofA.without, ...ofB.without, ...ofA.along], [...ofA.loose.outside, ...ofB.loose.outside]);
            return all === undefined || isOff(area(all), a.area + area(more)) ? undefined : all;
        },
    };
}

/** The part of a ring between two meetings next to each other on it. */
interface Stretch {
    readonly index: EdgeIndex;
    /** Where it begins and ends on its ring. */
    readonly from: Node;
    readonly to: Node;
    /** It is gone along the other way. */
    readonly backwards?: true;
}

function back(stretch: Stretch): Stretch {
    const { backwards, ...rest } = stretch;
    return backwards ? rest : { ...rest, backwards: true };
}

/** One outline's stretches by how they lie to the other region. */
interface SideParts {
    readonly within: Stretch[];
    readonly without: Stretch[];
    /** On the other outline too, both running the same way: the regions lie on the same side. */
    readonly along: Stretch[];
    /** On the other outline, running against it: the regions lie beside each other. */
    readonly against: Stretch[];
    /** Rings that nothing meets. */
    readonly loose: { readonly inside: Ring[]; readonly outside: Ring[] };
}

interface Sorted {
    readonly ofA: SideParts;
    readonly ofB: SideParts;
}

function sortedOut(a: EdgeIndex, b: EdgeIndex, { onA, onB }: Meetings): Sorted {
    const [first, second] = [stretches(a, onA), stretches(b, onB)];
    return { ofA: partsOf(a, first, b, second), ofB: partsOf(b, second, a, first) };
}

function stretches(index: EdgeIndex, nodes: readonly Node[]): Stretch[] {
    const all: Stretch[] = [];
    for (let start = 0; start < nodes.length; ) {
        let end = start;
        while (end < nodes.length && nodes[end]!.ring === nodes[start]!.ring) end++;
        for (let k = start; k < end; k++) all.push({ index, from: nodes[k]!, to: nodes[k + 1 < end ? k + 1 : start]! });
        start = end;
    }
    return all;
}

/** Whether a stretch has no corner between its ends. */
function isStraight({ index, from, to }: Stretch): boolean {
    if (from === to) return false;
    if (to.edge === from.edge) return to.along > from.along;
    return to.along === 0 && to.edge === nextEdge(index, from);
}

function nextEdge({ firstEdge }: EdgeIndex, { ring, edge }: Node): number {
    return edge + 1 < firstEdge[ring + 1]! - 1 ? edge + 1 : firstEdge[ring]!;
}

function partsOf(index: EdgeIndex, own: readonly Stretch[], other: EdgeIndex, others: readonly Stretch[]): SideParts {
    const straight = new Set<string>();
    for (const each of others) if (isStraight(each)) straight.add(`${each.from.id} ${each.to.id}`);
    const parts: SideParts = { within: [], without: [], along: [], against: [], loose: looseOf(index, own, other) };
    for (const each of own) {
        const { from, to } = each;
        const plain = straight.size > 0 && isStraight(each);
        if (plain && straight.has(`${from.id} ${to.id}`)) parts.along.push(each);
        else if (plain && straight.has(`${to.id} ${from.id}`)) parts.against.push(each);
        else if (from.enters ?? isBegunWithin(each, other)) parts.within.push(each);
        else parts.without.push(each);
    }
    return parts;
}

/** Asked halfway to its first corner, where nothing of the other outline lies. */
function isBegunWithin({ index: { points }, from, to }: Stretch, other: EdgeIndex): boolean {
    const toHere = to.edge === from.edge && to.along > from.along;
    const x = toHere ? to.x : points[2 * from.edge + 2]!;
    const y = toHere ? to.y : points[2 * from.edge + 3]!;
    return windingIn(other, (from.x + x) / 2, (from.y + y) / 2) !== 0;
}

function windingIn(index: EdgeIndex, x: number, y: number): number {
    let winding = 0;
    index.crossings(x, y, (_, sense) => {
        winding += sense;
    });
    return winding;
}

function looseOf(index: EdgeIndex, met: readonly Stretch[], other: EdgeIndex): SideParts['loose'] {
    const { points, firstEdge } = index;
    const touched = new Set(met.map(({ from }) => from.ring));
    const inside: Ring[] = [];
    const outside: Ring[] = [];
    for (let ring = 0; ring + 1 < firstEdge.length; ring++) {
        if (touched.has(ring)) continue;
        const start = firstEdge[ring]!;
        const within = windingIn(other, points[2 * start]!, points[2 * start + 1]!) !== 0;
        const path = new Path();
        path.corners(points, start, firstEdge[ring + 1]! - 2);
        const corners = path.ring();
        if (corners !== undefined) (within ? inside : outside).push(corners);
    }
    return { inside, outside };
}

/** Stretches joined end to end into rings, beside rings that are whole. Undefined where they do not fit together. */
function joined(parts: readonly Stretch[], whole: readonly Ring[]): Region | undefined {
    const leaving = new Map<number, Stretch[]>();
    for (const part of parts) {
        const { id } = begin(part);
        const known = leaving.get(id);
        if (known === undefined) leaving.set(id, [part]);
        else known.push(part);
    }
    const rings = [...whole];
    const path = new Path();
    const used = new Set<Stretch>();
    for (const first of parts) {
        if (used.has(first)) continue;
        path.clear();
        let at: Stretch | undefined = first;
        do {
            used.add(at);
            follow(path, at);
            const onwards: Stretch[] = leaving.get(finish(at).id) ?? [];
            at = onwards.length === 1 ? onwards[0]! : sharpest(at, onwards);
        } while (at !== undefined && !used.has(at));
        if (at !== first) return undefined;
        const ring = path.ring();
        if (ring !== undefined) rings.push(ring);
    }
    return { rings };
}

const begin = ({ from, to, backwards }: Stretch): Node => (backwards ? to : from);
const finish = ({ from, to, backwards }: Stretch): Node => (backwards ? from : to);

function follow(path: Path, { index: { points, firstEdge }, from, to, backwards }: Stretch): void {
    const onwards = to.edge > from.edge || (to.edge === from.edge && to.along > from.along);
    const last = firstEdge[from.ring + 1]! - 2;
    const first = firstEdge[from.ring]!;
    if (backwards) {
        path.point(to.x, to.y);
        if (!onwards) path.cornersBack(points, to.edge, first);
        path.cornersBack(points, onwards ? to.edge : last, from.edge + 1);
        path.point(from.x, from.y);
        return;
    }
    path.point(from.x, from.y);
    path.corners(points, from.edge + 1, onwards ? to.edge : last);
    if (!onwards) path.corners(points, first, to.edge);
    path.point(to.x, to.y);
}

/** Of several stretches that leave where one ends, the one that bounds what lies beside it: the first by turning to the inside. */
function sharpest(arriving: Stretch, leaving: readonly Stretch[]): Stretch | undefined {
    const came = direction(back(arriving));
    let best: Stretch | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const each of leaving) {
        const turn = (came - direction(each) + 4 * Math.PI) % (2 * Math.PI) || 2 * Math.PI;
        if (turn < least) [best, least] = [each, turn];
    }
    return best;
}

/** In which a stretch sets out, radians. */
function direction(stretch: Stretch): number {
    const { index, from, to, backwards } = stretch;
    const { points } = index;
    const near = begin(stretch);
    const far = finish(stretch);
    if (isStraight(stretch)) return Math.atan2(far.y - near.y, far.x - near.x);
    // The first corner on the way that is not the place itself.
    const corner = backwards ? (to.along === 0 ? edgeBefore(index, to) : to.edge) : from.edge + 1;
    return Math.atan2(points[2 * corner + 1]! - near.y, points[2 * corner]! - near.x);
}

function edgeBefore({ firstEdge }: EdgeIndex, { ring, edge }: Node): number {
    return edge > firstEdge[ring]! ? edge - 1 : firstEdge[ring + 1]! - 2;
}
