import type { LaserSettings } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { showLength, showLengthInterval } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { atItsWord, type Figures } from '../figures';
import { askWhatIsGiven, solveAnew } from '../helpers/ask-depth';
import { settingsHeld } from '../helpers/settings-held';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'depth-unreachable',
    title: 'Depth out of reach',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition: 'No settings within the machine’s limits, and with what is written, give the depth that is asked for.',
    why: 'The pocket comes out at another depth than everything after it counts on.',
    mend: 'Take out what is written of power, speed, pitch or passes, so that it can be worked out; ask for another depth; or use a stronger laser.',
    source: 'The depth law, fitted to the coupon: d = (F − F₀)/q for each pass, with F = P/(v · pitch).',
};

/** What is written holds it back; without, there may be settings that reach it. */
function solvedAnew(step: Engrave, held: boolean, figures: Figures): Fix[] {
    return held ? solveAnew(page.id, step, figures) : [];
}

function shallower(plan: Plan, step: Engrave, { gives, guess }: LaserSettings, figures: Figures): Fix[] {
    return guess || gives.value < 0.02 ? [] : askWhatIsGiven(page.id, step, gives.value, plan, figures);
}

function nameWritten(written: readonly string[]): string {
    if (written.length === 0) return '';
    const are = written.length === 1 && written[0] !== 'passes' ? 'is' : 'are';
    return phrase` with the ${written.join(' and ')} that ${are} written`;
}

export const depthUnreachable: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, laser } of plan.steps) {
            const settings = laser?.settings;
            if (step.kind !== 'engrave' || step.depth === undefined || settings === undefined || settings.reached) continue;
            if (settingsHeld(step)) continue; // settings-miss-depth says it
            const through = 'through' in step.depth;
            const wanted = through ? laser?.depth?.value : 'value' in step.depth ? step.depth.value : undefined;
            // More than through is still through.
            if (wanted === undefined || (through && settings.gives.value >= wanted)) continue;
            const written = (['power', 'speed', 'pitch', 'passes'] as const).filter((word) => step[word] !== undefined);
            yield finding(page, {
                severity: settings.guess ? 'info' : 'warning',
                message: phrase`${step.name} cannot be ${through ? phrase`burnt through ${showLength(wanted)}` : phrase`${showLength(wanted)} deep`}${nameWritten(written)}: it comes to ${showLengthInterval(settings.gives)}${settings.guess ? phrase` (a guess: no coupon)` : ''}.`,
                where: step.depth.where,
                step: step.index,
                fixes: [
                    ...solvedAnew(step, written.length > 0, figures),
                    ...(through ? [] : shallower(plan, step, settings, figures)),
                ],
            });
        }
    },
};
