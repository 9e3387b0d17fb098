import { intersect, subtract } from '../geometry/boolean';
import { area } from '../geometry/measure';
import { grow } from '../geometry/offset';
import { type Region, tangledRegion } from '../geometry/region';
import type { LaserPlan } from './laser-plan';
import type { LaidAside } from './laying';
import { lieAlike } from './lies';
import type { Memo } from './memo';
import type { InlayPlan, Plan, StepPlan } from './plan';
import { type SetUp, setUps } from './set-ups';

/**
 * What of it counts along one edge, mm: half. Two burns of a strip from 0 to w, the second moved by e, leave the floor from e to w and the mouth
 * from 0 to w + e. A part with the gap g on each side goes in while e is at most 2 g, moved by half of e; then the seam is g + e / 2 on both
 * sides (own derivation).
 */
export function asideAtEdge({ most }: Pick<LaidAside, 'most'>): number {
    return most / 2;
}

/** Overlap that is the edge of a neighbour and no work of its own, mm2. */
const negligible = 1;
/** Edges nearer to each other than this and what set-ups may be off run along each other, mm. */
const hair = 0.05;

/** Inlays with how far the burns of their halves may be off, where a recipe says how blanks are found again. */
export function withAside(plan: Pick<Plan, 'recipe' | 'blanks' | 'steps'>, memo: Memo): readonly StepPlan[] {
    if (!plan.recipe.steps.some((step) => (step.kind === 'flip' || step.kind === 'do') && step.found !== undefined))
        return plan.steps;
    const all = setUps(plan);
    return plan.steps.map((step) => {
        const aside = step.inlay && asideOf(step.inlay, step.step.index, all, memo);
        return aside === undefined || step.inlay === undefined ? step : { ...step, inlay: { ...step.inlay, aside } };
    });
}

function asideOf(
    { pocketLaser, reliefLaser }: InlayPlan,
    index: number,
    all: readonly SetUp[],
    memo: Memo,
): LaidAside | undefined {
    const found = [pocketLaser, reliefLaser].flatMap((half) => farthest(half, index, all, memo) ?? []);
    const [worst] = found.toSorted((a, b) => b.most - a.most);
    return worst && { ...worst, most: found.reduce((sum, { most }) => sum + most, 0) };
}

/** Of the burns in other set-ups that make an edge of the half, the one that may be off farthest. */
function farthest(half: LaserPlan, inlay: number, all: readonly SetUp[], memo: Memo): LaidAside | undefined {
    const home = all.find(({ lasers }) => lasers.some(({ step }) => step === half.step));
    if (home === undefined) return undefined;
    return all
        .filter((setUp) => setUp !== home && setUp.blank === home.blank)
        .flatMap((setUp): LaidAside[] => {
            const off = offBetween(home, setUp, all);
            const place = setUp.number > home.number ? setUp.place : home.place;
            if (off === undefined || place === undefined) return [];
            return setUp.lasers
                .filter(
                    (burn) => burn.step.index < inlay && lieAlike(burn, half) && sharesEdge(burn.region, half.region, off, memo),
                )
                .map((burn) => ({ most: off, burn, place }));
        })
        .toSorted((a, b) => b.most - a.most)[0];
}

/**
 * How far work of one set-up may be off against that of another of the same blank, mm: what each may be off along the way back to
 * a set-up that both were found from, added up. Undefined where nobody says how one of them was found.
 */
export function offBetween(one: SetUp, other: SetUp, all: readonly SetUp[]): number | undefined {
    const [ways, others] = [wayBack(one, all), wayBack(other, all)];
    for (const [number, off] of ways) {
        const met = others.get(number);
        if (met !== undefined) return off + met;
    }
    return undefined;
}

/** The set-ups that one was found from, nearest first, each with how far it may be off against that one. */
function wayBack(from: SetUp, all: readonly SetUp[]): ReadonlyMap<number, number> {
    const way = new Map([[from.number, 0]]);
    let [at, off] = [from as SetUp | undefined, 0];
    while (at?.place !== undefined) {
        const { place, before } = at;
        off += place.exact;
        const burnt =
            place.by === 'frame' ? undefined : all.find(({ lasers }) => lasers.some(({ step }) => step === place.mark?.step));
        const next = burnt?.number ?? before;
        if (next === undefined || next >= at.number) break;
        way.set(next, off);
        at = all.find(({ number }) => number === next);
    }
    return way;
}

/** Whether both burn up to the same edge: neither lies well within the other, and they overlap. */
function sharesEdge(burn: Region, half: Region, off: number, memo: Memo): boolean {
    return memo.get('shares-edge', `${memo.keyOf(burn)} ${memo.keyOf(half)} ${off}`, () => {
        if (area(intersect(burn, half)) < negligible) return false;
        const isWithin = (inner: Region, outer: Region): boolean => {
            const grown = grow(inner, off + hair);
            return grown !== tangledRegion && area(subtract(grown, outer)) < negligible;
        };
        return !isWithin(burn, half) && !isWithin(half, burn);
    });
}
