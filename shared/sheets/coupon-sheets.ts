import { withLadder } from '../burn/clearance-ladder';
import type { Rung } from '../burn/coupon-rungs';
import { type CouponOptions, type CouponSheet, couponSheet } from '../burn/coupon-sheet';
import { withStrips } from '../burn/kerf-ladder';
import { leastPowerOf, settingFor, wattsAt } from '../burn/power-curve';
import { runUpSpeed } from '../burn/run-up-speed';
import { laserCautions, whatComesFirst } from '../plan/cautions';
import { originOn, originSentence } from '../plan/origin';
import { isSlowCut, slowCutCaution } from '../plan/step-cautions';
import { motionOf } from '../plan/toolpaths';
import { showLength, showNumber, showRatio, showTime } from '../quantity/show';
import { type Message, phrase } from '../recipe/phrase';
import type { Laser, Sheet } from '../recipe/stock';
import { dangerOf } from '../rules/settings/never-burn';
import { couponJob } from '../toolpath/coupon-job';
import { type MachineJob, overtravelOf } from '../toolpath/job';
import { reachOfAll, reachOfJob } from '../toolpath/reach';
import { timeOfJob } from '../toolpath/time';
import type { Sheets } from './build-sheets';
import { couponPage } from './coupon-page';
import { couponSvg } from './coupon-svg';
import { couponTable } from './coupon-table';
import { outputOption } from './output-option';
import { rs274 } from './rs274';

/** The deepest squares take at most this share of the board where it is thinnest, and no more than this (mm) of a thick one. */
const floorShare = 0.9;
const deepEnough = 1.2;

/** The layout of a coupon of a board on a laser, or why there can be none. No deeper than the board can bear. */
export function layOutCoupon(material: Sheet, laser: Laser, options: CouponOptions = {}): CouponSheet | { problem: Message } {
    const danger = dangerOf(material);
    if (danger?.severity === 'error') return { problem: phrase`${material.name} ${danger.message}` };
    const full = laser.power?.value;
    if (full === undefined || !(full > 0)) return { problem: phrase`The power of ${laser.name} is not known.` };
    const wrong = wrongOption(laser, options);
    if (wrong !== undefined) return { problem: wrong };
    const thinnest = material.thickness === undefined ? undefined : material.thickness.value - material.thickness.tolerance;
    const deepest = Math.min(deepEnough, thinnest === undefined ? deepEnough : Math.max(0.05, floorShare * thinnest));
    const squares = couponSheet(laser, material.wood, { deepest, ...options });
    if (squares?.squares.length === 0) return squares;
    if (squares === undefined) return { problem: phrase`No coupon can be laid out for ${laser.name} with these figures.` };
    const stripped = options.cuts === undefined ? squares : withStrips(squares, material, laser, options.cuts);
    if ('problem' in stripped || options.fits === undefined) return within(stripped, laser);
    return within(withLadder(stripped, material, laser, { plugs: options.fits, measured: options.measured }), laser);
}

function within(sheet: CouponSheet | { problem: Message }, laser: Laser): CouponSheet | { problem: Message } {
    if ('problem' in sheet) return sheet;
    const beyond = beyondField(sheet, laser);
    return beyond === undefined ? sheet : { problem: beyond };
}

/** The head runs up beside the squares, and has to have the room for it. */
function beyondField(sheet: CouponSheet, laser: Laser): Message | undefined {
    const { field } = laser;
    const job = jobOf(sheet, laser);
    const reach = reachOfAll([reachOfJob(job), { minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height }]);
    if (field === undefined || reach === undefined) return undefined;
    const [width, height] = [reach.maxX - reach.minX, reach.maxY - reach.minY];
    if (width <= field.width.value + 1e-6 && height <= field.height.value + 1e-6) return undefined;
    const size = phrase`${showLength(sheet.width)} by ${showLength(sheet.height)}`;
    const runUp =
        width > sheet.width ? phrase`, and ${showLength(width)} by ${showLength(height)} with the run-up of the head` : '';
    const limits = phrase`${showLength(field.width.value)} by ${showLength(field.height.value)}`;
    return phrase`The coupon would be ${size}${runUp}, more than the field of ${laser.name} (${limits}): take fewer or smaller squares${runUp === '' ? '' : phrase`, or slower ones`}.`;
}

