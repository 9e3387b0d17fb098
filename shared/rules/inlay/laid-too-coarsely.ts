import { foundPlaceWords } from '../../plan/found-place';
import { asideAtEdge } from '../../plan/laid-aside';
import type { InlayPlan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { roundLength } from '../helpers/ask-depth';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';
import { widestSeam } from './wide-seam';

const page: Page = {
    id: 'laid-too-coarsely',
    title: 'Laid down less exactly than the fit allows',
    severities: ['warning'],
    condition: `An edge of a pocket or of a half is burnt in two set-ups, and what the blank may be off between them (\`found by\`) stops the inlay before it lies on the glue, or leaves a seam of more than ${widestSeam} mm.`,
    why: 'Moved a little, the second burn makes the pocket narrower at its floor and wider at its face. The inlay goes by the floor, the eye by the face.',
    mend: 'Lay it more exactly: pins instead of a fence, or the files moved to marks that were measured (`kerfbook lay`); burn all of an edge in one set-up; or give more clearance, where the seam allows it.',
    source: `${commonPractice} What a blank may be off is what \`within\` says, or the figure of common practice that stands for it; of several the sum. Pushed to where it goes, the inlay has half of it on each side (own derivation).`,
};

export const laidTooCoarsely: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            const aside = inlay?.aside;
            if (inlay?.fit?.bottoms !== true || aside === undefined || inlay.fit.seam > widestSeam) continue;
            const room = roomIn(inlay, inlay.fit.leastClearance, inlay.fit.seam);
            const edge = asideAtEdge(aside);
            if (edge <= room.jam && edge <= room.seam) continue;
            const half = aside.burn.blank === inlay.pocketLaser.blank ? inlay.pocket : inlay.relief;
            const enough = roundLength(2 * Math.min(room.jam, room.seam), 'mm', 'down');
            const why =
                edge > room.jam
                    ? phrase`that takes ${showLength(edge)} at each side, and the walls leave ${showLength(room.jam)} before it jams`
                    : phrase`a seam of up to ${showLength(inlay.fit.seam + edge)} may stay open`;
            const cure = enough > 0 ? phrase`Lay it to within ${showLength(enough)}` : phrase`Lay it more exactly`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${half.name} and ${aside.burn.step.name} burn the same edge in two set-ups, ${showLength(aside.most)} off against each other at worst (${foundPlaceWords(aside.place)}): ${why}. ${cure}, or burn both in one set-up.`,
                where: aside.place.said.found!.where,
                step: aside.place.said.index,
                related: [{ message: phrase`${inlay.relief.name} goes in here.`, where: step.where }],
            });
        }
    },
};

/** How far an edge may be off before the inlay jams, and before the seam shows, mm. */
function roomIn({ gap }: InlayPlan, least: number, seam: number): { readonly jam: number; readonly seam: number } {
    return { jam: Math.max(0, gap - least), seam: Math.max(0, widestSeam - seam) };
}
