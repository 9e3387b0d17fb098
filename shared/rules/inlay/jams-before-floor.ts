import { DEEP } from '../../burn/wall';
import type { InlayPlan } from '../../plan/plan';
import { showLength, showNumber } from '../../quantity/show';
import type { Finding, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { halfNoun } from '../helpers/half-noun';
import { lostPlaces, mostTaken } from '../helpers/lost-parts';
import { gapFixes, gapWords, offsetsOf } from '../helpers/mend-gap';
import { settleBySquare } from '../helpers/settle-by-square';
import { betterTurnedOver } from '../helpers/side-up';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';
import { widestSeam } from './wide-seam';

/** More than the walls need, so that rounding does not stop it, mm; and the most that a fix gives them. */
const ease = 0.005;
const mostEase = 0.1;

/** An inlay that goes in by less than this part of the depth is held by nothing. @commonPractice */
const leastHold = 0.1;

const page: Page = {
    id: 'jams-before-floor',
    title: 'The inlay jams before it reaches the floor',
    severities: ['hint', 'warning', 'error'],
    quickFix: 'sometimes',
    condition: `The walls lean so much, and the clearance is so small, that the veneer is stopped by the walls before it lies on the glue; or that may be so, since nobody knows how the walls of a pocket lean below ${DEEP} mm.`,
    error: 'Less than a tenth of the depth goes in: nothing holds the inlay, and sanding takes it off. What goes in further is a warning, as a press may still close a part of the way. A hint where it is only possible that deep walls stop it, and none was measured; a warning where some were.',
    why: 'It stands proud over a hollow: the glue does not hold it, and sanding goes through it.',
    mend: 'Give more clearance: at least what the walls take up on the way to the floor, about (depth − glue film) · tan of the lean. Where that leaves a seam that shows, or takes fine parts away, take a thinner veneer and a shallower pocket. A negative `offset` in either half takes some of it away. An outline pass after the area pass makes the wall steeper, and the fit is worked out with it. How deep walls lean is known once a run says how wide a pocket is at its face and at its floor: `width 30 mm, 29.7 mm`.',
    source: 'Own derivation: the gap along an edge is the clearance less what both walls take up at the same height. Walls follow from the beam’s width and the coupon, as in the press of both halves.',
};

export const jamsBeforeFloor: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay?.fit === undefined || step.kind !== 'inlay') continue;
            if (step.clearance === undefined && step.clearanceWhere !== undefined) continue; // it cannot be read, as is said of the text
            if (betterTurnedOver(inlay, widestSeam) !== undefined) continue; // wrong-side-up says it
            if (inlay.fit.bottoms) {
                yield* mayJam(inlay, step);
                continue;
            }
            const { insertion, leastClearance } = inlay.fit;
            if (!Number.isFinite(leastClearance)) continue; // a skin of the veneer lies on the board: skin-left and depth-unreachable say so
            const depth = inlay.pocketLaser.depth?.value ?? 0;
            const lean = leanWords(inlay);
            const floor = inlay.pocket.kind === 'cut' ? phrase`it is flush` : phrase`the floor at ${showLength(depth)}`;
            const how =
                insertion < 0.01 ? phrase`does not go in at all` : phrase`jams ${showLength(insertion)} in, before ${floor}`;
            const nothing = step.clearance === undefined && offsetsOf(inlay) === 0;
            const written = nothing ? phrase`Without a clearance` : phrase`With ${gapWords(inlay, step)}`;
            const { fixes, instead } = mending(inlay, step);
            // A pocket at the shallow end of its range would let it reach the floor.
            const isOpen = insertion >= (inlay.pocketLaser.depth?.low ?? depth);
            const settled = isOpen ? settleBySquare(plan, inlay.pocketLaser) : { words: '', fixes: [] };
            yield finding(page, {
                severity: insertion < leastHold * depth ? 'error' : 'warning',
                message: phrase`${written} the inlay ${how}: the walls lean ${lean} and need ${showLength(leastClearance)}.${instead}${settled.words}`,
                where: step.clearance?.where ?? step.where,
                step: step.index,
                related: [
                    {
                        message: phrase`The ${inlay.pocket.kind === 'cut' ? phrase`opening is cut` : phrase`pocket is burnt`} here.`,
                        where: inlay.pocket.where,
                    },
                ],
                fixes: [...fixes, ...settled.fixes],
            });
        }
    },
};

