import { areaBeyond } from '../../geometry/inverse';
import type { Region } from '../../geometry/region';
import { keptFor, nameOf } from '../../plan/kept';
import type { LaserPlan } from '../../plan/laser-plan';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Overhang that is rounding rather than a mistake, mm2. */
const negligible = 0.05;

const page: Page = {
    id: 'beyond-boundary',
    title: 'Art beyond the boundary of its inverse',
    severities: ['error'],
    quickFix: 'always',
    condition: 'A part of the art lies outside the boundary within which it is turned inside out.',
    error: 'Always: what stays joined to the sheet cannot be let in.',
    why: 'The laser burns what lies between art and boundary. A part that reaches past the boundary is not cut free: it stays joined to the sheet.',
    mend: 'Take a larger boundary, such as `inverse within grown 6 mm`, which follows the art wherever it goes.',
    source: commonPractice,
};

function beyondOf(figure: Region, boundary: Region): number {
    return keptFor(figure, `beyond ${nameOf(boundary)}`, () => areaBeyond(figure, boundary));
}

/** Whether some of the art is not turned inside out, since its boundary does not hold it. */
export function reachesBeyond({ placed }: LaserPlan): boolean {
    return placed.some(({ figure, boundary }) => boundary !== undefined && beyondOf(figure, boundary) > negligible);
}

export const beyondBoundary: Rule = {
    page,
    *examine(plan) {
        for (const { laser, step } of plan.steps) {
            if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            for (const { boundary, figure, index } of laser.placed) {
                const placement = step.placements[index];
                if (boundary === undefined || placement?.kind !== 'art' || placement.inverse === undefined) continue;
                const beyond = beyondOf(figure, boundary);
                if (beyond <= negligible) continue;
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${showArea(beyond)} of ${placement.art.value ?? phrase`the art`} lie outside the boundary and stay joined to the sheet.`,
                    where: placement.inverse.where,
                    step: step.index,
                    spots: spotsOf(laser.blank, [figure]),
                    fixes: [
                        {
                            title: phrase`Let the boundary follow the art, 6 mm around it`,
                            preferred: true,
                            changes: [{ do: 'replace', where: placement.inverse.where, text: 'grown 6 mm' }],
                        },
                    ],
                });
            }
        }
    },
};
