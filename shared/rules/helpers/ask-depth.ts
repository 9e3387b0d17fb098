import type { Plan } from '../../plan/plan';
import { fromBase, toBase } from '../../quantity/quantity';
import { showLength, showNumber } from '../../quantity/show';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Recipe } from '../../recipe/recipe';
import type { Check, Cut, Engrave } from '../../recipe/step';
import { type Figures, noFigure } from '../figures';
import { settingsHeld } from './settings-held';

/** Steps in which a length is proposed, in its own unit: fine enough to be right, coarse enough to be measured. */
const steps: Readonly<Record<string, number>> = { mm: 0.05, cm: 0.005, in: 0.002, thou: 2, um: 50 };

/** A length on a round figure of the maker's own unit, mm again: never above it, or never below it. */
export function roundLength(mm: number, unit: string, towards: 'up' | 'down'): number {
    const step = steps[unit] ?? steps.mm!;
    const parts = fromBase(mm, unit in steps ? unit : 'mm') / step;
    const whole = towards === 'up' ? Math.ceil(parts - 1e-6) : Math.floor(parts + 1e-6);
    return toBase(whole * step, unit in steps ? unit : 'mm') ?? mm;
}

/** The unit in which the depth of a step is written. */
export function depthUnit({ depth }: Engrave): string {
    return depth !== undefined && 'unit' in depth ? depth.unit : 'mm';
}

/** A depth to be asked for, as it is written, with the way there; `instead` ends the message where no depth will do. */
export interface AskedDepth {
    readonly text?: string;
    readonly fixes: Fix[];
    readonly instead: string;
}

/**
 * Asks for another depth, one that everybody agrees on who judges it; no fix where the settings are held, since they would go on
 * giving the old one.
 * @param mm what the rule would have; undefined where it knows none
 */
export function askDepth(
    rule: string,
    step: Engrave,
    mm: number | undefined,
    { recipe }: Pick<Plan, 'recipe'>,
    figures: Figures,
): AskedDepth {
    if (mm === undefined || !(mm > 0)) return { fixes: [], instead: '' };
    const unit = depthUnit(step);
    if (settingsHeld(step)) return { text: showLength(mm, unit), fixes: [], instead: '' };
    const { figure, against } = figures.agree({
        rule,
        step,
        of: 'depth',
        figure: mm,
        with: (deep) => [withDepth(step, deep), ...checksFor(step, deep, recipe).map(({ check }) => check)],
        grid: gridOf(unit),
        between: sensibleDepths,
    });
    if (figure === undefined) return { fixes: [], instead: noFigure('depth', against) };
    const text = showLength(figure, unit);
    return { text, fixes: depthFix(step, text, checkChanges(step, figure, recipe)), instead: '' };
}

/** Whether the depth that is asked for is the one that a rule had in mind, and not one that suits others better. */
export function isSaidAs(mm: number | undefined, step: Engrave, text: string | undefined): boolean {
    return mm !== undefined && text === showLength(mm, depthUnit(step));
}

/** Depths that a step may be asked for; others read like a slip of the unit, mm. */
export const sensibleDepths = [0.05, 30] as const;

function depthFix({ name, depth, tone, toneWhere }: Engrave, text: string, also: readonly Change[]): Fix[] {
    if (depth !== undefined) {
        const written = 'through' in depth ? `depth ${text}` : text;
        return [
            {
                title: phrase`Make ${name} ${text} deep`,
                changes: [{ do: 'replace', where: depth.where, text: written }, ...also],
            },
        ];
    }
    if (tone === undefined || toneWhere === undefined) return [];
    return [
        {
            title: phrase`Engrave ${name} ${text} deep instead`,
            changes: [{ do: 'replace', where: toneWhere, text: `depth ${text}` }, ...also],
        },
    ];
}