/** It goes in by the likely walls, and would not by the widest of 95 %. */
function* mayJam(inlay: InlayPlan, step: Inlay): Iterable<Finding> {
    const wide = inlay.fitIfWide;
    if (wide === undefined || wide.bottoms || !Number.isFinite(wide.leastClearance)) return;
    const deepest = [inlay.pocketLaser, inlay.reliefLaser].find(({ deepWall }) => deepWall !== undefined)!;
    const { width, walls } = deepest.deepWall!;
    const known = walls === 0 ? phrase`no wall was measured` : phrase`from ${walls} measured`;
    const most = inlay.fit!.closing + widestSeam;
    const { leastClearance } = wide;
    const wanted = { low: leastClearance, high: Math.min(leastClearance + mostEase, most), best: leastClearance + ease };
    const fixes = gapFixes(inlay, step, wanted, mostTaken(inlay, takenBy(inlay, leastClearance + mostEase)) ?? 0);
    yield finding(page, {
        severity: walls === 0 ? 'hint' : 'warning',
        message: phrase`With ${gapWords(inlay, step)} the inlay may jam ${showLength(wide.insertion)} in: below ${showLength(DEEP)} nobody knows how walls lean. Those of ${deepest.step.name} take ${showLength(width.low)} to ${showLength(width.high)} down to the floor (${known}), and ${showLength(leastClearance)} of clearance lets in the widest. Burn a pocket as deep and write its width at face and floor in a run.`,
        where: step.clearance?.where ?? step.where,
        step: step.index,
        fixes,
    });
}

/** The steeper of both walls is left out; a cut leans by tenths of a degree. */
function leanWords({ pocketLaser, reliefLaser }: InlayPlan): string {
    const lean = (Math.max(pocketLaser.taper, reliefLaser.taper) * 180) / Math.PI;
    return `${showNumber(lean, lean < 1 ? 1 : 0)}°`;
}

/** More clearance, or why it is no way out: what lets the inlay in must neither gape nor take its parts away. */
function mending(inlay: InlayPlan, step: Inlay): { fixes: Fix[]; instead: string } {
    const { leastClearance, closing } = inlay.fit!;
    const most = closing + widestSeam;
    const wanted = { low: leastClearance, high: Math.min(leastClearance + mostEase, most), best: leastClearance + ease };
    const upTo = takenBy(inlay, leastClearance + mostEase);
    const fixes = gapFixes(inlay, step, wanted, mostTaken(inlay, upTo) ?? 0);
    if (fixes.length > 0) return { fixes, instead: '' };
    const narrowest = lostPlaces(inlay, upTo)[0]?.width ?? 0;
    const then =
        leastClearance > most
            ? `with it a seam of ${showLength(leastClearance - closing)} would stay open`
            : `parts ${showLength(narrowest)} wide would vanish`;
    const thinner = inlay.pocket.kind === 'cut' ? '' : ` Thinner ${halfNoun(inlay)} in a shallower pocket needs less.`;
    return { fixes, instead: ` More clearance is no way out: ${then}.${thinner}` };
}

/** What comes off both edges of the veneer's parts together where another clearance, or another offset of theirs, gives a gap; mm. */
function takenBy(inlay: InlayPlan, gap: number): number {
    const offset = inlay.relief.offset?.value ?? 0;
    const more = gap - inlay.gap;
    return inlay.clearance + 2 * offset + (offset === 0 ? 1 : 2) * Math.max(0, more);
}
