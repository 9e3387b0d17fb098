import type { LaserPlan } from '../plan/laser-plan';
import type { Plan, StepPlan } from '../plan/plan';
import { sureWords } from '../plan/through-words';
import { isLopsided, spread } from '../quantity/interval';
import { showLength, showLengthInterval, showRatio, showTime, showVolume } from '../quantity/show';
import { workFacts } from '../sheets/step-facts';
import { openSettings, settingsPhrase } from './settings-text';
import type { Hint, StepFigures } from './step-figures';

/** What a plan adds to the text of each of its steps; steps to which it adds nothing are left out. */
export function makeStepFigures(plan: Plan): StepFigures[] {
    return plan.steps
        .map((step) => figuresOf(step, plan.recipe.make))
        .filter(({ pins, hints }) => pins.length > 0 || hints.length > 0);
}

function figuresOf(plan: StepPlan, make: number): StepFigures {
    const tooltip = workFacts(plan)
        .map(({ label, value }) => `${label}: ${value}`)
        .join('\n');
    const hint = (at: Hint['at'], label: string): Hint => ({ at, label, tooltip });
    const hints: Hint[] = [];
    if (plan.laser !== undefined) hints.push(...laserHints(plan.laser, hint));
    if (plan.fill !== undefined) hints.push(hint('head', `${showVolume(plan.fill.mix.volume)}${make > 1 ? ' a piece' : ''}`));
    const stack = plan.inlay?.stack;
    if (stack !== undefined) {
        const proud = stack.proud.likely;
        const stands = proud.value < 0 ? { value: -proud.value, low: -proud.high, high: -proud.low } : proud;
        const word = proud.value < 0 ? 'sunken' : 'proud';
        hints.push(hint('head', `${word} ${showLengthInterval(stands)}, left ${showLengthInterval(stack.left.likely)}`));
    }
    return { whole: plan.step.whole, pins: pinsOf(plan.laser), guess: plan.laser?.settings?.guess === true, hints };
}

function laserHints(laser: LaserPlan, hint: (at: Hint['at'], label: string) => Hint): Hint[] {
    const { step, settings } = laser;
    const hints: Hint[] = [];
    if (laser.machine > 0) hints.push(hint('head', showTime(laser.machine)));
    if (settings === undefined) return hints;
    const wished = step.kind === 'engrave' && (step.depth !== undefined || step.tone !== undefined);
    const at = wished ? 'wish' : 'head';
    const depth = depthHint(laser);
    if (depth !== undefined) hints.push(hint(at, depth));
    const phrase = settingsPhrase(openSettings(step, settings));
    if (phrase !== '') hints.push(hint(at, settings.guess ? `a guess: ${phrase}` : phrase));
    return hints;
}

/** How far the depth may be off; or the depth itself, where it is not the one that is written. */
function depthHint({ step, settings, through, breakthrough, tone, depth }: LaserPlan): string | undefined {
    if (through) return breakthrough && sureWords(breakthrough);
    if (step.kind !== 'engrave' || settings === undefined || depth === undefined) return undefined;
    if (tone !== undefined)
        return settings.givesTone === undefined
            ? 'a guess: no square judged by tone'
            : `${showRatio(settings.givesTone.low)} to ${showRatio(settings.givesTone.high)}${settings.throughTape === true ? ' without tape' : ''}`;
    const unit = step.depth !== undefined && 'unit' in step.depth ? step.depth.unit : 'mm';
    if (step.depth === undefined) return `${showLengthInterval(settings.gives)} deep`;
    if (!settings.reached) return `gives ${showLengthInterval(settings.gives, unit)}`;
    return isLopsided(depth)
        ? `${showLength(depth.low, unit)} to ${showLength(depth.high, unit)}`
        : `± ${showLength(spread(depth), unit)}`;
}

/** Nothing is pinned that does not do what is asked for. */
function pinsOf(laser: LaserPlan | undefined): string[] {
    const settings = laser?.settings;
    if (laser === undefined || settings === undefined || !settings.reached) return [];
    return Object.entries(openSettings(laser.step, settings)).map(([word, value]) => `${word} ${value}`);
}
