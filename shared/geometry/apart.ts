import { contactsOf } from './contacts';
import { EdgeIndex } from './edge-index';
import { boundsOfRings, signedArea, windingOf } from './measure';
import type { FillRule, Operation } from './polygon-engine';
import { reversed } from './reverse';

/** Products of whole units up to this are exact in doubles. */
const exactSpan = 9e7;

/** Rings around a place with more points than this are asked through the index. */
const shortRing = 1000;

/** Combines rings that touch or cross; undefined if there is too much of that. */
export type Combine = (
    operation: Operation,
    rule: FillRule,
    subjects: readonly Float64Array[],
    clips: readonly Float64Array[],
) => readonly Float64Array[] | undefined;

/** How rings hang together, worked out once for all that is asked of the same ones. */
export interface Apart {
    readonly subjects: readonly Float64Array[];
    readonly clips: readonly Float64Array[];
    /** Absent where nothing can be taken apart: all go to the engine. */
    readonly groups?: readonly Group[];
}

interface Group {
    /** Numbers of its rings, subjects first. */
    readonly members: readonly number[];
    readonly touching: boolean;
    readonly around: Windings;
}

/** Finds which of the rings touch or cross. They are in whole units. */
export function takenApart(subjects: readonly Float64Array[], clips: readonly Float64Array[]): Apart {
    const whole = { subjects, clips };
    const rings = [...subjects, ...clips];
    const all = boundsOfRings(rings);
    if (all === undefined) return { ...whole, groups: [] };
    if (!(all.maxX - all.minX < exactSpan && all.maxY - all.minY < exactSpan)) return whole;
    const index = new EdgeIndex(rings);
    const contacts = contactsOf(index);
    if (contacts === undefined) return whole;
    const groups = membersOf(contacts.group);
    if (groups.size === 1 && contacts.touching[0] === 1) return whole;
    const surroundings = new Surroundings(rings, index, contacts.group, subjects.length);
    return {
        ...whole,
        groups: Array.from(groups, ([group, members]) => ({
            members,
            touching: contacts.touching[group] === 1,
            around: surroundings.of(group, members),
        })),
    };
}

/**
 * Combines rings as `engine` would, but asks it only for those that touch or cross. A ring that
 * meets nothing, not even itself, is an edge of the answer or it is not, as the windings on its
 * two sides decide; and rings that hang together see all others as one constant winding around
 * them. So the time grows with the number of points, whatever the engine's does, and clean rings
 * keep their points as they are.
 */
export function combineApart(
    engine: Combine,
    operation: Operation,
    rule: FillRule,
    { subjects, clips, groups }: Apart,
): readonly Float64Array[] | undefined {
    if (groups === undefined) return engine(operation, rule, subjects, clips);
    const ringAt = (ring: number): Float64Array => subjects[ring] ?? clips[ring - subjects.length]!;
    const answer: Float64Array[] = [];
    for (const { members, touching, around } of groups) {
        const [first] = members;
        if (touching) {
            const mine = members.filter((ring) => ring < subjects.length).map(ringAt);
            const others = members.filter((ring) => ring >= subjects.length).map(ringAt);
            const combined = combineWithin(engine, operation, rule, mine, others, around);
            if (combined === undefined) return undefined;
            for (const ring of combined) answer.push(ring);
            continue;
        }
        const edge = edgeAlone(operation, rule, ringAt(first!), first! < subjects.length ? 'subject' : 'clip', around);
        if (edge !== undefined) answer.push(edge);
    }
    return answer;
}

/** The rings of each group, by its first. */
function membersOf(group: Int32Array): Map<number, number[]> {
    const groups = new Map<number, number[]>();
    for (const [ring, first] of group.entries()) {
        const members = groups.get(first);
        if (members === undefined) groups.set(ring, [ring]);
        else members.push(ring);
    }
    return groups;
}

