import { type MachinePoint, type MeasuredLie, measuredLie, plannedMarks } from '../plan/laid-piece';
import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import { type SetUp, setUpPlace, setUps } from '../plan/set-ups';
import { showLength, showNumber } from '../quantity/show';
import { type Message, phrase } from '../recipe/phrase';
import type { Sheets } from './build-sheets';
import { pointWords } from './reach-line';
import { setUpRs274 } from './setup-rs274';
import { setUpSvg } from './setup-svg';

/** Where the marks of one set-up were found on the machine. */
export interface LaidWish {
    readonly setUp: number;
    /** In the order of the job sheet; null where a mark was not measured. */
    readonly measured: readonly (MachinePoint | null)[];
    /** Also where they fit the plan worse than a blank could. */
    readonly anyway: boolean;
}

/** Beyond these what was measured is no blank that was laid a little aside, but a slip: mm, a share, rad. @commonPractice */
const mostResidual = 1;
const mostScale = 0.01;
const mostTurn = Math.PI / 18;

/** The files of one set-up, moved and turned for the piece that lies there, with a record of it; or why they are not written. */
export function laidSheets(plan: Plan, { setUp: number, measured, anyway }: LaidWish, memo: Memo): Sheets {
    const all = setUps(plan);
    const setUp = all.find((one) => one.number === number);
    if (setUp === undefined) return refused(phrase`There is no set-up ${number}: the recipe has ${all.length}.`);
    const planned = plannedMarks(plan, setUp);
    if (planned.length === 0)
        return refused(
            phrase`Nothing in the recipe says which marks set-up ${number} is found by: write \`found by marks of\` and the step that burns them in a \`do\` or \`flip\` before it.`,
        );
    if (measured.length !== planned.length)
        return refused(
            phrase`${setUp.place!.mark!.step.name} has ${planned.length} marks, and ${measured.length} were given. In order they are planned at ${planned.map(pointWords).join(', ')}; write - for one that was not measured.`,
        );
    const lie = measuredLie(
        planned.map((each, index) => ({ planned: each, ...(measured[index] ? { measured: measured[index] } : {}) })),
    );
    if (lie === undefined) return refused(phrase`Two marks have to be measured that lie more than a millimetre apart.`);
    const wrong = slipIn(lie);
    if (wrong !== undefined && !anyway)
        return refused(
            phrase`${wrong} Nothing was written: measure again, in the order of the job sheet, or say it twice with --anyway.`,
        );
    const machine = setUpRs274(plan, setUp, memo, lie);
    const problems = 'problem' in machine ? [machine.problem] : [];
    const files = [setUpSvg(plan, setUp, memo, lie), ...('problem' in machine ? [] : [machine])];
    const record = {
        schema: 1,
        recipe: plan.recipe.name,
        issue: plan.recipe.revision,
        setUp: number,
        blank: setUp.blank.name,
        marks: planned.map((each, index) => ({ planned: each, measured: measured[index] ?? null })),
        turn: lie.turn,
        move: { x: lie.x, y: lie.y },
        scale: lie.scale,
        residuals: lie.residuals,
    };
    const note = lieWords(setUp, lie);
    return { files: [...files, { path: 'laid.json', text: `${JSON.stringify(record, null, 2)}\n`, note }], problems };
}

function refused(problem: Message): Sheets {
    return { files: [], problems: [problem] };
}

function slipIn({ residuals, scale, turn }: MeasuredLie): Message | undefined {
    const worst = Math.max(...residuals);
    if (worst > mostResidual)
        return phrase`The marks are up to ${showLength(worst)} off where they would lie on this blank, more than ${showLength(mostResidual)}.`;
    if (Math.abs(scale - 1) > mostScale)
        return phrase`The marks lie ${showNumber(100 * Math.abs(scale - 1), 1)} % ${scale > 1 ? 'further apart' : 'nearer together'} than planned, more than ${showNumber(100 * mostScale)} %.`;
    return Math.abs(turn) > mostTurn
        ? phrase`By these marks the blank is turned by ${showNumber(degrees(turn), 1)}°: two of them may have changed places.`
        : undefined;
}

/** "set-up 2, the back of tray: turned by 0.24° anticlockwise, moved by X 0.3 Y -0.1 mm; the marks are up to 0.04 mm off". */
function lieWords(setUp: SetUp, { turn, x, y, residuals }: MeasuredLie): string {
    const way = turn < 0 ? 'clockwise' : 'anticlockwise';
    return `set-up ${setUp.number}, ${setUpPlace(setUp)}: turned by ${showNumber(Math.abs(degrees(turn)), 3)}° ${way} about X 0 Y 0, moved by X ${showNumber(x, 2)} Y ${showNumber(y, 2)} mm; the marks are up to ${showLength(Math.max(...residuals))} off after that`;
}

function degrees(turn: number): number {
    return (turn * 180) / Math.PI;
}
