import { intervalOf } from '../quantity/interval';
import { followsOutline } from '../recipe/follows-outline';
import type { Recipe } from '../recipe/recipe';
import type { BurntStep, MeasuredPocket, Run } from '../recipe/run';
import type { Step } from '../recipe/step';
import type { Coupon, Laser, Sheet } from '../recipe/stock';
import { spotOf } from './beam';
import { pitchForSpot } from './pitch';
import type { DatedRow } from './power-by-day';
import { wattsOf } from './power-curve';

/** A measured pocket together with the laser that burnt it and the address of the file that declares its board. */
export interface BurntPocket {
    readonly laser: Laser;
    readonly sheetFile?: string;
    readonly pocket: MeasuredPocket;
}

/**
 * What a recipe's own runs measured, on whatever laser and board. A line counts if it says what it was burnt with and how
 * deep it came out. In what and on what is read from the recipe only for a run of the revision that stands there now: an
 * older one may have been burnt elsewhere.
 */
export function pocketsOf(recipe: Omit<Recipe, 'measured'>): BurntPocket[] {
    return recipe.runs.flatMap((run) => run.burnt.flatMap((burnt) => pocketOf(burnt, run, recipe) ?? []));
}

/** What was measured in a board or veneer, as rows of a fit with their days. */
export function datedRows(recipe: Recipe, sheet: string | undefined): DatedRow[] {
    return recipe.measured.filter((pocket) => pocket.sheet === sheet).map(datedRow);
}

export function datedRow({ date, power, speed, pitch, passes, depth, tolerance, where }: MeasuredPocket): DatedRow {
    return { date, row: { power, speed, pitch, passes, depth, tolerance, where } };
}

/** The coupon of a board or veneer on the recipe's laser. */
export function couponFor({ coupons, laser }: Pick<Recipe, 'coupons' | 'laser'>, sheet: string | undefined): Coupon | undefined {
    return coupons.find((each) => each.sheet === sheet && each.laser === laser?.name);
}

/** A recipe as it was known in the morning of a day: what was measured then and later has not yet taught anything. */
export function asKnownOn(recipe: Recipe, day: string): Recipe {
    return { ...recipe, today: day, measured: recipe.measured.filter(({ date }) => date < day) };
}

/** Whether a coupon or the laser has changed since the morning of a day, so that what was planned then is no longer known. */
export function isChangedSince({ coupons, laser }: Recipe, day: string): boolean {
    return coupons.some(({ burnt }) => burnt !== undefined && burnt.value > day) || (laser?.serviced?.value ?? '') > day;
}

function pocketOf(burnt: BurntStep, run: Run, recipe: Omit<Recipe, 'measured'>): BurntPocket | undefined {
    const isNow = run.revision === undefined || run.revision === recipe.revision;
    const named = recipe.steps.find((each) => isNamed(each, burnt.step.value));
    if (isUnlikeSquare(named)) return undefined;
    const step = isNow ? named : undefined;
    const laser = run.laser ?? (isNow ? recipe.laser : undefined);
    const blank = blankOf(step, recipe);
    const { sheet, sheetFile, lot } = burnt.sheet === undefined ? sheetNow(blank) : burnt;
    const { power, speed, depth, passes } = burnt;
    if (sheet === undefined || laser === undefined) return undefined;
    if (power === undefined || speed === undefined || depth === undefined) return undefined;
    const pocket: MeasuredPocket = {
        recipe: recipe.name,
        step: burnt.step.value ?? '',
        date: run.date.value,
        laser: laser.name,
        sheet,
        ...(lot !== undefined && { lot }),
        power: wattsOf(power, laser) ?? Number.NaN,
        speed: speed.value,
        pitch: burnt.pitch?.value ?? pitchNow(step, recipe, laser, { name: sheet, file: sheetFile }) ?? Number.NaN,
        passes,
        depth: depth.value,
        tolerance: depth.tolerance,
        ...besideDepth(burnt),
        ...(run.temperature !== undefined && { temperature: run.temperature.value }),
        where: burnt.where,
    };
    return { laser, ...(sheetFile !== undefined && { sheetFile }), pocket };
}

function isNamed(step: Step, name: string | undefined): boolean {
    return name !== undefined && (step.kind === 'engrave' || step.kind === 'cut') && step.name === name;
}

function blankOf(step: Step | undefined, { blanks }: Pick<Recipe, 'blanks'>): Sheet | undefined {
    const blank = step !== undefined && 'blank' in step ? step.blank.value : undefined;
    return blanks.find(({ name }) => name === blank)?.sheet;
}

/** The pitch that a step without one is burnt with: its own, the coupon's, or the one that fits the spot. */
function pitchNow(
    step: Step | undefined,
    { coupons, blanks }: Pick<Recipe, 'coupons' | 'blanks'>,
    laser: Laser,
    sheet: { readonly name: string; readonly file: string | undefined },
): number | undefined {
    const own = step?.kind === 'engrave' ? step.pitch?.value : undefined;
    // The recipe's coupons are of its own boards; one of that name in another file is not among them.
    const isOther = blanks.some((blank) => blank.sheet?.name === sheet.name && blank.sheet.where.uri !== sheet.file);
    const coupon = isOther ? undefined : coupons.find((each) => each.sheet === sheet.name && each.laser === laser.name);
    return own ?? coupon?.pitch?.value ?? pitchForSpot(spotOf(laser));
}

/** A single line is like no square of a coupon; nor is what was darkened without digging, whose depth is no point of the law. */
function isUnlikeSquare(step: Step | undefined): boolean {
    return step?.kind === 'cut' || (step?.kind === 'engrave' && followsOutline(step)) || isTone(step);
}

/** Reading error of a calliper on one edge where none is written, one standard deviation, mm. @commonPractice */
const CALLIPER = 0.015;

/** Both edges lean, so that each has half of the difference. */
function wallOf({ width, floorWidth }: BurntStep): Pick<MeasuredPocket, 'wall'> {
    if (width === undefined || floorWidth === undefined) return {};
    const errors = [width, floorWidth].map(({ tolerance }) => (tolerance > 0 ? tolerance / 1.96 : CALLIPER));
    return { wall: { width: (width.value - floorWidth.value) / 2, reading: Math.hypot(...errors) / 2 } };
}

function besideDepth({ planned, passDepths, ...burnt }: BurntStep): Pick<MeasuredPocket, 'planned' | 'passDepths' | 'wall'> {
    return {
        ...wallOf(burnt),
        ...(planned !== undefined && { planned: intervalOf(planned) }),
        ...(passDepths !== undefined && { passDepths: passDepths.map(({ value }) => value) }),
    };
}

function sheetNow(sheet: Sheet | undefined): Pick<BurntStep, 'sheet' | 'sheetFile' | 'lot'> {
    return sheet === undefined
        ? {}
        : { sheet: sheet.name, sheetFile: sheet.where.uri, ...(sheet.lot !== undefined && { lot: sheet.lot }) };
}

function isTone(step: Step | undefined): boolean {
    return step?.kind === 'engrave' && step.tone !== undefined && step.depth === undefined;
}