/** A ring that meets nothing, in the sense that it has in the answer; undefined where both its sides are alike. */
function edgeAlone(
    operation: Operation,
    rule: FillRule,
    ring: Float64Array,
    of: keyof Windings,
    around: Windings,
): Float64Array | undefined {
    const sense = signedArea(ring) > 0 ? 1 : -1;
    const inside = isInside(operation, rule, { ...around, [of]: around[of] + sense });
    if (inside === isInside(operation, rule, around)) return undefined;
    return inside === sense > 0 ? ring : reversed(ring);
}

/** How often the subject rings and the clip rings wind around a place. */
export interface Windings {
    readonly subject: number;
    readonly clip: number;
}

export function isInside(operation: Operation, rule: FillRule, { subject, clip }: Windings): boolean {
    const a = isFilled(rule, subject);
    const b = isFilled(rule, clip);
    switch (operation) {
        case 'union':
            return a || b;
        case 'intersection':
            return a && b;
        case 'difference':
            return a && !b;
        case 'exclusion':
            return a !== b;
    }
}

function isFilled(rule: FillRule, winding: number): boolean {
    return rule === 'positive' ? winding > 0 : rule === 'nonzero' ? winding !== 0 : winding % 2 !== 0;
}

/** Finds the windings of all other groups around one: the same everywhere along it, since nothing else meets it. */
class Surroundings {
    private readonly boxes: EdgeIndex;

    constructor(
        private readonly rings: readonly Float64Array[],
        private readonly index: EdgeIndex,
        private readonly group: Int32Array,
        private readonly subjects: number,
    ) {
        this.boxes = new EdgeIndex(rings.map(diagonal));
    }

    of(group: number, members: readonly number[]): Windings {
        const first = this.rings[members[0]!]!;
        const x = first[0]!;
        const y = first[1]!;
        const around: number[] = [];
        let points = 0;
        this.boxes.runsNear(x, y, x, y, (ring) => {
            if (this.group[ring] === group) return;
            around.push(ring);
            points += this.rings[ring]!.length / 2;
        });
        let subject = 0;
        let clip = 0;
        const count = (ring: number, sense: number): void => {
            if (this.group[ring] === group) return;
            if (ring < this.subjects) subject += sense;
            else clip += sense;
        };
        if (points > shortRing) this.index.crossings(x, y, count);
        else for (const ring of around) count(ring, windingOf(this.rings[ring]!, x, y));
        return { subject, clip };
    }
}

/** A ring's box as a run of its own, for an index of boxes. */
function diagonal(ring: Float64Array): Float64Array {
    const { minX, minY, maxX, maxY } = boundsOfRings([ring])!;
    return Float64Array.of(minX, minY, maxX, maxY);
}

/**
 * Combines a group that lies where other rings wind around it: frames that wind as often stand in
 * for those, and leave the answer again.
 */
function combineWithin(
    engine: Combine,
    operation: Operation,
    rule: FillRule,
    subjects: Float64Array[],
    clips: Float64Array[],
    around: Windings,
): readonly Float64Array[] | undefined {
    if (around.subject === 0 && around.clip === 0) return engine(operation, rule, subjects, clips);
    const box = boundsOfRings([...subjects, ...clips])!;
    // A ring cannot wind around anything more often than it has pairs of points; beyond that more frames change nothing.
    const most = 1 + [...subjects, ...clips].reduce((sum, ring) => sum + ring.length / 4, 0);
    const frames = (winding: number): Float64Array[] =>
        Array.from({ length: rule === 'evenodd' ? Math.abs(winding) % 2 : Math.min(Math.abs(winding), most) }, (_, k) => {
            const wide = 10 * (k + 1);
            const left = box.minX - wide;
            const right = box.maxX + wide;
            const top = box.minY - wide;
            const bottom = box.maxY + wide;
            const ring = Float64Array.of(left, top, right, top, right, bottom, left, bottom);
            return winding > 0 ? ring : reversed(ring);
        });
    const combined = engine(operation, rule, [...subjects, ...frames(around.subject)], [...clips, ...frames(around.clip)]);
    return combined?.filter((ring) => !ring.some((value, i) => value < (i % 2 === 0 ? box.minX : box.minY)));
}
