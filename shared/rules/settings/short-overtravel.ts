import { outputOf } from '../../burn/output';
import { runUpSpeed } from '../../burn/run-up-speed';
import type { LaserPlan } from '../../plan/laser-plan';
import { motionOf } from '../../plan/toolpaths';
import { showLength, showNumber, showSpeed } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import type { Laser } from '../../recipe/stock';
import { runUp } from '../../toolpath/motion';
import { settingsHeld } from '../helpers/settings-held';
import type { Page } from '../page';
import { finding, type Rule, type Said } from '../rule';

const page: Page = {
    id: 'short-overtravel',
    title: 'Too little room to run up',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'An area is scanned faster than the head can get over the overtravel that the laser’s block writes, or a solved speed is held down by it.',
    why: 'The head is still speeding up where the art begins, and brakes before it ends. There it burns longer: the edges of every line come out deeper and darker than the middle. In a solved step the speed is kept so low that this does not happen, which takes longer.',
    mend: 'Write more overtravel where the field has the room, leave it out (the machine file then takes what the speed needs), or scan slower. A machine that lowers its power with the speed says so in the laser’s block (`output with-speed`).',
    source: 'Uniform acceleration: from rest a speed v is reached over v²/(2·a).',
};

export const shortOvertravel: Rule = {
    page,
    *examine({ recipe, steps }) {
        const machine = recipe.laser;
        // Where the power goes down with the speed, a slow beginning of a line gets no more than its middle.
        if (machine?.overtravel === undefined || outputOf(machine).followsSpeed) return;
        for (const { step, laser } of steps) {
            if (step.kind !== 'engrave' || laser?.settings === undefined) continue;
            const { speed } = laser.settings;
            const said = step.speed === undefined ? heldDown(step, laser, machine) : tooFast(step, speed, machine);
            if (said === undefined) continue;
            const related = [{ message: phrase`The overtravel is written here.`, where: machine.overtravel.where }];
            yield finding(page, { ...said, step: step.index, related });
        }
    },
};

function tooFast(step: Engrave, speed: number, machine: Laser): Said | undefined {
    const { acceleration } = motionOf(machine);
    const over = machine.overtravel!.value;
    const needed = runUp(speed, acceleration);
    if (!(needed > over * (1 + 1e-6))) return undefined;
    const { unit, where } = step.speed!;
    const reached = runUpSpeed(machine);
    const slower: Fix[] =
        reached === undefined || settingsHeld(step) // slower alone would dig deeper
            ? []
            : [
                  {
                      title: phrase`Scan at ${showNumber(reached, 0)} mm/s`,
                      changes: [{ do: 'replace', where, text: `${reached} mm/s` }],
                  },
              ];
    const start = Math.sqrt(2 * acceleration * over);
    const slow =
        start > 0
            ? phrase`only ${showSpeed(start, unit)} there, so its lines begin with ${showNumber(speed / start, 1)} times the dose`
            : phrase`at rest there, so its lines begin scorched`;
    return {
        severity: 'warning',
        message: phrase`${step.name} at ${showSpeed(speed, unit)} needs ${showLength(needed)} to run up, and the overtravel is ${showLength(over)}: the head is ${slow}.`,
        where,
        fixes: [...moreOvertravel(machine, needed), ...slower],
    };
}

/** A solved speed that stands at what the overtravel allows, where the machine could go faster. */
function heldDown(step: Engrave, { settings }: LaserPlan, machine: Laser): Said | undefined {
    const { topSpeed, acceleration } = motionOf(machine);
    if (settings?.limits.includes('run-up') !== true) return undefined;
    return {
        severity: 'hint',
        message: phrase`${step.name} is held to ${showNumber(settings.speed, 0)} mm/s, since ${machine.name} has only ${showLength(machine.overtravel!.value)} of overtravel to run up; ${showNumber(topSpeed, 0)} mm/s would want ${showLength(runUp(topSpeed, acceleration))}.`,
        where: step.depth?.where ?? step.tone?.where ?? step.where,
        fixes: moreOvertravel(machine, runUp(topSpeed, acceleration)),
    };
}

/** Rounded up, so that it is enough. */
function moreOvertravel(machine: Laser, needed: number): Fix[] {
    const text = phrase`${Math.ceil(needed * 10 - 1e-9) / 10} mm`;
    return [
        { title: phrase`Give it ${text} of overtravel`, changes: [{ do: 'replace', where: machine.overtravel!.where, text }] },
    ];
}
