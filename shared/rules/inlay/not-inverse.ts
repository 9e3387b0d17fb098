import { bounds } from '../../geometry/measure';
import type { Where } from '../../quantity/where';
import { phrase } from '../../recipe/phrase';
import type { ArtPlacement } from '../../recipe/step';
import { isUnread } from '../helpers/is-unread';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'not-inverse',
    title: 'The veneer half is not inverse',
    severities: ['error'],
    quickFix: 'sometimes',
    firm: 'always',
    condition: 'An inlay’s veneer half burns the art itself instead of everything around it.',
    error: 'Always: the shape that is needed is what is burnt away.',
    why: 'What the laser burns is gone. The veneer half has to keep the shape and lose the rest, down to the foil.',
    mend: 'Write `inverse within` and a boundary larger than the shape, such as `inverse within grown 6 mm`. The boundary’s own form does not matter: all of that veneer is burnt away.',
    source: commonPractice,
};

export const notInverse: Rule = {
    page,
    *examine(plan) {
        for (const { inlay } of plan.steps) {
            if (inlay === undefined || inlay.relief.kind === 'cut') continue;
            const { relief, reliefLaser } = inlay;
            if (isUnread(plan.recipe, relief)) continue;
            for (const placed of reliefLaser.placed) {
                const placement = relief.placements[placed.index];
                if (placed.inverse || placement === undefined) continue;
                yield finding(page, {
                    severity: 'error',
                    firm: true,
                    message: phrase`The veneer half ${relief.name} burns the shape itself away; it must burn everything around it and leave the shape standing.`,
                    where: placement.kind === 'art' ? placement.art.where : placement.where,
                    step: relief.index,
                    fixes:
                        placement.kind !== 'art' || bounds(placed.figure) === undefined
                            ? []
                            : [
                                  {
                                      title: phrase`Turn it inside out within its outline grown by 6 mm`,
                                      preferred: true,
                                      changes: [{ do: 'replace', where: behind(placement), text: ' inverse within grown 6 mm' }],
                                  },
                              ],
                });
            }
        }
    },
};

/** The empty place right behind the art's name and picks. */
function behind(placement: ArtPlacement): Where {
    const last = (placement.leaves?.at(-1) ?? placement.picks.at(-1))?.where ?? placement.art.where;
    return { uri: last.uri, offset: last.offset + last.length, length: 0 };
}
