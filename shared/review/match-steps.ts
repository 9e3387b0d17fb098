import { diffArrays } from 'diff';
import type { Step } from '../recipe/step';
import { groupBy } from './group-by';
import { increasing } from './increasing';
import { likeEnough, likeness } from './likeness';
import { type ToldStep, toldStep } from './written-step';

/** A step of one version with its counterpart in the other, by their indexes; added or removed where there is none. */
export interface Match {
    readonly before?: number;
    readonly after?: number;
    /** It stands elsewhere among the steps that both versions have. */
    readonly moved: boolean;
}

/** More changes than this in a row are not lined up step by step. */
const mostEdits = 1000;
/** More reworded steps than this of one kind are not weighed against each other. */
const mostWeighed = 120;

/**
 * Which step of `before` has become which of `after`: first those that say the same in the same
 * order, then the same elsewhere, then those of one kind and name, then the most alike. In the order
 * of `after`, a removed step before the one that it stood before. Matching B with A gives the mirror image.
 */
export function matchSteps(before: readonly Step[], after: readonly Step[]): Match[] {
    const old = before.map(toldStep);
    const now = after.map(toldStep);
    // Ties are broken by order, which has a direction: always the same one, whichever version comes first.
    const turned = contents(old) > contents(now);
    const pairs = turned ? turn(pairsOf(now, old)) : pairsOf(old, now);
    const settled = inOrder(pairs, turned);
    return laidOut(pairs, settled, old.length, now.length);
}

type Pairs = ReadonlyMap<number, number>;

function contents(steps: readonly ToldStep[]): string {
    return steps.map(({ content }) => content).join('\n');
}

function turn(pairs: Pairs): Pairs {
    return new Map([...pairs].map(([from, to]) => [to, from]));
}

function pairsOf(from: readonly ToldStep[], to: readonly ToldStep[]): Pairs {
    const pairs = new Map<number, number>();
    for (const [a, b] of common(
        from.map((step) => step.content),
        to.map((step) => step.content),
    )) {
        pairs.set(a, b);
    }
    const taken = new Set(pairs.values());
    for (const by of ['content', 'key'] as const) {
        const waiting = groupBy(
            [...to.keys()].filter((b) => !taken.has(b)),
            (b) => to[b]![by],
        );
        for (const [a, step] of from.entries()) {
            const b = pairs.has(a) ? undefined : waiting.get(step[by])?.shift();
            if (b === undefined) continue;
            pairs.set(a, b);
            taken.add(b);
        }
    }
    for (const [a, b] of mostAlike(from, to, pairs, taken)) pairs.set(a, b);
    return pairs;
}

/** The best of what is left, most alike first. */
function mostAlike(
    from: readonly ToldStep[],
    to: readonly ToldStep[],
    pairs: Pairs,
    taken: ReadonlySet<number>,
): [number, number][] {
    const candidates: { a: number; b: number; likeness: number }[] = [];
    const weighed = new Map<string, number>();
    const free = to.flatMap((step, b) => (taken.has(b) ? [] : [{ step, b }]));
    for (const [a, step] of from.entries()) {
        if (pairs.has(a)) continue;
        const count = (weighed.get(step.step.kind) ?? 0) + 1;
        weighed.set(step.step.kind, count);
        if (count > mostWeighed) continue;
        for (const other of free.filter((each) => each.step.step.kind === step.step.kind).slice(0, mostWeighed)) {
            const value = likeness(step, other.step);
            if (value > likeEnough) candidates.push({ a, b: other.b, likeness: value });
        }
    }
    candidates.sort((one, two) => two.likeness - one.likeness || one.a - two.a || one.b - two.b);
    const found: [number, number][] = [];
    const goneA = new Set<number>();
    const goneB = new Set<number>();
    for (const { a, b } of candidates) {
        if (goneA.has(a) || goneB.has(b)) continue;
        goneA.add(a);
        goneB.add(b);
        found.push([a, b]);
    }
    return found;
}

/** The largest set of pairs that keep their order, as indexes into `before`; the others have moved. */
function inOrder(pairs: Pairs, turned: boolean): ReadonlySet<number> {
    const way = [...(turned ? turn(pairs) : pairs)].sort(([a], [b]) => a - b);
    const kept = increasing(way.map(([, to]) => to)).map((place) => way[place]!);
    return new Set(kept.map(([from, to]) => (turned ? to : from)));
}

/** Pairs of places that hold the same in both lists, in order, as many as there can be. */
function common(from: readonly string[], to: readonly string[]): [number, number][] {
    const chunks = diffArrays([...from], [...to], { maxEditLength: mostEdits });
    if (chunks === undefined) return [];
    const pairs: [number, number][] = [];
    let a = 0;
    let b = 0;
    for (const { added, removed, value } of chunks) {
        if (added) b += value.length;
        else if (removed) a += value.length;
        else for (let i = 0; i < value.length; i++) pairs.push([a++, b++]);
    }
    return pairs;
}

function laidOut(pairs: Pairs, settled: ReadonlySet<number>, before: number, after: number): Match[] {
    const origin = turn(pairs);
    const rows: Match[] = [];
    let next = 0;
    const removedUpTo = (end: number): void => {
        for (; next < end; next++) if (!pairs.has(next)) rows.push({ before: next, moved: false });
    };
    for (let place = 0; place < after; place++) {
        const from = origin.get(place);
        if (from === undefined) {
            rows.push({ after: place, moved: false });
            continue;
        }
        if (settled.has(from)) removedUpTo(from);
        rows.push({ before: from, after: place, moved: !settled.has(from) });
    }
    removedUpTo(before);
    return rows;
}
