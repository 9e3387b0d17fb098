import { type Column, type Dig, layersAbove, ownLayer } from '../../piece/column';
import type { Met } from '../../piece/face';
import { fromBelow } from '../../piece/turned-over';
import type { LaserPlan } from '../../plan/laser-plan';
import type { BlankPlan, Plan, StepPlan } from '../../plan/plan';
import { add, atLeast, exactly, type Interval } from '../../quantity/interval';
import { showArea, showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Engrave, Step } from '../../recipe/step';
import { atItsWord } from '../figures';
import { askDepth, depthUnit, isSaidAs, roundLength } from '../helpers/ask-depth';
import { blankOf, materialName } from '../helpers/blank-names';
import { faceAfter, nameOf, negligible } from '../helpers/face-at';
import { leastFloor } from '../helpers/floor';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'depth-in-sum',
    title: 'Too deep in sum',
    severities: ['warning', 'error'],
    quickFix: 'sometimes',
    condition: `Steps that are each shallow enough dig in one place, from one face or from both, or in a sanded face, and together leave less than ${leastFloor} mm of wood.`,
    error: 'The steps together come out on the other side.',
    why: 'The beam begins where the step before ended: the floor bulges, shows through or is gone.',
    mend: 'Move them apart, engrave the last less deep, or take a thicker board.',
    source: 'Plain arithmetic, tolerances at their bad end; the least floor is common practice, no source.',
};

export const depthInSum: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        const found = plan.steps.flatMap((stepPlan) => {
            const blank = blankOf(plan, stepPlan);
            const worst = blank === undefined ? undefined : worstOf(plan, stepPlan, blank);
            return blank === undefined || worst === undefined ? [] : [{ ...worst, blank }];
        });
        for (const worst of found) {
            const { step, laser, blank, thickness } = worst;
            // Who digs there later has less left, and it is said there.
            if (
                found.some(
                    (later) => later.step.index > step.index && allDigs(later.met.column).some((dig) => dig.step === step.index),
                )
            )
                continue;
            const { met, sum, parts } = worst;
            const pierced = sum.value >= thickness.low;
            const others = sum.high - laser.depth.high;
            const over = laser.depth.value > 0 ? Math.max(1, laser.depth.high / laser.depth.value) : 1;
            const room = roundLength((thickness.low - leastFloor - others) / over, depthUnit(step), 'down');
            const most = room >= 0.1 ? room : undefined;
            const { text, fixes, instead } = askDepth(page.id, step, most, plan, figures);
            const atMost = isSaidAs(most, step, text) ? phrase`at most ` : '';
            const mend =
                text === undefined
                    ? ': move them apart, or take a board of ' +
                      `${showLength(roundLength(sum.high + leastFloor + thickness.value - thickness.low, 'mm', 'up'))}`
                    : phrase`, so engrave ${step.name} ${atMost}${text} deep`;
            const left = pierced
                ? phrase`${materialName(blank)} is only ${showLength(thickness.value)} thick`
                : phrase`only ${showLength(Math.max(0, thickness.value - sum.value))} of ${materialName(blank)} is left, ${showLength(Math.max(0, thickness.low - sum.high))} at worst, and ${showLength(leastFloor)} should stay`;
            yield finding(page, {
                severity: pierced ? 'error' : 'warning',
                message: phrase`Where ${step.name} meets what was taken before it (${showArea(met.area)}), ${parts} come to ${showLength(sum.value)}: ${left}${mend}.${instead}`,
                where: step.depth?.where ?? step.where,
                step: step.index,
                spots: spotsOf(blank.name, [met.region]),
                related: allDigs(met.column).flatMap((dig) => {
                    const other = plan.steps[dig.step]?.step;
                    return other === undefined || other.index === step.index
                        ? []
                        : [
                              {
                                  message: phrase`${nameOf(other)} digs here too${met.column.digs.includes(dig) ? '' : ', from the other face'}.`,
                                  where: other.where,
                              },
                          ];
                }),
                fixes,
            });
        }
    },
};

