import type { Plan, StepPlan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { elapsed } from '../helpers/elapsed';
import { isMaskedAt } from '../helpers/face-at';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const day = 86400;
/** Ordinary masking tape is made for hours to a few days, painters’ tape mostly for two weeks; s. Seen in several sellers' guides. */
const ordinary = 3 * day;
const painters = 14 * day;

const page: Page = {
    id: 'tape-stays-long',
    title: 'Tape that stays on for long',
    severities: ['warning', 'hint'],
    quickFix: 'always',
    condition:
        'Masking tape comes off later than three days after it was laid, or than its masking says (`stays`), and something is laid on the face after that without a sanding or a `do` step that wipes or cleans it. From two weeks on, or by what the masking says, it is a warning.',
    why: 'The adhesive goes on creeping into the pores, and heat and sun make it faster. The paper then comes off alone; what stays behind gathers dust, and finish and glue crawl away from it.',
    mend: 'Peel within the days that stand on the roll. What has stayed on for longer: warm it and peel it flat, wipe the gum off with white spirit, or sand the face.',
    source: 'Sellers’ and painters’ guides (seen): ordinary tape hours to a few days, painters’ tape mostly 14 days, some 24 h and some 60. The roll’s own figure comes first. What the beam’s heat makes of it was not found.',
};

const cleans = /\b(?:wip|clean|scrap|spirit|solvent|gum|residue|wash)/i;
const statement = 'do "wipe the gum of the tape off with white spirit" for 5 min';

export const tapeStaysLong: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank } of plan.steps) {
            const off = step.kind === 'mask' ? takenOff(plan, step, blank) : undefined;
            if (off === undefined) continue;
            const stayed = elapsed(plan, step.index, off.index);
            const film = step.kind === 'mask' ? step.film : undefined;
            const stays = film?.stays === undefined ? undefined : film.stays.value + film.stays.tolerance;
            const laid = stayed > (stays ?? ordinary) ? laidOnGum(plan, off, blank) : undefined;
            if (laid === undefined) continue;
            const made =
                stays === undefined
                    ? phrase`ordinary tape is made for ${showTime(ordinary)} at most, painters’ tape for ${showTime(painters)}`
                    : phrase`${film!.name} is made for ${showTime(stays)}`;
            yield finding(page, {
                severity: stayed > (stays ?? painters) ? 'warning' : 'hint',
                message: phrase`The tape on ${blank} stays for ${showTime(stayed)}: ${made}. Wipe off what it leaves before anything goes on.`,
                where: step.where,
                step: step.index,
                related: [{ message: phrase`It is peeled here.`, where: off.where }],
                fixes: [
                    {
                        title: phrase`Add a step that wipes off its gum`,
                        preferred: true,
                        changes: [statementBefore(laid, statement)],
                    },
                ],
            });
        }
    },
};

/** The step that takes the tape of a masking off the face. */
function takenOff(plan: Plan, mask: Step, blank: string | undefined): Step | undefined {
    return plan.steps.find(
        ({ step, blank: of }) =>
            step.index > mask.index && (of === blank || step.kind === 'peel') && !isMaskedAt(plan, step.index + 1, blank),
    )?.step;
}

/** What is laid on the face before anything has cleaned it. */
function laidOnGum({ steps }: Plan, off: Step, blank: string | undefined): Step | undefined {
    const next = steps.find(({ step, ...more }) => step.index > off.index && touches({ step, ...more }, blank));
    return next === undefined || next.step.kind === 'sand' || next.step.kind === 'do' ? undefined : next.step;
}

function touches({ step, blank }: StepPlan, name: string | undefined): boolean {
    if (step.kind === 'do') return cleans.test(step.text);
    return blank === name && /^(?:sand|seal|finish|fill|inlay|mask)$/.test(step.kind);
}
