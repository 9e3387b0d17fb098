import type { Plan } from '../plan/plan';
import { timeBetween } from '../plan/time-between';
import { showTime } from '../quantity/show';
import { laidBy } from '../recipe/laid-by';
import type { Step } from '../recipe/step';
import { beforePaper } from '../rules/finishing/packed-too-soon';
import { cureOf } from '../rules/order/sand-before-cure';

/** What may be done with the pieces, and from when on. */
export interface Readiness {
    /** Such as "To be used". */
    readonly what: string;
    /** s from the start of the run, for the last of the pieces; absent where it is not known. */
    readonly from?: number;
    readonly why: string;
}

/** How long a joint of a glue that dries by water goes on sinking, s. Seen in an excerpt of a handbook by an extension specialist. */
const jointSinks = 7 * 86400;

/** When fills and joints may be sanded, and the pieces packed, shipped, used and laid under food: soonest first, what is not known last. */
export function readiness(plan: Plan): Readiness[] {
    return [...toSand(plan), ...toLeave(plan), ...toTouchFood(plan)].toSorted(
        (a, b) => (a.from ?? Number.POSITIVE_INFINITY) - (b.from ?? Number.POSITIVE_INFINITY),
    );
}

function toSand(plan: Plan): Readiness[] {
    return plan.steps.flatMap(({ step, fill, inlay }): Readiness[] => {
        const cure = cureOf(plan, { step: step.index });
        const pocket = (fill ?? inlay)?.pocket;
        if (cure === undefined || pocket === undefined || !plan.steps.some((later) => isSanded(later.step, step))) return [];
        const sinks = step.kind === 'inlay' && step.glue?.setsBy === 'water' && step.glue.kinds.includes('wood-glue');
        const later = sinks ? `; its water lets the joint sink for up to ${showTime(jointSinks)}` : '';
        const end = plan.schedule.spans[step.index]?.end ?? 0;
        return [
            {
                what: `To sand over ${pocket.name}`,
                from: end + cure.time,
                why: `${cure.name} needs ${showTime(cure.time)}${later}`,
            },
        ];
    });
}

function isSanded({ kind, index }: Step, from: Step): boolean {
    return kind === 'sand' && index > from.index;
}

interface Curing {
    readonly name: string;
    /** s, the longer end of its range. */
    readonly cure: number;
    /** s after the end of the run. */
    readonly left: number;
    readonly isCoat: boolean;
    readonly food: string | undefined;
}

function toLeave(plan: Plan): Readiness[] {
    const all = curing(plan);
    const coats = all.filter(({ isCoat }) => isCoat);
    const { ready } = plan.schedule;
    const [coat, last] = [longest(coats), longest(all)];
    const packed = coats.map((each) => ({ ...each, left: Math.max(0, each.left - Math.max(0, each.cure - beforePaper)) }));
    const paper = longest(packed);
    return [
        ...(paper === undefined || coat === undefined || paper.left === coat.left
            ? []
            : [
                  {
                      what: 'To be packed in plain paper',
                      from: ready + paper.left,
                      why: `${paper.name} takes nothing on it before ${showTime(beforePaper)}`,
                  },
              ]),
        ...(coat === undefined ? [] : [{ what: 'To be shipped', from: ready + coat.left, why: cures(coat) }]),
        ...(last === undefined ? [] : [{ what: 'To be used', from: ready + last.left, why: cures(last) }]),
    ];
}

function toTouchFood(plan: Plan): Readiness[] {
    if (!plan.blanks.some(({ blank }) => blank.touchedBy?.value === 'food')) return [];
    const all = curing(plan);
    const [last, silent] = [longest(all), all.find(({ food }) => food === undefined)];
    if (last === undefined) return [];
    const what = 'To touch food';
    if (silent !== undefined) return [{ what, why: `nobody’s word stands for ${silent.name}` }];
    return [{ what, from: plan.schedule.ready + last.left, why: cures(last) }];
}

function cures({ name, cure }: Curing): string {
    return `${name} cures for ${showTime(cure)}`;
}

function longest(all: readonly Curing[]): Curing | undefined {
    return all.toSorted((a, b) => b.left - a.left)[0];
}

/** What hardens on a piece, with what is left of its cure when the recipe is at its end. */
function curing({ steps }: Plan): Curing[] {
    return steps.flatMap(({ step }): Curing[] => {
        const laid = laidBy(step);
        if (laid === undefined || !('cure' in laid) || laid.cure === undefined) return [];
        const cure = laid.cure.value + laid.cure.tolerance;
        const left = Math.max(0, cure - timeBetween(steps, step.index, steps.length));
        return [{ name: laid.name, cure, left, isCoat: step.kind === 'finish', food: laid.food }];
    });
}
