import { area } from '../../geometry/measure';
import { showArea, showRatio } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { isUnread } from '../helpers/is-unread';
import { sayMirror } from '../helpers/say-mirror';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'not-mirrored',
    title: 'The veneer half is not mirrored',
    severities: ['error', 'warning'],
    quickFix: 'always',
    firm: 'sometimes',
    condition: 'An inlay’s veneer half is cut as the pocket is, without `mirror`.',
    error: 'Turned over, the veneer half lies on the board. Where the art is its own mirror image, it is a warning.',
    why: 'The veneer half is turned over to go in, so its outline must be the mirror image of the pocket. Art that looks the same from both sides but is not hides the mistake until the press.',
    mend: 'Write `mirror` in the step that cuts the veneer half. If the art really is symmetric, `allow not-mirrored because "…"` says so; that works only as long as the numbers agree.',
    source: commonPractice,
};

export const notMirrored: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (
                inlay === undefined ||
                inlay.relief.kind === 'cut' ||
                inlay.relief.mirror.length % 2 === 1 ||
                inlay.relief.mirror.length > 1
            )
                continue;
            if (inlay.pocket.mirror.length % 2 === 1) continue; // the other half is: the two still fit
            if (isUnread(plan.recipe, inlay.relief) || isUnread(plan.recipe, inlay.pocket)) continue;
            if (!inlay.reliefLaser.placed.some((placed) => placed.inverse)) continue; // not-inverse comes first
            const stands = area(inlay.standing);
            const clash = area(inlay.collides);
            const symmetric = inlay.symmetry.mirror;
            const { mirrorResidual } = inlay.symmetry;
            const within = mirrorResidual < 0.0005 ? '' : phrase` to within ${showRatio(mirrorResidual)}`;
            const message = symmetric
                ? phrase`The veneer half ${inlay.relief.name} is not mirrored. The art is symmetric${within}, so it fits this time; say so, or mirror it.`
                : phrase`The veneer half ${inlay.relief.name} is not mirrored: turned over, ${showArea(clash)} of its ${showArea(stands)} land on the board instead of in the pocket.`;
            yield finding(page, {
                severity: symmetric ? 'warning' : 'error',
                message,
                where: inlay.relief.where,
                step: inlay.relief.index,
                firm: !symmetric,
                related: [{ message: phrase`It is let into ${inlay.pocket.name} here.`, where: step.where }],
                fixes: [
                    {
                        title: phrase`Mirror ${inlay.relief.name}`,
                        preferred: true,
                        changes: [sayMirror(inlay.relief)],
                    },
                ],
            });
        }
    },
};
