import { spotOf } from '../../burn/beam';
import { pitchForSpot } from '../../burn/pitch';
import type { LaserPlan } from '../../plan/laser-plan';
import { setUps } from '../../plan/set-ups';
import { showLength, showNumber } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Laser } from '../../recipe/stock';
import { MAX_FILE_LINES } from '../../toolpath/job';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'file-too-long',
    title: 'Too long for a machine file',
    severities: ['error'],
    condition: `The steps of a set-up take more than ${showMillions(MAX_FILE_LINES)} lines in its machine file: mostly a large picture in dots, or many passes at a fine pitch.`,
    error: 'Always: the machine file is not written.',
    why: 'The machine file is not written. It would be larger than 60 MB, more than most controllers take, and half of it could be burnt before the rest is refused.',
    mend: 'Take a coarser `pitch`: at twice the pitch a picture in dots has about a quarter of the lines, plain art half. Or make the art smaller, take fewer passes, or divide the step into two with bench work between them.',
    source: commonPractice,
};

export const fileTooLong: Rule = {
    page,
    *examine(plan) {
        for (const { lasers } of setUps(plan)) {
            const total = lasers.reduce((sum, laser) => sum + linesOf(laser), 0);
            if (!(total > MAX_FILE_LINES)) continue;
            const over = lasers.filter((laser) => linesOf(laser) > MAX_FILE_LINES);
            const [longest] = lasers.toSorted((a, b) => linesOf(b) - linesOf(a));
            for (const laser of over.length > 0 ? over : [longest!]) {
                const { step } = laser;
                const alone = over.length > 0 || lasers.length === 1;
                const who = alone ? step.name : phrase`With ${step.name}, the longest of its steps, the set-up`;
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${who} takes about ${showMillions(alone ? linesOf(laser) : total)} lines in the machine file; no more than ${showMillions(MAX_FILE_LINES)} are written. ${mend(laser, plan.recipe.laser, alone)}`,
                    where: (step.kind === 'engrave' ? step.pitch?.where : undefined) ?? step.placements[0]?.where ?? step.where,
                    step: step.index,
                });
            }
        }
    },
};

/** Of dots that were made coarser, since all would be too many, there are as many more across each line as there are lines. */
function linesOf({ fileLines, pictures = [] }: LaserPlan): number {
    return fileLines * Math.max(1, ...pictures.map(({ grid }) => grid.every));
}

/** The pitch that is enough, where it still hides the lines; else there has to be less to burn. */
function mend(laser: LaserPlan, machine: Laser | undefined, alone: boolean): string {
    const pitch = laser.settings?.pitch;
    const others = phrase`make the art smaller, or take fewer passes`;
    if (pitch === undefined || !alone) return phrase`Take a coarser pitch, ${others}, or put bench work between the steps.`;
    const over = linesOf(laser) / MAX_FILE_LINES;
    const enough = Math.ceil(100 * pitch * (laser.pictures === undefined ? over : Math.sqrt(over)) * 1.02) / 100;
    const hidden = pitchForSpot(spotOf(machine));
    const coarser = hidden === undefined || enough <= hidden ? phrase`Take a pitch of ${showLength(enough)}, ` : '';
    return phrase`${coarser}${coarser === '' ? `${others.charAt(0).toUpperCase()}${others.slice(1)}` : others}, or divide it.`;
}

function showMillions(count: number): string {
    return phrase`${showNumber(count / 1e6, 1)} million`;
}
