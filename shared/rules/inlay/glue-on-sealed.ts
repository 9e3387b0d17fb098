import { bounds } from '../../geometry/measure';
import type { Bounds } from '../../geometry/region';
import { layersAbove } from '../../piece/column';
import type { InlayPlan, Plan, StepPlan } from '../../plan/plan';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay, Seal } from '../../recipe/step';
import { faceBefore } from '../helpers/face-at';
import { type Refusal, refusalOf } from '../helpers/laid-over';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'glue-on-sealed',
    title: 'Glue on sealed wood',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A pocket is sealed before an inlay is glued into it, with a glue that never holds on that sealer by the stock, as wood glue on shellac (`over shellac never`).',
    why: 'Wood glue holds by soaking into the wood. On a sealed floor it dries to a skin, and the inlay lifts.',
    mend: 'Engrave the pocket once the sealer is dry, so that its floor is bare wood; or glue first and seal afterwards, mask the pocket while sealing, or use an epoxy glue, which cures at its own pace.',
    source: commonPractice,
};

export const glueOnSealed: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, face, inlay } of plan.steps) {
            if (step.kind !== 'inlay' || inlay === undefined) continue;
            const laid = faceBefore(plan, step.index, blank)
                ?.cells.filter(({ column }) => column.digs.some((dig) => dig.step === inlay.pocket.index))
                .flatMap(({ column }) => layersAbove(column).flatMap((layer) => plan.steps[layer.step ?? -1]?.step ?? []));
            const refused = laid?.flatMap((below) => (below.kind === 'seal' ? (refusalOn(plan, step, below) ?? []) : [])) ?? [];
            if (refused.length === 0) continue;
            const seals = plan.steps.filter(
                (other) =>
                    other.step.kind === 'seal' &&
                    other.face === face &&
                    other.step.index > inlay.pocket.index &&
                    other.step.index < step.index,
            );
            yield finding(page, {
                severity: 'warning',
                message: phrase`${inlay.pocket.name} is sealed before ${step.glue?.name} goes into it: the glue does not soak in, and does not hold.`,
                where: step.where,
                step: step.index,
                // One that somebody has read is enough.
                rests: [(refused.find(({ where }) => where?.grade !== 'not checked') ?? refused[0])?.where],
                related: seals.slice(0, 1).map((seal) => ({ message: phrase`It is sealed here.`, where: seal.step.where })),
                fixes: engraveLater(plan, inlay, step, seals[seals.length - 1]),
            });
        }
    },
};

/** Why the glue does not hold on a sealer; one of no known name is taken for one that closes the wood. */
function refusalOn(plan: Plan, glued: Inlay, sealed: Seal): Partial<Refusal> | undefined {
    if (sealed.sealer === undefined) return glued.glue?.kinds.includes('wood-glue') === true ? {} : undefined;
    return refusalOf(plan, glued, sealed);
}

/** Engraves the pocket through the sealer, if nothing that is done to the board until then comes too early or too late by it. */
function engraveLater({ steps }: Plan, { pocket, pocketLaser }: InlayPlan, inlay: Inlay, seal: StepPlan | undefined): Fix[] {
    if (seal === undefined) return [];
    const next = steps.find(
        ({ step, blank }) =>
            step.index > seal.step.index && blank === pocketLaser.blank && !/^(wait|check|seal)$/.test(step.kind),
    );
    const before = next?.step ?? inlay;
    const box = bounds(pocketLaser.region);
    const passed = steps.slice(pocket.index + 1, before.index);
    const indifferent = passed.every(({ step, blank, laser }) => {
        if (step.kind === 'check') return step.step.value !== pocket.name;
        if (blank !== pocketLaser.blank || step.kind === 'seal' || step.kind === 'wait') return true;
        return step.kind === 'engrave' && laser !== undefined && apart(bounds(laser.region), box);
    });
    if (!indifferent) return [];
    const change: Change = { do: 'move', statement: pocket.whole, before: before.whole };
    return [{ title: phrase`Engrave ${pocket.name} after sealing`, preferred: true, changes: [change] }];
}

function apart(a: Bounds | undefined, b: Bounds | undefined): boolean {
    if (a === undefined || b === undefined) return true;
    return a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY;
}
