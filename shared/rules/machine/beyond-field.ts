import { bounds } from '../../geometry/measure';
import type { Bounds } from '../../geometry/region';
import type { LaserPlan } from '../../plan/laser-plan';
import { zeroOf, zeroWords } from '../../plan/origin';
import type { BlankPlan } from '../../plan/plan';
import { reachOfSteps, type SetUp, setUps } from '../../plan/set-ups';
import { motionOf } from '../../plan/toolpaths';
import { showLength, showNumber } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { type Message, phrase } from '../../recipe/phrase';
import { type Laser, zeros } from '../../recipe/stock';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'beyond-field',
    title: 'Beyond the machine’s field',
    severities: ['error'],
    condition:
        'What the head moves over does not fit the field of the recipe’s laser: what a step burns, its run-ups and lead-ins, and the corner of the blank that has X 0 Y 0, where the head comes from and goes back to. The blank may lie anywhere on the field.',
    error: 'Always: the head cannot get there.',
    why: 'The machine stops at its end, or runs against it, and loses its place: the art is cut off or burnt where it should not be.',
    mend: 'Make the art smaller, scan slower or with less `overtravel` so that the run-up fits, turn blank and art the other way, lay the art nearer to the corner with X 0 Y 0, name another corner with `zero` in the laser’s block, divide the step into two with marks between them, or use a larger machine.',
    source: 'Plain arithmetic: the bounds of all moves of the machine file against the field. Run-up: uniform acceleration, v²/(2·a).',
};

export const beyondField: Rule = {
    page,
    *examine(plan) {
        const { laser } = plan.recipe;
        if (laser?.field === undefined) return;
        const field = { width: laser.field.width.value, height: laser.field.height.value, laser };
        const all = setUps(plan);
        for (const setUp of all) yield* examineSetUp(setUp, field, all);
    },
};

/** mm */
interface Field {
    readonly width: number;
    readonly height: number;
    readonly laser: Laser;
}

function* examineSetUp(setUp: SetUp, field: Field, all: readonly SetUp[]): Iterable<Finding> {
    let alone = false;
    for (const step of setUp.lasers) {
        const message = artTooLarge(step, field) ?? runsUpBeyond(step, field) ?? tooFarOut(step, setUp.blank, field, all);
        if (message === undefined) continue;
        alone = true;
        yield said(step, message, field);
    }
    const [last] = setUp.lasers.slice(-1);
    const together = reachOfSteps(setUp.lasers, setUp.blank, field.laser);
    if (alone || last === undefined || fits(together, field)) return;
    const message = phrase`The steps of set-up ${setUp.number} together move the head over ${sizeOf(together!)}; ${reaches(field)}. Lay their art closer together, or scan slower, which needs less run-up.`;
    yield said(last, message, field);
}

function said({ step }: LaserPlan, message: Message, { laser }: Field): Finding {
    return finding(page, {
        severity: 'error',
        message,
        where: step.placements[0]?.where ?? step.where,
        step: step.index,
        related: [{ message: phrase`The field is written here.`, where: laser.field!.where }],
    });
}

function artTooLarge({ step, region }: LaserPlan, field: Field): Message | undefined {
    const box = bounds(region);
    if (box === undefined || fits(box, field)) return undefined;
    const turned = fits({ minX: box.minY, maxX: box.maxY, minY: box.minX, maxY: box.maxX }, field);
    const mend = turned
        ? phrase`It fits the other way round: swap the sides of its blank and turn the art by 90 deg.`
        : phrase`Make it smaller, or divide it.`;
    return phrase`${step.name} is ${sizeOf(box)}; ${reaches(field)}. ${mend}`;
}

function runsUpBeyond({ step, region, reach, scanAngle }: LaserPlan, field: Field): Message | undefined {
    const box = bounds(region);
    if (box === undefined || reach === undefined || fits(reach, field)) return undefined;
    const runUp = Math.max(box.minX - reach.minX, box.minY - reach.minY, reach.maxX - box.maxX, reach.maxY - box.maxY);
    return phrase`${step.name} is ${sizeOf(box)}, and the head runs up to ${showLength(runUp)} beyond it, over ${sizeOf(reach)}; ${reaches(field)}. ${lessRunUp(runUp, roomBeside(box, scanAngle, field), field.laser)}`;
}

/** How far the head may run beyond either side of the art (mm): along its scan lines, and if they were turned. Unknown for slanted lines. */
function roomBeside(box: Bounds, scanAngle: number, field: Field): { along: number; turned: number } | undefined {
    const acrossField = (field.width - box.maxX + box.minX) / 2;
    const downField = (field.height - box.maxY + box.minY) / 2;
    if (Math.abs(Math.sin(scanAngle)) < 1e-6) return { along: acrossField, turned: downField };
    if (Math.abs(Math.cos(scanAngle)) < 1e-6) return { along: downField, turned: acrossField };
    return undefined;
}

function lessRunUp(runUp: number, room: ReturnType<typeof roomBeside>, laser: Laser): string {
    const turn = room !== undefined && room.turned >= runUp ? phrase`turn the scan lines by 90 deg, ` : '';
    const otherwise = phrase`${turn}make the art smaller, or use a larger machine.`;
    if (room === undefined) return phrase`Scan slower, ${otherwise}`;
    // Both rounded down, so that they are enough.
    const short = Math.floor(room.along * 100 + 1e-6) / 100;
    const speed = Math.floor(Math.sqrt(2 * motionOf(laser).acceleration * room.along) + 1e-9);
    if (speed < 1) return phrase`There is no room for a run-up: ${otherwise}`;
    const over = laser.overtravel === undefined ? '' : phrase` with \`overtravel ${showLength(short)}\``;
    return phrase`There is room for ${showLength(short)} on either side, enough for ${showNumber(speed, 0)} mm/s: scan no faster${over}, ${otherwise}`;
}

/** Art that would fit by itself, but lies too far from where the head comes from. */
function tooFarOut(step: LaserPlan, blank: BlankPlan, field: Field, all: readonly SetUp[]): Message | undefined {
    const reach = reachOfSteps([step], blank, field.laser);
    if (reach === undefined || fits(reach, field)) return undefined;
    const zero = zeroOf(field.laser);
    const better = zeros.find((one) =>
        all.every((setUp) => fits(reachOfSteps(setUp.lasers, setUp.blank, field.laser, one), field)),
    );
    const mend =
        better === undefined
            ? phrase`Lay the art nearer to it with \`at\`, or take a smaller blank.`
            : phrase`Write \`zero ${better}\` in the block of ${field.laser.name}, lay the art nearer with \`at\`, or take a smaller blank.`;
    return phrase`${step.step.name} lies too far from the ${zeroWords(zero)} of ${blank.name}, which has X 0 Y 0: the head moves over ${sizeOf(reach)}; ${reaches(field)}. ${mend}`;
}

function fits(box: Bounds | undefined, { width, height }: Pick<Field, 'width' | 'height'>): boolean {
    return box === undefined || (box.maxX - box.minX <= width + 1e-6 && box.maxY - box.minY <= height + 1e-6);
}

function sizeOf({ minX, maxX, minY, maxY }: Bounds): string {
    return phrase`${showLength(maxX - minX)} by ${showLength(maxY - minY)}`;
}

function reaches({ width, height, laser }: Field): string {
    return phrase`${laser.name} reaches ${showLength(width)} by ${showLength(height)}`;
}
