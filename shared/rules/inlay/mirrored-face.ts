import { area } from '../../geometry/measure';
import { mirrorMatch } from '../../geometry/symmetry';
import { keptFor } from '../../plan/kept';
import type { LaserPlan } from '../../plan/laser-plan';
import type { InlayPlan, Plan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import type { Finding, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Cut, Engrave, Step } from '../../recipe/step';
import { sayMirror } from '../helpers/say-mirror';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'mirrored-face',
    title: 'The mirror image stays in sight',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'An engraving of art that is not its own mirror image is mirrored, and its blank is not turned over; a cut is mirrored and what is engraved on its blank is not; or an inlay’s pocket is mirrored in place of its veneer half.',
    why: 'The face stays up, so the mirror image is what is seen. Lettering then reads backwards, and a maker who knows the word does not notice.',
    mend: 'Take `mirror` out; of an inlay, mirror the veneer half and not the pocket. If the mirror image is wanted, `allow mirrored-face because "…"`.',
    source: `${commonPractice} Letters that have been turned into paths are shapes like any other: what is compared is the art with its own mirror image, to a tenth of a millimetre.`,
};

export const mirroredFace: Rule = {
    page,
    *examine(plan) {
        const reliefs = new Set(plan.recipe.steps.flatMap((step) => (step.kind === 'inlay' ? [step.relief.value] : [])));
        const turned = new Set(plan.steps.flatMap(({ inlay }) => inlay?.reliefLaser.blank ?? []));
        const pockets = new Set<number>();
        for (const { inlay, step } of plan.steps) {
            if (inlay === undefined || pockets.has(inlay.pocket.index)) continue;
            pockets.add(inlay.pocket.index);
            yield* ofPocket(plan, inlay, step);
        }
        for (const { step, laser } of plan.steps) {
            if ((step.kind !== 'engrave' && step.kind !== 'cut') || laser?.mirrorAxis === undefined) continue;
            if (step.kind === 'cut' && !isBesidesUnmirrored(plan, laser)) continue; // what is cut out can be turned over
            if (reliefs.has(step.name) || pockets.has(step.index) || turned.has(laser.blank)) continue;
            // Engraved through: a veneer half whose inlay has not been written yet.
            if ((step.kind === 'engrave' && laser.through) || looksTheSame(laser)) continue;
            const what =
                step.kind === 'cut'
                    ? phrase`${step.name} is mirrored, but what is engraved on ${laser.blank} is not: the edge is the mirror image`
                    : phrase`${step.name} is mirrored, but ${laser.blank} is not turned over for any inlay: what is seen is the mirror image`;
            yield said(plan, laser, step, what, {
                title: phrase`Do not mirror`,
                preferred: true,
                changes: [{ do: 'remove', where: step.mirror[0]! }],
            });
        }
    },
};

/** Of an inlay whose pocket is mirrored in place of its veneer half. */
function* ofPocket(plan: Plan, inlay: InlayPlan, step: Step): Iterable<Finding> {
    const { pocket, relief, pocketLaser } = inlay;
    // Mirrored both, they do not even fit: mirrored-twice.
    const isPart = relief.kind === 'cut';
    if (!odd(pocket) || (odd(relief) && !isPart) || looksTheSame(pocketLaser)) return;
    if (isPart) {
        yield said(plan, pocketLaser, pocket, `${pocket.name} is mirrored: the inlay shows the mirror image`, {
            title: phrase`Do not mirror ${odd(relief) ? phrase`${pocket.name} and ${relief.name}` : pocket.name}`,
            preferred: true,
            changes: [pocket, relief].flatMap(({ mirror }) => mirror.map((where) => ({ do: 'remove', where }) as const)),
        });
        return;
    }
    yield {
        ...said(
            plan,
            pocketLaser,
            pocket,
            `${pocket.name} is mirrored and ${relief.name} is not: the halves fit, but the inlay shows the mirror image`,
            {
                title: phrase`Mirror ${relief.name} instead`,
                preferred: true,
                changes: [{ do: 'remove', where: pocket.mirror[0]! }, sayMirror(relief)],
            },
        ),
        related: [
            { message: phrase`The veneer half is burnt here.`, where: relief.where },
            { message: phrase`They meet here.`, where: step.where },
        ],
    };
}

function said(plan: Plan, laser: LaserPlan, step: Engrave | Cut, what: string, fix: Fix): Finding {
    const differs = differenceOf(laser);
    const names = [...new Set(laser.placed.flatMap(({ artName }) => artName ?? []))];
    const texts = names.filter((name) => {
        const state = plan.arts.get(name);
        return state?.kind === 'art' && state.art.problems.some(({ kind }) => kind === 'text');
    });
    const how = differs === undefined ? '' : phrase`, and ${showArea(differs)} of it lie elsewhere than in the art`;
    const text =
        step.kind === 'cut'
            ? phrase`It does not follow what is engraved`
            : texts.length === 0
              ? phrase`Lettering would read backwards`
              : phrase`The text of ${texts.join(', ')} would read backwards once it has been turned into paths`;
    return finding(page, {
        severity: 'warning',
        message: phrase`${what}${how}. ${text}.`,
        where: step.mirror[0]!,
        step: step.index,
        fixes: [fix],
    });
}

/** Whether something is engraved the right way round on the same blank. */
function isBesidesUnmirrored({ steps }: Plan, { blank }: LaserPlan): boolean {
    return steps.some(({ laser }) => laser?.blank === blank && laser.step.kind === 'engrave' && laser.mirrorAxis === undefined);
}

function odd(step: Engrave | Cut): boolean {
    return step.mirror.length % 2 === 1;
}

/** Whether mirroring changed nothing. Of a picture in dots only the outline is known here. */
function looksTheSame(laser: LaserPlan): boolean {
    return laser.pictures === undefined && matchOf(laser).symmetric;
}

/** How much of what is burnt differs from the art as drawn, mm2; undefined for pictures. */
function differenceOf(laser: LaserPlan): number | undefined {
    if (laser.pictures !== undefined) return undefined;
    // The residual counts what is in one of the two and not in the other, from both sides.
    return Math.min(matchOf(laser).residual / 2, area(laser.region));
}

function matchOf({ region, mirrorAxis = 0 }: LaserPlan) {
    return keptFor(region, `mirror ${mirrorAxis}`, () => mirrorMatch(region, mirrorAxis));
}
