import { bounds } from '../geometry/measure';
import type { Bounds } from '../geometry/region';
import { type Side, sideOf } from '../piece/lie';
import type { Do, Step } from '../recipe/step';
import type { Laser, Zero } from '../recipe/stock';
import { reachOfAll } from '../toolpath/reach';
import { foundPlaceOf, foundPlaceWords } from './found-place';
import type { LaserPlan } from './laser-plan';
import type { FoundPlace } from './laying';
import { lieOf } from './lies';
import { originOn } from './origin';
import type { BlankPlan, Plan, StepPlan } from './plan';

/** A set-up of the machine: steps in a row that burn on one blank, without bench work between them. */
export interface SetUp {
    readonly number: number;
    readonly blank: BlankPlan;
    /** Which face is up; absent for a blank that is never turned over. */
    readonly side?: Side;
    readonly lasers: readonly LaserPlan[];
    /** The step for which the piece is taken off the bed, or another one laid there; absent where nothing comes after it. */
    readonly ends?: StepPlan;
    /** The set-up in which the same blank lay on the bed before; absent for its first. */
    readonly before?: number;
    /** The words since then that say how it finds its place again: those of a `do`, and of `found by`. */
    readonly foundBy?: string;
    /** What `found by` says of it; absent where words alone do. */
    readonly place?: FoundPlace;
    /** What it burns by which the blank is found later, and the last set-up that needs it. */
    readonly keeps: readonly Kept[];
}

/** A step by which a blank is found again: what it burnt has to stay as it is until that set-up is laid. */
export interface Kept {
    readonly step: string;
    readonly until: number;
}

/** Why a set-up ends, such as "tray is flipped (step 4)"; undefined where nothing comes after it. */
export function endOfSetUp({ blank, ends }: SetUp): string | undefined {
    if (ends === undefined) return undefined;
    const { step, title, blank: worked } = ends;
    const at = ` (step ${step.index + 1})`;
    if (ends.laser !== undefined) return `${ends.laser.blank} is laid on the bed${at}`;
    if (step.kind === 'flip' && worked === blank.name) return `${blank.name} is turned over${at}`;
    return `${title}${at}`;
}

/** "tray", or "the back of tray" where it is turned over at some time. */
export function setUpPlace({ blank, side }: SetUp): string {
    return side === undefined ? blank.name : `the ${side} of ${blank.name}`;
}

const findsPlace =
    /\b(?:fences?|stops?|pins?|pinned|dowels?|jigs?|frames?|templates?|cradles?|nests?|marks?|fiducials?|crosshairs?|corners?|regist\w*|align\w*)\b/i;

/** The last words before a set-up that say how a blank is laid down where it lay before. */
function findingPlace(plan: SetUpsOf, before: SetUp, { step, laser }: StepPlan): Pick<SetUp, 'foundBy' | 'place'> {
    const from = before.lasers.at(-1)?.step.index ?? 0;
    const between = plan.recipe.steps.slice(from + 1, step.index);
    const inWords = between.findLast((other): other is Do => other.kind === 'do' && findsPlace.test(other.text))?.text;
    const said = between.findLast((other) => saysPlace(other, laser?.blank, plan, step.index));
    const place = said?.kind === 'do' || said?.kind === 'flip' ? foundPlaceOf(plan, said) : undefined;
    if (place === undefined) return inWords === undefined ? {} : { foundBy: inWords };
    const words = foundPlaceWords(place);
    return { foundBy: place.said.kind === 'do' ? `${place.said.text}: ${words}` : words, place };
}

/** A flip speaks of its own blank, a `do` of the one that is burnt next. */
function saysPlace(step: Step, blank: string | undefined, { steps }: SetUpsOf, upTo: number): boolean {
    if (step.kind === 'flip') return step.found !== undefined && step.blank.value === blank;
    if (step.kind !== 'do' || step.found === undefined) return false;
    return !steps.slice(step.index + 1, upTo).some(({ laser }) => laser !== undefined && laser.blank !== blank);
}

type Draft = SetUp & { readonly lasers: LaserPlan[]; keeps: readonly Kept[]; ends?: StepPlan };
type SetUpsOf = Pick<Plan, 'recipe' | 'blanks' | 'steps'>;

/** Something is measured or done while the piece lies where it is. */
function staysOnBed({ step }: StepPlan): boolean {
    return step.kind === 'check' || (step.kind === 'do' && step.takenOff === undefined && step.found === undefined);
}

/** Bench work between burns means that the piece leaves the machine and is laid in anew. */
export function setUps(plan: SetUpsOf): SetUp[] {
    const list: Draft[] = [];
    let open: Draft | undefined;
    const flipped = new Set(plan.steps.flatMap(({ step, blank }) => (step.kind === 'flip' ? [blank] : [])));
    for (const stepPlan of plan.steps) {
        const { laser } = stepPlan;
        if (staysOnBed(stepPlan)) continue;
        if (laser === undefined) {
            if (open !== undefined) open.ends = stepPlan;
            open = undefined;
            continue;
        }
        const blank = plan.blanks.find((candidate) => candidate.name === laser.blank);
        if (blank === undefined) continue;
        if (open === undefined || open.blank !== blank) {
            const side = flipped.has(blank.name) ? { side: sideOf(lieOf(laser)) } : {};
            if (open !== undefined) open.ends = stepPlan;
            const before = list.findLast((other) => other.blank === blank);
            const again = before === undefined ? {} : { before: before.number, ...findingPlace(plan, before, stepPlan) };
            open = { number: list.length + 1, blank, ...side, lasers: [], keeps: [], ...again };
            list.push(open);
        }
        open.lasers.push(laser);
    }
    for (const setUp of list) setUp.keeps = keptBy(setUp, list);
    return list;
}

function keptBy({ number, lasers }: SetUp, all: readonly SetUp[]): Kept[] {
    return lasers.flatMap(({ step }) => {
        const last = all.findLast((other) => other.number > number && other.place?.mark?.step === step);
        return last === undefined ? [] : [{ step: step.name, until: last.number }];
    });
}

/**
 * What the head moves over for steps of one set-up (mm on the blank, y downwards): their work with run-ups, and the
 * origin, where it comes from and goes back to. Of a step of which the settings are not known yet the art itself,
 * which is the least. Undefined where nothing is done. @param zero where the origin is, if not where the laser has it
 */
export function reachOfSteps(
    lasers: readonly LaserPlan[],
    { size }: Pick<BlankPlan, 'size'>,
    laser: Laser | undefined,
    zero?: Zero,
): Bounds | undefined {
    const work = reachOfAll(lasers.map(({ reach, region }) => reach ?? bounds(region)));
    return work === undefined || size === undefined ? work : reachOfAll([work], originOn(size, laser, zero));
}
