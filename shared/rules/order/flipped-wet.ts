import { layersAbove } from '../../piece/column';
import type { Plan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Flip } from '../../recipe/step';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceBefore } from '../helpers/face-at';
import { longerWait } from '../helpers/longer-wait';
import { wetting } from '../helpers/wetting';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';
import { resinSets } from './sand-before-cure';

const page: Page = {
    id: 'flipped-wet',
    title: 'Turned over while wet',
    severities: ['warning', 'error', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A blank is flipped before what was laid on or poured into the face that goes down has had its time: a coat to dry, a fill to cure, a joint half of its glue’s cure.',
    error: 'Less than a quarter of a resin’s cure is over: it runs out of its pocket.',
    why: 'The wet face lies on the bed: a coat sticks and takes the print of what it lies on, resin sags or runs out, a joint that is not held opens.',
    mend: 'Wait longer before it is flipped, or do the other face first.',
    source: `${commonPractice} Drying and curing times are the stock’s figures.`,
};

export const flippedWet: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank } of plan.steps) {
            if (step.kind !== 'flip') continue;
            for (const index of laidOn(plan, step, blank)) {
                const wet = wetting(plan, index);
                if (wet === undefined) continue;
                const gone = elapsed(plan, index, step.index);
                if (longEnough(gone, wet.needs)) continue;
                const flows = wet.step.kind === 'fill' && gone < wet.needs * resinSets;
                const what = flows ? phrase`it runs out` : wet.step.kind === 'inlay' ? phrase`it may open` : phrase`it sticks`;
                yield finding(page, {
                    severity: flows ? 'error' : 'warning',
                    message: phrase`${wet.name} needs ${showTime(wet.needs)}, and has had ${showTime(gone)}: ${what} when ${blank ?? 'the blank'} is laid on that face.`,
                    where: step.where,
                    step: step.index,
                    rests: [wet.where],
                    related: [{ message: phrase`${wet.name} goes on here.`, where: wet.step.where }],
                    fixes: longerWait(page.id, plan, wet.step, step, wet.needs - gone, figures),
                });
            }
        }
    },
};

/** The last steps whose coat, resin or glue lies on the face that goes down, in the order of the work. */
function laidOn(plan: Plan, { index }: Flip, blank: string | undefined): number[] {
    const face = faceBefore(plan, index, blank);
    if (face === undefined) return [];
    const laid = new Set<number>();
    for (const column of [face.bare, ...face.cells.map((cell) => cell.column)])
        for (const { step } of layersAbove(column)) if (step !== undefined) laid.add(step);
    // Of coats on each other the last decides.
    const coats = [...laid].filter((step) => /^(?:seal|finish)$/.test(plan.steps[step]!.step.kind));
    const last = Math.max(...coats);
    return [...laid].filter((step) => !coats.includes(step) || step === last).sort((a, b) => a - b);
}
