import type { Plan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Finish, Mask, Seal } from '../../recipe/step';
import type { Over } from '../../recipe/stock';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceBefore } from '../helpers/face-at';
import { isPrepared, saidOfLaying } from '../helpers/laid-over';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'tape-does-not-stick',
    title: 'Tape on wax or oil',
    severities: ['warning', 'hint'],
    quickFix: 'always',
    condition:
        'A face is masked on a coat on which its tape does not stick: wax or mineral oil, or what the stock says of the masking (`over drying-oil after 14 d`). Sanding or wiping with a solvent between them counts.',
    why: 'The tape lifts along the lines that are burnt through it. Soot, sealer and resin creep under it, and it comes off in the draught of the air assist.',
    mend: 'Mask the bare wood and put wax or oil on last, or wipe the face with white spirit before the tape goes on.',
    source: commonPractice,
};

export const tapeDoesNotStick: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank } of plan.steps) {
            const under = step.kind === 'mask' ? coatUnder(plan, step, blank) : undefined;
            const coat = laidBy(under);
            if (step.kind !== 'mask' || under === undefined || coat === undefined) continue;
            const said = saidOfTape(step, coat.kinds);
            if (said === undefined || isPrepared(plan, 'wiped', step, under.index)) continue;
            const gone = elapsed(plan, under.index, step.index);
            if (said.after !== undefined && longEnough(gone, said.after.value - said.after.tolerance)) continue;
            const tape = step.film?.name ?? 'tape';
            yield finding(page, {
                severity: 'warning',
                message:
                    said.after === undefined
                        ? phrase`${tape} does not stick on ${coat.name}: mask before ${coat.name} goes on, or wipe it off with white spirit.`
                        : phrase`${tape} sticks on ${coat.name} only once that has had ${showTime(said.after.value)}; here it has had ${showTime(gone)}. Mask before it goes on, or wait.`,
                where: step.where,
                step: step.index,
                rests: [said.where],
                related: [{ message: phrase`${coat.name} goes on here.`, where: under.where }],
                fixes: [
                    {
                        title: phrase`Add a step that wipes it off`,
                        preferred: true,
                        changes: [
                            statementBefore(
                                step,
                                `do "wipe ${coat.name} off with white spirit until the rag stays clean" for 10 min`,
                            ),
                        ],
                    },
                ],
            });
        }
    },
};

/** What is said of a tape on a coat; of ordinary tape, that it sticks neither on wax nor on oil that never dries. */
function saidOfTape({ film }: Mask, kinds: readonly string[]): Partial<Pick<Over, 'after' | 'where'>> | undefined {
    if (film !== undefined) return saidOfLaying(film, { kinds });
    return kinds.includes('wax') || kinds.includes('mineral-oil') ? {} : undefined;
}

function coatUnder(plan: Plan, mask: Mask, blank: string | undefined): Seal | Finish | undefined {
    const [top] = faceBefore(plan, mask.index, blank)?.bare.layers ?? [];
    const step = top?.kind === 'coat' && top.step !== undefined ? plan.steps[top.step]?.step : undefined;
    return step?.kind === 'seal' || step?.kind === 'finish' ? step : undefined;
}
