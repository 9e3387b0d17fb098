import type { LaserPlan } from '../../plan/laser-plan';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { lengthWithin } from '../helpers/length-within';
import { clearanceFix } from '../helpers/mend-gap';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';
import { widestSeam } from './wide-seam';

const page: Page = {
    id: 'kerf-decides-fit',
    title: 'A guessed kerf decides whether a part goes in',
    severities: ['info'],
    quickFix: 'sometimes',
    condition:
        'A part that is cut out, or its opening, has a kerf that is a guess; with the narrowest kerf of that guess it would not go in, though with the usual one it does.',
    why: 'A narrower kerf than was thought leaves the part larger and the opening smaller by half of the difference on each edge: hundredths of a millimetre, which are all the room there is.',
    mend: 'Cut strips out of an offcut and write their width into the coupon (`strip 5.78 mm of 6 mm`), or try plugs in an opening (`fits 0.20 mm`), or give more clearance.',
    source: 'Own derivation: half of what the kerf may be narrower, for each edge that is cut, together by root of squares.',
};

export const kerfDecidesFit: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay?.fit?.bottoms !== true || step.kind !== 'inlay') continue;
            const { reliefLaser, pocketLaser, fit, gap } = inlay;
            const guessed = [reliefLaser, pocketLaser].filter(isGuessed);
            const larger = Math.hypot(...guessed.map(({ kerf }) => (kerf!.face.value - kerf!.face.low) / 2));
            const short = fit.leastClearance + larger - gap;
            if (guessed.length === 0 || short <= 0) continue;
            const { low, high } = guessed[0]!.kerf!.face;
            const least = inlay.clearance + short;
            const wanted = { low: least, high: fit.closing + widestSeam - (gap - inlay.clearance), best: least };
            const enough = lengthWithin(wanted, step.clearance?.unit ?? 'mm');
            yield finding(page, {
                severity: 'info',
                message: phrase`The kerf of ${guessed.map(({ step: { name } }) => name).join(' and ')} is a guess of ${showLength(low)} to ${showLength(high)}: the fit may come out ${showLength(larger)} tighter, and ${showLength(gap - fit.leastClearance)} is what the walls leave. Measure the kerf on strips in an offcut${enough === undefined ? '' : phrase`, or give ${enough.text} of clearance`}.`,
                where: step.clearance?.where ?? step.where,
                step: step.index,
                fixes: clearanceFix(step, wanted),
            });
        }
    },
};

function isGuessed({ step, kerf, fits }: LaserPlan): boolean {
    return step.kind === 'cut' && kerf?.basis === 'guess' && fits === undefined;
}