interface Worst {
    readonly step: Engrave;
    readonly laser: LaserPlan & { readonly depth: Interval };
    readonly thickness: Interval;
    readonly met: Met;
    readonly sum: Interval;
    readonly parts: string;
}

/** Whether what a step leaves is told of together with what others have dug in one of its places. */
export function isTooDeepInSum(plan: Plan, stepPlan: StepPlan): boolean {
    const blank = blankOf(plan, stepPlan);
    return blank !== undefined && worstOf(plan, stepPlan, blank) !== undefined;
}

/** Where a step leaves least, if that is because of what others took before it. */
function worstOf(plan: Plan, { step, laser, blank: name }: StepPlan, { thickness, blank }: BlankPlan): Worst | undefined {
    const face = faceAfter(plan, step.index, name);
    if (face === undefined || step.kind !== 'engrave' || thickness === undefined || blank.sheet?.kind === 'veneer')
        return undefined;
    if (laser?.depth === undefined || laser.through || laser.tone !== undefined) return undefined;
    const { depth } = laser;
    // By itself it comes out at the back already: deeper-than-blank says so.
    if (depth.value > thickness.low) return undefined;
    const isThinAlone = thickness.low - depth.high < leastFloor;
    let worst: Worst | undefined;
    for (const met of face.met) {
        const taken = surfaceOf(met.column);
        const behind = behindOf(met.column, thickness);
        // What lies on a veneer or a fill is not this rule's.
        if (taken === undefined || !(taken.value > 0 || behind.value > 0) || met.area <= negligible) continue;
        const sum = add(add(taken, behind), depth);
        // A floor that it makes too thin by itself is its own, as thin-floor says, unless others bring it through.
        if (isThinAlone && (!isDug(met.column, behind) || sum.value < thickness.value)) continue;
        if (thickness.low - sum.high >= leastFloor || (worst !== undefined && worst.sum.value >= sum.value)) continue;
        worst = {
            step,
            laser: { ...laser, depth },
            thickness,
            met,
            sum,
            parts: partsOf(plan, met.column, { taken: taken.value, behind: behind.value }, step, depth.value),
        };
    }
    return worst;
}

function isDug({ digs }: Column, behind: Interval): boolean {
    return behind.value > 0 || digs.some(({ depth }) => depth.value > 0);
}

/** How far down the blank's own wood begins here; undefined where something else than a coat or tape lies on it. */
function surfaceOf(column: Column): Interval | undefined {
    const { top, layers } = column;
    const over = layersAbove(column);
    if (layers.length === 0 || over.some(({ kind }) => kind !== 'coat' && kind !== 'tape' && kind !== 'air')) return undefined;
    return over[over.length - 1]?.down ?? top;
}

/** What was taken from the other face, mm. */
function behindOf(column: Column, thickness: Interval): Interval {
    const own = column.layers[ownLayer(column)];
    return own === undefined || column.below === undefined ? exactly(0) : atLeast(fromBelow(own.down, thickness), 0);
}

function allDigs({ digs, below }: Column): readonly Dig[] {
    return below === undefined ? digs : [...digs, ...below.digs];
}

function partsOf(
    plan: Plan,
    { digs, below }: Column,
    { taken, behind }: { readonly taken: number; readonly behind: number },
    step: Step,
    depth: number,
): string {
    const parts = [
        ...takenWords(plan, digs, taken, ''),
        ...takenWords(plan, below?.digs ?? [], behind, ' from the other face'),
        `${showLength(depth)} of ${nameOf(step)}`,
    ];
    return `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;
}

/** What sanding and each burn took from one face. */
function takenWords(plan: Plan, digs: readonly Dig[], taken: number, from: string): string[] {
    const burnt = digs.filter(({ depth }) => depth.value > 0);
    const dug = burnt.reduce((sum, dig) => sum + dig.depth.value, 0);
    return [
        ...(taken - dug > 0.005 ? [`${showLength(taken - dug)} of sanding${from}`] : []),
        ...burnt.map((dig) => `${showLength(dig.depth.value)} of ${nameOf(plan.steps[dig.step]?.step)}${from}`),
    ];
}
