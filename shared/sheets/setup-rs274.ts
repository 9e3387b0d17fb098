import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import { motionOf, toolpaths } from '../plan/toolpaths';
import { showNumber } from '../quantity/show';
import { fileName } from './escape';
import { type Rs274Problem, rs274 } from './rs274';
import { type SetUp, type SheetFile, settingsLine } from './setup-svg';

const why: Readonly<Record<Rs274Problem, string>> = {
    'not-finite': 'a power, speed or size in it is no usable number',
    'power-over': 'it asks for more power than the laser has',
    'incomplete-hatch': 'it has more scan lines than fit one file',
    'too-long': 'it would be longer than any machine reads',
};

/** The machine file of one set-up, or why there is none. */
export function setUpRs274(plan: Plan, setUp: SetUp, memo: Memo): SheetFile | { readonly problem: string } {
    const { laser } = plan.recipe;
    const name = `setup-${setUp.number}-${fileName(setUp.blank.name)}.ngc`;
    const fullPower = laser?.power?.value;
    if (laser === undefined || fullPower === undefined)
        return { problem: `${name} is not written: the laser’s power is not known.` };
    const unsolved = setUp.lasers.find((one) => one.settings === undefined);
    if (unsolved !== undefined)
        return { problem: `${name} is not written: the settings of ${unsolved.step.name} are not known.` };
    const work = setUp.lasers.flatMap((one) => toolpaths({ ...one, settings: one.settings, laser }, memo));
    const result = rs274(
        { work, motion: motionOf(laser) },
        {
            comments: [
                `${plan.recipe.title || plan.recipe.name}, revision ${plan.recipe.revision}, set-up ${setUp.number}`,
                `blank ${setUp.blank.name}, ${showNumber(setUp.blank.size?.width ?? 0)} x ${showNumber(setUp.blank.size?.height ?? 0)} mm, for ${laser.name}`,
                ...setUp.lasers.map((one) => `${one.step.name}: ${settingsLine(one)}`),
                'check origin, focus and material before starting; never leave it running alone',
            ],
            fullPower,
            height: setUp.blank.size?.height ?? 0,
        },
    );
    if ('problem' in result) return { problem: `${name} is not written: ${why[result.problem]}.` };
    return { path: name, text: result.text, note: `for the machine: ${setUp.lasers.map((one) => one.step.name).join(', ')}` };
}
