import { leastPowerOf, settingFor } from '../../burn/power-curve';
import type { Plan, StepPlan } from '../../plan/plan';
import { showNumber, showSpeed } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'beyond-machine',
    title: 'More than the machine can do',
    severities: ['error', 'warning'],
    quickFix: 'always',
    condition:
        'A written power is above what the laser has, or below what it can hold; or a written speed is above its top speed.',
    error: 'The machine has no such power or speed, so the figures of the step cannot be met. A power that is too low to be held is a warning.',
    why: 'The machine does what it can instead, and the depth is another than the one worked out. Below its least power a tube flickers or does not fire at all.',
    mend: 'Stay within the machine’s figures, or leave power and speed out and let them be worked out.',
    source: 'Plain comparison with the figures in the laser’s block.',
};

export const beyondMachine: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const found = [power(plan, stepPlan), speed(plan, stepPlan)];
            for (const each of found) if (each !== undefined) yield each;
        }
    },
};

function power(plan: Plan, { step, laser }: StepPlan): Finding | undefined {
    const machine = plan.recipe.laser;
    if ((step.kind !== 'engrave' && step.kind !== 'cut') || step.power === undefined || machine?.power === undefined)
        return undefined;
    const limits = laser?.settings?.limits ?? [];
    const over = limits.includes('power-over');
    if (!over && !limits.includes('power-under')) return undefined;
    const limit = over ? machine.power : machine.leastPower;
    const watts = over ? machine.power.value : leastPowerOf(machine);
    if (limit === undefined || watts === undefined || laser?.settings === undefined) return undefined;
    const text =
        step.power.dimension === 'ratio'
            ? `${showNumber(over ? 100 : Math.ceil((settingFor(machine, watts) ?? 0) * 100 - 1e-9), 0)} %`
            : `${showNumber(watts, 1)} W`;
    return finding(page, {
        severity: over ? 'error' : 'warning',
        message: over
            ? phrase`${showNumber(laser.settings.power, 1)} W is more than the ${showNumber(watts, 1)} W of ${machine.name}.`
            : phrase`${showNumber(laser.settings.power, 1)} W is less than ${machine.name} can hold (${showNumber(watts, 1)} W).`,
        where: step.power.where,
        step: step.index,
        related: [{ message: phrase`The machine’s figure is written here.`, where: limit.where }],
        fixes: [{ title: phrase`Set ${text}`, changes: [{ do: 'replace', where: step.power.where, text }] }],
    });
}

function speed(plan: Plan, { step, laser }: StepPlan): Finding | undefined {
    const machine = plan.recipe.laser;
    if ((step.kind !== 'engrave' && step.kind !== 'cut') || step.speed === undefined || machine?.topSpeed === undefined)
        return undefined;
    if (laser?.settings?.limits.includes('speed-over') !== true) return undefined;
    const text = showSpeed(machine.topSpeed.value, step.speed.unit);
    return finding(page, {
        severity: 'error',
        message: phrase`${showSpeed(step.speed.value, step.speed.unit)} is faster than ${machine.name} moves (${text}).`,
        where: step.speed.where,
        step: step.index,
        related: [{ message: phrase`The machine’s top speed is written here.`, where: machine.topSpeed.where }],
        fixes: [{ title: phrase`Set ${text}`, changes: [{ do: 'replace', where: step.speed.where, text }] }],
    });
}