function wrongOption(laser: Laser, { powers = [], speeds = [] }: CouponOptions): Message | undefined {
    const least = leastPowerOf(laser) ?? 0;
    const top = laser.topSpeed?.value ?? Number.POSITIVE_INFINITY;
    const over = powers.find((power) => power > 1);
    if (over !== undefined) return phrase`${showRatio(over)} is more than ${laser.name} has.`;
    const under = powers.find((power) => (wattsAt(laser, power) ?? 0) < least * (1 - 1e-9));
    if (under !== undefined) {
        return phrase`${showRatio(under)} is less than ${laser.name} can hold (${showRatio(settingFor(laser, least) ?? 0)}).`;
    }
    const fast = speeds.find((speed) => speed > top);
    if (fast !== undefined) return phrase`${showNumber(fast)} mm/s is faster than ${laser.name} moves (${showNumber(top)} mm/s).`;
    const reached = runUpSpeed(laser);
    const hurried = speeds.find((speed) => speed > (reached ?? Number.POSITIVE_INFINITY));
    if (hurried !== undefined) {
        return phrase`${showNumber(hurried)} mm/s needs more overtravel than ${laser.name} has: ${showNumber(reached!)} mm/s is the most that its head reaches over it.`;
    }
    return undefined;
}

/** Everything that is written for a coupon: drawing, machine file, the table to fill in, and a page for the bench. */
export function couponSheets(material: Sheet, laser: Laser, sheet: CouponSheet): Sheets {
    const title = titleOf(material, laser, sheet);
    const danger = dangerOf(material);
    const cautions = [
        ...(danger === undefined ? [] : [`${material.name} ${danger.message}`]),
        ...laserCautions(laser),
        ...(cutsOf(sheet).some(isSlowCut) ? [slowCutCaution] : []),
        ...(material.wood?.cautions ?? []).map((caution) => `${material.wood?.name}: ${caution}`),
        whatComesFirst,
    ];
    const machine = couponRs274(title, laser, sheet);
    return {
        files: [
            {
                path: 'coupon.svg',
                text: couponSvg(sheet, title, laser),
                note: `the squares${sheet.strips === undefined ? '' : ', the strips'}${sheet.ladder === undefined ? '' : ', the plugs with their opening'} and their numbers at their real size`,
            },
            ...('problem' in machine ? [] : [{ path: 'coupon.ngc', text: machine.text, note: 'for the machine' }]),
            { path: 'coupon.html', text: couponPage(sheet, title, cautions, laser), note: 'to print and fill in' },
            { path: 'coupon.csv', text: couponTable(sheet), note: 'the same as a table' },
        ],
        problems: 'problem' in machine ? [machine.problem] : [],
    };
}

function titleOf(material: Sheet, laser: Laser, { squares, chosen }: CouponSheet): string {
    const [first, last] = [squares[0], squares.at(-1)];
    if (chosen?.joins !== true || first === undefined || last === undefined) return `Coupon of ${material.name} on ${laser.name}`;
    const which = first === last ? `Square ${first.number}` : `Squares ${first.number} to ${last.number}`;
    return `${which} of ${material.name} on ${laser.name}`;
}

/** With what its strips and plugs are cut. */
function cutsOf({ strips = [], ladder }: CouponSheet): Rung[] {
    return ladder === undefined ? [...strips] : [...strips, ladder.settings];
}

/** What the machine does for a coupon, from the corner that the laser's block says. */
function jobOf(sheet: CouponSheet, laser: Laser): MachineJob {
    return { ...couponJob(sheet, motionOf(laser), laser.overtravel?.value), origin: originOn(sheet, laser) };
}

function couponRs274(title: string, laser: Laser, sheet: CouponSheet): { text: string } | { problem: Message } {
    const job = jobOf(sheet, laser);
    const runUp = Math.max(...job.work.map((one) => (one.kind === 'area' ? overtravelOf(one, job.motion) : 0)));
    const time = timeOfJob(job);
    const result = rs274(job, {
        comments: [
            title,
            `${showNumber(sheet.width)} x ${showNumber(sheet.height)} mm, pitch ${showLength(sheet.pitch)}, air off${cutsOf(sheet).length === 0 ? '' : ' over the squares, on along what is cut out'}`,
            ...(time === undefined ? [] : [`takes about ${showTime(time.total)}`]),
            `the head runs up to ${showLength(runUp)} past the squares on either side: leave it room`,
            'check origin, focus and material before starting; never leave it running alone',
        ],
        fullPower: laser.power?.value ?? Number.NaN,
        ...outputOption(laser),
        origin: originSentence(laser, 'coupon'),
    });
    return 'problem' in result
        ? { problem: phrase`coupon.ngc is not written: its figures are none that a machine can have.` }
        : result;
}
