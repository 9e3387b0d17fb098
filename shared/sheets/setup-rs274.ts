import { besideWords } from '../plan/kerf-words';
import type { MeasuredLie } from '../plan/laid-piece';
import type { LaserPlan, LaserSettings } from '../plan/laser-plan';
import type { Memo } from '../plan/memo';
import { originOn, originSentence } from '../plan/origin';
import type { Plan } from '../plan/plan';
import type { SetUp } from '../plan/set-ups';
import { burningsOf, motionOf, toolpaths } from '../plan/toolpaths';
import { showLength, showNumber, showTime } from '../quantity/show';
import { type Message, phrase } from '../recipe/phrase';
import type { MachineJob } from '../toolpath/job';
import { timeOfJob } from '../toolpath/time';
import { focusLine } from './focus-line';
import { outputOption } from './output-option';
import { type Rs274Problem, rs274 } from './rs274';
import { type PowerScale, powerWords } from './rs274-lines';
import { outlineWords, passesWords, type SheetFile, setUpFile, strongWords } from './setup-svg';

const why: Readonly<Record<Rs274Problem, string>> = {
    'not-finite': 'a power, speed or size in it is no usable number',
    'power-over': 'it asks for more power than the laser has',
    'incomplete-hatch': 'it has more scan lines than fit one file',
    'too-long': 'it would be longer than any machine reads',
};

/** The machine file of one set-up, or why there is none. @param lie how the piece on the bed lies, if not as planned */
export function setUpRs274(plan: Plan, setUp: SetUp, memo: Memo, lie?: MeasuredLie): SheetFile | { readonly problem: Message } {
    const { laser } = plan.recipe;
    const name = setUpFile(setUp, 'ngc');
    const fullPower = laser?.power?.value;
    if (laser === undefined || fullPower === undefined)
        return { problem: phrase`${name} is not written: the laser’s power is not known.` };
    const unsolved = setUp.lasers.find((one) => one.settings === undefined);
    if (unsolved !== undefined)
        return { problem: phrase`${name} is not written: the settings of ${unsolved.step.name} are not known.` };
    const work = setUp.lasers.flatMap((one) => burningsOf(one, laser)).flatMap((burning) => toolpaths(burning, memo));
    const height = setUp.blank.size?.height ?? 0;
    const job: MachineJob = {
        work,
        motion: motionOf(laser),
        origin: originOn(setUp.blank.size, laser),
        focusByHand: laser.focus?.value === 'by-hand',
    };
    const time = timeOfJob(job);
    const scale = { fullPower, ...outputOption(laser) };
    const result = rs274(job, {
        comments: [
            `${plan.recipe.title || plan.recipe.name}, issue ${plan.recipe.revision}, set-up ${setUp.number}`,
            `blank ${setUp.blank.name}${setUp.side === undefined ? '' : `, its ${setUp.side} up`}, ${showNumber(setUp.blank.size?.width ?? 0)} x ${showNumber(height)} mm, for ${laser.name}`,
            ...setUp.lasers.flatMap((one) => [
                `${one.step.name}: ${exactSettings(one, scale)}`,
                ...focusLines(one),
                ...marksLines(one, scale),
            ]),
            ...(time === undefined ? [] : [`takes about ${showTime(time.total)}`]),
            ...(lie === undefined
                ? []
                : [
                      `moved and turned for the one piece that lies there: its marks are up to ${showNumber(Math.max(...lie.residuals), 2)} mm off`,
                  ]),
            'check origin, focus and material before starting; never leave it running alone',
        ],
        ...scale,
        origin: originSentence(laser),
        ...(lie === undefined ? {} : { lie }),
    });
    if ('problem' in result) return { problem: phrase`${name} is not written: ${why[result.problem]}.` };
    return { path: name, text: result.text, note: `for the machine: ${setUp.lasers.map((one) => one.step.name).join(', ')}` };
}

function focusLines({ step, focus }: LaserPlan): string[] {
    const line = focusLine(focus);
    return line === undefined ? [] : [`focus of ${step.name}: ${line}; the head must clear the face by more than that`];
}

/** The settings of a step with its power as the file has it. */
function exactSettings(laser: LaserPlan, scale: PowerScale): string {
    if (laser.settings !== undefined && laser.line !== undefined)
        return `${exactPower(laser.settings, scale, false)} along the outline${strongWords(laser.strongest, laser.depth?.value ?? 0)}`;
    const outline = outlineWords(laser, ({ power, speed }) => `${powerWords(power, scale)} at ${showNumber(speed, 3)} mm/s`);
    return laser.settings === undefined
        ? ''
        : `${exactPower(laser.settings, scale, laser.step.kind === 'engrave')}${outline}${besideWords(laser)}`;
}

function exactPower({ power, speed, pitch, passes }: LaserSettings, scale: PowerScale, area: boolean): string {
    return `${powerWords(power, scale)} at ${showNumber(speed, 3)} mm/s${area ? `, pitch ${showLength(pitch)}` : ''}, ${passesWords(passes)}`;
}

function marksLines({ step, marks }: LaserPlan, scale: PowerScale): string[] {
    return (marks ?? []).map(({ settings, tone }) => {
        const line = settings === undefined ? 'settings not known' : exactPower(settings, scale, true);
        return `marks of ${step.name}: ${line}${tone === undefined ? '' : ', only a light tone'}`;
    });
}