/** What is measured afterwards goes with the depth: checks that would no longer hold, with the range that they are given. */
function checksFor(step: Engrave, mm: number, { steps }: Recipe): { check: Check; text: string }[] {
    return steps.flatMap((check) => {
        if (check.kind !== 'check' || check.step.value !== step.name || check.depth === undefined) return [];
        const { value, tolerance, unit } = check.depth;
        if (!(tolerance > 0) || Math.abs(value - mm) <= tolerance) return [];
        return [{ check: { ...check, depth: { ...check.depth, value: mm } }, text: depthRange(mm, tolerance, unit) }];
    });
}

function checkChanges(step: Engrave, mm: number, recipe: Recipe): Change[] {
    return checksFor(step, mm, recipe).map(({ check, text }) => ({ do: 'replace', where: check.depth!.where, text }));
}

/** A range of depths as it is written. */
export function depthRange(mm: number, tolerance: number, unit: string): string {
    const show = (end: number): string => showNumber(fromBase(end, unit), unit === 'mm' ? 2 : 4);
    // Narrower where it would begin at nothing.
    const half = Math.min(tolerance, mm / 2);
    return `${show(mm - half)} .. ${show(mm + half)} ${unit}`;
}

/** The step with another depth, in place of a tone too. */
export function withDepth(step: Engrave, mm: number): Engrave {
    const { tone: _tone, toneWhere, depth, ...rest } = step;
    const where = depth?.where ?? toneWhere ?? step.where;
    return { ...rest, depth: { value: mm, tolerance: 0, unit: depthUnit(step), dimension: 'length', where } };
}

/** Asks for the depth that the settings give, as near as a hundredth of a millimetre says it. */
export function askWhatIsGiven(
    rule: string,
    step: Engrave,
    mm: number,
    { recipe }: Pick<Plan, 'recipe'>,
    figures: Figures,
): Fix[] {
    const { depth } = step;
    if (depth === undefined || 'through' in depth) return [];
    const given = {
        rule,
        between: sensibleDepths,
        step,
        of: 'depth',
        figure: Number(mm.toFixed(2)),
        with: (deep: number) => [withDepth(step, deep), ...checksFor(step, deep, recipe).map(({ check }) => check)],
    } as const;
    const { figure } = figures.agree(given);
    if (figure === undefined) return [];
    const text = showLength(figure, settingsHeld(step) ? 'mm' : depth.unit);
    const changes = [{ do: 'replace', where: depth.where, text } as const, ...checkChanges(step, figure, recipe)];
    return [{ title: phrase`Ask for ${text}`, changes }];
}

/**
 * Takes the settings out, so that they are worked out again; with another depth where what is asked for would then bring something
 * with it, and not at all where no depth would do.
 */
export function solveAnew(rule: string, step: Engrave | Cut, figures: Figures): Fix[] {
    const { power: _power, speed: _speed, passes: _passes, settingsWhere, ...rest } = step;
    const { pitch: _pitch, ...open } = rest as Engrave;
    const free = { ...open, settingsWhere: [] };
    const removed = settingsWhere.map((where) => ({ do: 'remove', where }) as const);
    if (figures.suits(rule, [free])) return [{ title: phrase`Solve again`, preferred: true, changes: removed }];
    const { depth } = free;
    if (depth === undefined || 'through' in depth) return [];
    const { figure } = figures.agree({
        rule,
        step,
        of: 'depth solved again',
        figure: depth.value,
        with: (deep) => [withDepth(free, deep)],
        grid: gridOf(depth.unit),
        between: sensibleDepths,
    });
    if (figure === undefined) return [];
    const text = showLength(figure, depth.unit);
    const changes = [{ do: 'replace', where: depth.where, text } as const, ...removed];
    return [{ title: phrase`Ask for ${text} and solve again`, preferred: true, changes }];
}

/** How far round lengths of a unit lie apart, mm. */
function gridOf(unit: string): number {
    return unit in steps ? (toBase(steps[unit]!, unit) ?? steps.mm!) : steps.mm!;
}
