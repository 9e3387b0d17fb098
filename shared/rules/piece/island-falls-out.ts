import { holes } from '../../geometry/islands';
import { area, bounds, contains } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceAfter, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'island-falls-out',
    title: 'Middle of a ring falls out',
    severities: ['warning'],
    condition: 'A cut takes a ring out of a piece, such as the letter O, and nothing holds the middle of it.',
    why: 'What a ring encloses hangs on nothing once the ring is cut: it drops with it, and an O becomes a plain hole.',
    mend: 'Draw a bridge from the middle to the rest. Or back the blank with tape, and glue the middle in again afterwards.',
    source: commonPractice,
};

export const islandFallsOut: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            const fell = faceAfter(plan, step.index, blank)?.fell;
            if (step.kind !== 'cut' || laser === undefined || blank === undefined || fell === undefined) continue;
            // On its tape everything keeps its place.
            if (plan.blanks.find(({ name }) => name === blank)?.blank.backing !== 'none') continue;
            const lost = holes(laser.region).filter((middle) => area(middle) > negligible && fallsIn(middle, fell));
            if (lost.length === 0) continue;
            const size = lost.reduce((sum, middle) => sum + area(middle), 0);
            const many =
                lost.length === 1 ? phrase`The middle of a ring falls` : phrase`The middles of ${lost.length} rings fall`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${many} out of ${blank} with ${step.name} (${showArea(size)}): nothing holds ${lost.length === 1 ? 'it' : 'them'}. Draw a bridge to the rest, or back ${blank} with tape.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(blank, lost),
            });
        }
    },
};

/** What lies inside of what fell has fallen too: asked at a corner, drawn in a little. */
function fallsIn(middle: Region, fell: Region): boolean {
    const [ring] = middle.rings;
    const box = bounds(middle);
    if (ring === undefined || box === undefined) return false;
    const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    const hair = 1e-3;
    return contains(fell, ring[0]! + (x - ring[0]!) * hair, ring[1]! + (y - ring[1]!) * hair);
}
