import type { Plan, StepPlan } from '../../plan/plan';
import type { Quantity } from '../../quantity/quantity';
import { showLength, showLengthInterval, showNumber, showQuantity, showRatio, showSpeed } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Check } from '../../recipe/step';
import { checkRange, toneRange } from '../helpers/check-range';
import { newestRun } from '../helpers/newest-run';
import { settingsHeld } from '../helpers/settings-held';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'run-misses-check',
    title: 'The newest run misses its check',
    severities: ['warning'],
    condition:
        'The depth, width or tone that was measured last in a step lies outside of what its `check` asks for, or it did not come through. Nothing is said once the recipe has another `issue`, or after a new coupon, a service of the laser or a new board; nor where pinned settings are said to miss the depth anyway.',
    why: 'The piece does not fit what was made for it, and the next one may not either.',
    mend: 'Set the piece aside and measure it again. What was measured already counts for the settings of the next one, where they are worked out: measure that, too. If it misses again, look at lens and focus and burn a new coupon, or ask for what can be kept.',
    source: 'Plain comparison.',
};

export const runMissesCheck: Rule = {
    page,
    *examine(plan) {
        for (const { step: check } of plan.steps) {
            if (check.kind !== 'check') continue;
            const stepPlan = plan.steps.find(
                ({ step }) => (step.kind === 'engrave' || step.kind === 'cut') && step.name === check.step.value,
            );
            if (stepPlan === undefined || !('name' in stepPlan.step)) continue;
            const made = { step: stepPlan.step, stepPlan };
            yield* notThrough(plan, check, made);
            for (const what of ['depth', 'width', 'tone'] as const) {
                const wanted = check[what];
                const newest = newestRun(plan, made.stepPlan, what);
                const measured = newest?.burnt[what];
                if (wanted === undefined || newest === undefined || measured === undefined) continue;
                if (what === 'depth' && isSaidOfSettings(made.stepPlan)) continue;
                const range = what === 'tone' ? toneRange(wanted) : checkRange(wanted);
                const missing = Math.max(range.low - measured.value, measured.value - range.high);
                if (missing <= 1e-9) continue;
                const shown = what === 'tone' ? showRatio : (value: number, unit: string) => showLength(value, unit);
                const over = measured.value > range.high ? phrase`too much` : phrase`too little`;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${made.step.name} came out ${shown(measured.value, measured.unit)} ${looks[what]} on ${newest.run.date.value}, ${shown(missing, wanted.unit)} ${over}: its check is ${what === 'tone' ? showQuantity(wanted) : showLengthInterval(range, wanted.unit)}. ${whatNext(what, made.stepPlan, wanted)}`,
                    where: wanted.where,
                    step: check.index,
                    related: [{ message: phrase`It was measured here.`, where: newest.burnt.where }],
                });
            }
        }
    },
};

const looks = { depth: 'deep', width: 'wide', tone: 'dark' } as const;

function* notThrough(
    plan: Plan,
    check: Check,
    { step, stepPlan }: { readonly step: { readonly name: string }; readonly stepPlan: StepPlan },
): Iterable<Finding> {
    const newest = check.through && newestRun(plan, stepPlan, 'through');
    const came = newest?.burnt.through;
    if (check.through === undefined || newest === undefined || came === undefined || came.value) return;
    yield finding(page, {
        severity: 'warning',
        message: phrase`${step.name} did not come through everywhere on ${newest.run.date.value}: another pass, or less speed, and look at lens and focus.`,
        where: check.through,
        step: check.index,
        related: [{ message: phrase`It was looked at here.`, where: came.where }],
    });
}

/** settings-miss-depth says it, and offers the settings that would do. */
function isSaidOfSettings({ step, laser }: StepPlan): boolean {
    return step.kind === 'engrave' && settingsHeld(step) && laser?.settings?.reached === false;
}

function whatNext(what: 'depth' | 'width' | 'tone', { step, laser }: StepPlan, wanted: Quantity): string {
    const settings = laser?.settings;
    if (what !== 'depth' || settings === undefined || step.kind !== 'engrave')
        return phrase`Measure it again, and the next piece.`;
    if (settingsHeld(step))
        return phrase`By all runs its settings give ${showLengthInterval(settings.gives, wanted.unit)}: measure it again, and the next piece.`;
    const power = Number.isFinite(settings.powerRatio) ? showRatio(settings.powerRatio) : `${showNumber(settings.power, 1)} W`;
    const passes = settings.passes === 1 ? phrase`in one pass` : `x ${settings.passes}`;
    return phrase`With that counted in, the next is planned at ${power} at ${showSpeed(settings.speed)} ${passes}: measure it, too.`;
}
