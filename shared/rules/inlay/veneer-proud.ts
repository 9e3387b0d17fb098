import { inlayStack } from '../../bench/stack';
import { seenLayer } from '../../piece/column';
import type { InlayPlan, Plan } from '../../plan/plan';
import type { Interval } from '../../quantity/interval';
import { showLength, showLengthInterval } from '../../quantity/show';
import type { Fix, Related } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { askDepth } from '../helpers/ask-depth';
import { faceBefore, nameOf } from '../helpers/face-at';
import { halfNoun } from '../helpers/half-noun';
import { depthForVeneer } from '../helpers/veneer-depth';
import { commonPractice, type Page } from '../page';
import { skinOf } from '../piece/skin-left';
import { finding, type Rule } from '../rule';

/** Share of the veneer that has to sit in the pocket to lock and to be sanded flush. @commonPractice */
const leastSeated = 0.5;

const page: Page = {
    id: 'veneer-proud',
    title: 'Veneer stands proud, or lies sunken',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'Less than half of the veneer’s thickness sits in the pocket, or its face lies below the board’s and sanding does not reach it.',
    why: 'In too shallow a pocket the parts do not lock, and most of the veneer is sanded away again. Sunken, its face stays dirty and its edges stay round.',
    mend: 'Make the pocket as deep as veneer and glue film together, less a tenth or two for flush sanding.',
    source: `${commonPractice} The height is veneer − (depth − glue film).`,
};

export const veneerProud: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { inlay } of plan.steps) {
            const { stack, veneer, pocketLaser } = inlay ?? {};
            if (inlay === undefined || stack === undefined || veneer === undefined || pocketLaser?.depth === undefined) continue;
            if (pocketLaser.through) continue; // pocket-without-floor says it
            if (skinOf(inlay) !== undefined) continue; // skin-left says it
            const { pocket } = inlay;
            if (pocket.kind === 'cut') continue;
            const where = pocket.depth?.where ?? pocket.where;
            const what = halfNoun(inlay);
            const proud = stack.proud.likely;
            const ask = (): { end: string; fixes: Fix[] } => {
                const { text, fixes, instead } = askDepth(page.id, pocket, depthForVeneer(inlay), plan, figures);
                return { end: `${text === undefined ? '' : `; it needs a depth of ${text}`}.${instead}`, fixes };
            };
            const sums = phrase`${showLength(veneer.value)} ${what} less ${showLength(veneer.value + inlay.film.value - proud.value)} of depth, plus ${showLength(inlay.film.value)} of glue`;
            if (isTooProud(proud.value, veneer)) {
                if (isHeldUp(plan, inlay, pocketLaser.depth, veneer)) continue; // who laid that there says it
                const { end, fixes } = ask();
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`The ${what} stands ${showLengthInterval(proud)} proud (${sums}): less than half of it sits in the pocket${end}`,
                    where,
                    step: inlay.pocket.index,
                    related: thinnedBy(plan, inlay),
                    fixes,
                });
                continue;
            }
            const reached = plan.steps.reduce(
                (sum, other) =>
                    sum +
                    (other.sand !== undefined && other.face === plan.steps[inlay.pocket.index]?.face
                        ? other.sand.below.value
                        : 0),
                0,
            );
            if (proud.high < -reached) {
                const { end, fixes } = ask();
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`The ${what} lies ${showLength(-proud.value)} below the face (${sums}), and sanding takes only ${showLength(reached)} off the board${end}`,
                    where,
                    step: inlay.pocket.index,
                    related: thinnedBy(plan, inlay),
                    fixes,
                });
            }
        }
    },
};

/** What took the veneer down before its half was burnt. */
function thinnedBy(plan: Plan, { half, reliefLaser }: InlayPlan): Related[] {
    return plan.steps.flatMap(({ step, sand, blank }) => {
        const isSanded = (sand?.below.value ?? 0) > 0 && blank === reliefLaser.blank && step.index < reliefLaser.step.index;
        const isDug = half.dugBy.includes(step.index) && step.index !== reliefLaser.step.index;
        if (!isSanded && !isDug) return [];
        return [
            { message: phrase`${isDug ? nameOf(step) : phrase`This sanding`} takes the whole veneer down.`, where: step.where },
        ];
    });
}

function isTooProud(proud: number, veneer: Interval): boolean {
    return proud > veneer.value * (1 - leastSeated);
}

/** The pocket is deep enough by itself, but something that was laid or poured before carries the veneer in a part of it. */
function isHeldUp(plan: Plan, inlay: InlayPlan, depth: Interval, veneer: Interval): boolean {
    if (isTooProud(inlayStack(veneer, depth, inlay.film, inlay.below).proud.likely.value, veneer)) return false;
    const laid = plan.steps.find((other) => other.inlay === inlay)?.step.index ?? 0;
    const face = faceBefore(plan, laid, inlay.pocketLaser.blank);
    return (face?.cells ?? []).some(
        ({ column }) => column.digs.some(({ step }) => step === inlay.pocket.index) && seenLayer(column)?.step !== undefined,
    );
}
