import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Longer than this nobody stays beside a machine without having planned to, s. @commonPractice */
const long = 3600;

const page: Page = {
    id: 'long-burn',
    title: 'The laser runs for long',
    severities: ['info', 'warning'],
    condition: 'One step keeps the laser running for more than an hour for each piece, or for longer than the shop’s workday.',
    why: 'A laser must not run alone: a flame in the kerf is put out in seconds by who sees it. The longer it runs, the likelier somebody walks away.',
    mend: 'Plan for somebody to stay. A coarser `pitch` or fewer `passes` shorten it; a step can be split in two, so that it stops at a place of your choosing.',
    source: `${commonPractice} The machine’s manual comes first.`,
};

export const longBurn: Rule = {
    page,
    *examine(plan) {
        const workday = plan.recipe.shop?.workday?.value ?? Number.POSITIVE_INFINITY;
        for (const { step, laser } of plan.steps) {
            if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut') || laser.machine <= long) continue;
            const over = laser.machine > workday;
            const than = over ? phrase`, longer than the workday of ${showTime(workday)}` : '';
            yield finding(page, {
                severity: over ? 'warning' : 'info',
                message: phrase`${step.name} keeps the laser running for ${showTime(laser.machine)}${than}: somebody has to stay beside it all that time.`,
                where: step.where,
                step: step.index,
            });
        }
    },
};
