import type { StepPlan } from '../../plan/plan';
import type { Quantity } from '../../quantity/quantity';
import { showLength, showLengthInterval, showNumber, showRatio, showSpeed } from '../../quantity/show';
import { checkRange } from '../helpers/check-range';
import { engravings, newestRun } from '../helpers/newest-run';
import { settingsHeld } from '../helpers/settings-held';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'run-misses-check',
    title: 'The newest run misses its check',
    severities: ['warning'],
    condition:
        'The depth or width that was measured last in a step lies outside of what its `check` asks for. Nothing is said once the recipe has another `issue`, or after a new coupon, a service of the laser or a new board; nor where pinned settings are said to miss the depth anyway.',
    why: 'The piece does not fit what was made for it, and the next one may not either.',
    mend: 'Set the piece aside and measure it again. What was measured already counts for the settings of the next one, where they are worked out: measure that, too. If it misses again, look at lens and focus and burn a new coupon, or ask for what can be kept.',
    source: 'Plain comparison.',
};

export const runMissesCheck: Rule = {
    page,
    *examine(plan) {
        const engraved = engravings(plan);
        for (const { step: check } of plan.steps) {
            if (check.kind !== 'check') continue;
            const made = engraved.find(({ step }) => step.name === check.step.value);
            if (made === undefined) continue;
            for (const what of ['depth', 'width'] as const) {
                const wanted = check[what];
                const newest = newestRun(plan, made.stepPlan, what);
                const measured = newest?.burnt[what];
                if (wanted === undefined || newest === undefined || measured === undefined) continue;
                if (what === 'depth' && isSaidOfSettings(made.stepPlan)) continue;
                const range = checkRange(wanted);
                const missing = Math.max(range.low - measured.value, measured.value - range.high);
                if (missing <= 1e-9) continue;
                const over = measured.value > range.high ? 'too much' : 'too little';
                yield finding(page, {
                    severity: 'warning',
                    message: `${made.step.name} came out ${showLength(measured.value, measured.unit)} ${what === 'depth' ? 'deep' : 'wide'} on ${newest.run.date.value}, ${showLength(missing, wanted.unit)} ${over}: its check is ${showLengthInterval(range, wanted.unit)}. ${whatNext(what, made.stepPlan, wanted)}`,
                    where: wanted.where,
                    step: check.index,
                    related: [{ message: 'It was measured here.', where: newest.burnt.where }],
                });
            }
        }
    },
};

/** settings-miss-depth says it, and offers the settings that would do. */
function isSaidOfSettings({ step, laser }: StepPlan): boolean {
    return step.kind === 'engrave' && settingsHeld(step) && laser?.settings?.reached === false;
}

function whatNext(what: 'depth' | 'width', { step, laser }: StepPlan, wanted: Quantity): string {
    const settings = laser?.settings;
    if (what === 'width' || settings === undefined || step.kind !== 'engrave') return 'Measure it again, and the next piece.';
    if (settingsHeld(step))
        return `By all runs its settings give ${showLengthInterval(settings.gives, wanted.unit)}: measure it again, and the next piece.`;
    const power = Number.isFinite(settings.powerRatio) ? showRatio(settings.powerRatio) : `${showNumber(settings.power, 1)} W`;
    const passes = settings.passes === 1 ? 'in one pass' : `x ${settings.passes}`;
    return `With that counted in, the next is planned at ${power} at ${showSpeed(settings.speed)} ${passes}: measure it, too.`;
}
