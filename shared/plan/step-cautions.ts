import { laidBy } from '../recipe/laid-by';
import type { Recipe } from '../recipe/recipe';
import type { Step } from '../recipe/step';
import { type Material, unnamedGlue } from '../recipe/stock';
import type { LaserPlan, LaserSettings } from './laser-plan';
import type { FillPlan, StepPlan } from './plan';

/** A run of the laser that is more than a look now and then, s. @commonPractice */
const longRun = 20 * 60;

export function isLong({ times }: StepPlan): boolean {
    return times.machine >= longRun;
}

/** The dangers of what one step is done with, each told by its name. */
export function stepCautions({ step, blank, laser, fill }: StepPlan, recipe: Recipe): string[] {
    return [
        ...slowCut(laser),
        ...tape(step),
        ...materialCautions(step, blank, recipe),
        ...rags(step),
        ...hotCup(step, fill),
        ...fluidCautions(step),
    ];
}

/** A cut slower than this, or of more passes, keeps the kerf hot enough to flame. @commonPractice */
const slow = 6; // mm/s
const manyPasses = 4;

function slowCut(laser: LaserPlan | undefined): string[] {
    const { settings, step } = laser ?? {};
    return step?.kind === 'cut' && settings !== undefined && isSlowCut(settings) ? [slowCutCaution] : [];
}

export const slowCutCaution =
    'A slow cut can flame in the kerf and glow on afterwards: air on, stay with a hand at the stop, water or an extinguisher in reach, and look at the parts again a while later. The machine’s manual and local rules come first.';

export function isSlowCut({ speed, passes }: Pick<LaserSettings, 'speed' | 'passes'>): boolean {
    return speed <= slow || passes >= manyPasses;
}

/** From memory, no source found: what tape is made of is burnt with the wood under it. */
function tape({ kind }: Step): string[] {
    return kind === 'mask' ? ['Mask with paper tape only: vinyl tape gives off hydrogen chloride under the laser.'] : [];
}

/** Of the wood or board where it becomes smoke or dust. */
function materialCautions({ kind }: Step, name: string | undefined, { blanks }: Recipe): string[] {
    if (kind !== 'engrave' && kind !== 'cut' && kind !== 'sand') return [];
    const sheet = blanks.find((blank) => blank.name === name)?.sheet;
    const list = (sheet?.wood?.cautions ?? []).map((text) => `${sheet!.wood!.name}: ${text}`);
    const made: Material | undefined = sheet?.madeOf?.value;
    if (sheet !== undefined && made !== undefined && unnamedGlue.has(made)) {
        // From memory, no source found: urea and phenol glues give formaldehyde off, more of it hot.
        list.push(
            `${sheet.name} is made of ${made}: its smoke and dust carry formaldehyde from the glue. Extraction and a mask.`,
        );
    }
    return list;
}

/** Linseed, tung and their like heat up as they dry: from memory. @commonPractice */
function rags(step: Step): string[] {
    if (step.kind !== 'finish' || step.coat?.rags !== 'ignite') return [];
    return [
        `Rags wet with ${step.coat.name} catch fire by themselves, hours later. Spread each out flat outdoors until it is hard, or soak it in water in a closed metal can, and ask where such waste goes; never leave one crumpled, in a heap or in a bin.`,
    ];
}

/** That 100 g in a cup can get to 204 degC, froth and smoke, and hardener on sawdust catch fire, was seen in a maker's page on safety. */
function hotCup(step: Step, fill: FillPlan | undefined): string[] {
    const most = step.kind === 'fill' ? step.resin?.largestMix : undefined;
    if (step.kind !== 'fill' || most === undefined || (fill?.mix.mass ?? 0) <= most.value + most.tolerance) return [];
    return [
        `So much ${step.resin!.name} gets hot in the cup: it can froth, smoke and set things alight. Pour it out at once; a cup that warms up goes outdoors, onto stone or metal, and what is left in it is spread thin. No hardener onto sawdust. Its data sheet comes first.`,
    ];
}

function fluidCautions(step: Step): string[] {
    const stock = step.kind === 'mask' ? step.film : laidBy(step);
    return (stock?.cautions ?? []).map((text) => `${stock?.name}: ${text}`);
}
