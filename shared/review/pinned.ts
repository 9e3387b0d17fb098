import type { LaserSettings } from '../plan/laser-plan';
import type { Memo } from '../plan/memo';
import type { Plan, StepPlan } from '../plan/plan';
import { solveSettings } from '../plan/solve-settings';
import { showLength, showNumber, showQuantity, showRatio, showSpeed } from '../quantity/show';
import type { Cut, Engrave } from '../recipe/step';

/** A setting that is written in a step, beside what would be solved for it now if none of the step's were. */
export interface PinnedNote {
    /** Index of the step, and its title. */
    readonly step: number;
    readonly title: string;
    readonly setting: 'power' | 'speed' | 'pitch' | 'passes';
    readonly written: string;
    readonly solved: string;
}

/** Every pinned setting of the steps that ask for a depth or a tone; what asks for nothing cannot be solved. */
export function pinnedSettings(plan: Plan, memo: Memo): PinnedNote[] {
    return plan.steps.flatMap((step) => pinnedIn(step, plan, memo));
}

function pinnedIn({ step, title }: StepPlan, plan: Plan, memo: Memo): PinnedNote[] {
    if (step.kind !== 'engrave' && step.kind !== 'cut') return [];
    if (step.power === undefined && step.speed === undefined && step.passes === undefined && pitchOf(step) === undefined)
        return [];
    const blank = plan.blanks.find(({ name }) => name === step.blank.value);
    if (blank === undefined) return [];
    const { settings } = solveSettings(unpinned(step), blank, plan.recipe, memo);
    return settings === undefined ? [] : compareSettings(step, settings).map((pair) => ({ step: step.index, title, ...pair }));
}

function unpinned<S extends Engrave | Cut>({ power: _power, speed: _speed, passes: _passes, ...step }: S): S {
    const { pitch: _pitch, ...free } = step as Omit<Engrave, 'power' | 'speed' | 'passes'>;
    return free as unknown as S;
}

type Pair = Pick<PinnedNote, 'setting' | 'written' | 'solved'>;

function compareSettings(step: Engrave | Cut, settings: LaserSettings): Pair[] {
    const { power, speed, passes } = step;
    const pitch = pitchOf(step);
    const pairs: Pair[] = [];
    if (power !== undefined) {
        const asRatio = power.dimension === 'ratio' && Number.isFinite(settings.powerRatio);
        const solved = asRatio ? showRatio(settings.powerRatio) : `${showNumber(settings.power, 1)} W`;
        pairs.push({ setting: 'power', written: showQuantity(power), solved });
    }
    if (speed !== undefined) {
        pairs.push({ setting: 'speed', written: showQuantity(speed), solved: showSpeed(settings.speed, speed.unit) });
    }
    if (pitch !== undefined) {
        pairs.push({ setting: 'pitch', written: showQuantity(pitch), solved: showLength(settings.pitch, pitch.unit) });
    }
    if (passes !== undefined) pairs.push({ setting: 'passes', written: String(passes.value), solved: String(settings.passes) });
    return pairs;
}

function pitchOf(step: Engrave | Cut): Engrave['pitch'] {
    return step.kind === 'engrave' ? step.pitch : undefined;
}
