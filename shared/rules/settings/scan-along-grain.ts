import { showNumber } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { blankOf } from '../helpers/blank-names';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Scan lines closer to the grain than this, rad, count as along it. @commonPractice */
const near = Math.PI / 6;

const page: Page = {
    id: 'scan-along-grain',
    title: 'Scanning along the grain',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'The scan lines of an area run within 30° of the grain.',
    why: 'Soft and hard bands of the grain burn to different depths; lines along them leave stripes, most of all in intricate art and pictures.',
    mend: 'Scan across the grain.',
    source: commonPractice,
};

export const scanAlongGrain: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            if (step.kind !== 'engrave' || laser === undefined || step.scan?.direction === undefined || laser.line !== undefined)
                continue;
            const grain = blankOf(plan, stepPlan)?.grain;
            const along = step.scan.direction === 'along';
            if (!along && grain === undefined) continue;
            const angle = along ? 0 : angleBetween(laser.scanAngle, grain ?? 0);
            if (angle >= near) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${step.name} is scanned ${along ? phrase`along the grain` : phrase`${showNumber((angle * 180) / Math.PI, 0)}° off the grain`}: the grain will show as stripes.`,
                where: step.scan.where,
                step: step.index,
                fixes: [
                    {
                        title: phrase`Scan across the grain`,
                        preferred: true,
                        changes: [{ do: 'replace', where: step.scan.where, text: 'scan across grain' }],
                    },
                ],
            });
        }
    },
};

/** Between two directions without arrowheads, 0 to a quarter turn. */
function angleBetween(a: number, b: number): number {
    const turn = Math.abs(a - b) % Math.PI;
    return Math.min(turn, Math.PI - turn);
}
