import { holes } from '../../geometry/islands';
import { area } from '../../geometry/measure';
import type { Plan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import type { Change } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Peel } from '../../recipe/step';
import { blankOf } from '../helpers/blank-names';
import { peelFirst } from '../helpers/peel-first';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'no-backing',
    title: 'Loose pieces without backing',
    severities: ['error'],
    quickFix: 'always',
    condition: 'A step burns through a sheet and leaves pieces standing free, and the blank has no backing.',
    error: 'Always: loose parts fall while the beam is still on them.',
    why: 'The pieces drop, tilt or fly off with the exhaust while the laser still works on their neighbours.',
    mend: 'Stick the sheet to foil tape first: write `backing foil` in the blank.',
    source: commonPractice,
};

export const noBacking: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            if (step.kind !== 'engrave' || laser === undefined || !laser.through) continue;
            const blank = blankOf(plan, stepPlan);
            if (blank === undefined || blank.blank.backing !== 'none') continue;
            const loose = holes(laser.region);
            if (loose.length === 0) continue;
            yield finding(page, {
                severity: 'error',
                message: phrase`${step.name} leaves ${loose.length} loose piece${loose.length === 1 ? '' : 's'} (${showArea(loose.reduce((sum, piece) => sum + area(piece), 0))}) with nothing behind ${loose.length === 1 ? 'it' : 'them'}.`,
                where: step.blank.where,
                step: step.index,
                spots: spotsOf(blank.name, loose),
                related: [{ message: phrase`${blank.name} has no backing.`, where: blank.blank.where }],
                fixes: [
                    {
                        title: phrase`Back ${blank.name} with foil`,
                        preferred: true,
                        changes: [
                            { do: 'add', block: blank.blank.whole, statement: 'backing foil' },
                            ...peeledInTime(plan, blank.name),
                        ],
                    },
                ],
            });
        }
    },
};

/** What is backed has to be bared again before the board that it is let into is sanded. */
function peeledInTime(plan: Plan, half: string): Change[] {
    const inlaid = plan.steps.find(({ inlay }) => inlay?.reliefLaser.blank === half);
    const board = inlaid?.inlay?.pocketLaser.blank;
    if (inlaid === undefined || board === undefined || board === half) return [];
    const after = plan.steps.filter(({ step }) => step.index > inlaid.step.index);
    const sanding = after.find(({ step, blank }) => step.kind === 'sand' && blank === board)?.step;
    const peel = after.map(({ step }) => step).find((step): step is Peel => step.kind === 'peel' && step.blank.value === half);
    if (sanding === undefined || (peel !== undefined && peel.index < sanding.index)) return [];
    return peelFirst(plan, half, sanding, peel);
}
