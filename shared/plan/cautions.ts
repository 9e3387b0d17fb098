import { showNumber, showTime } from '../quantity/show';
import type { Recipe } from '../recipe/recipe';
import type { Step } from '../recipe/step';
import type { Laser } from '../recipe/stock';
import type { StepPlan } from './plan';
import { isLong, stepCautions } from './step-cautions';

/** Stands behind every list of cautions. */
export const whatComesFirst =
    'Local codes, the maker’s manuals of machine and materials, and licensed practice come before anything written here.';

/** The usual cautions of the work in a recipe, most urgent first. They never promise that a thing is safe. */
export function cautions(recipe: Recipe, steps: readonly StepPlan[]): string[] {
    const list: string[] = [];
    const has = (kind: Step['kind']): boolean => recipe.steps.some((step) => step.kind === kind);
    if (has('engrave') || has('cut')) {
        const [fire, ...others] = laserCautions(recipe.laser);
        list.push(fire!, ...attendance(steps), ...others);
    }
    if (recipe.blanks.some((blank) => blank.backing === 'foil')) {
        list.push('Bare foil throws the beam back like a mirror: cover what is not under veneer, and stay behind the enclosure.');
    }
    if (has('fill') || has('inlay')) {
        list.push(
            'Resin, hardener and instant glue: gloves, goggles, fresh air; follow their data sheets. Do not burn them before they have cured.',
        );
    }
    if (has('sand'))
        list.push('Dust: mask and extraction while sanding; fine wood, resin and metal dust harms the lungs and can burn.');
    if (recipe.steps.some((step) => step.kind === 'fill' && (step.resin?.powder?.value ?? 0) > 0)) {
        list.push(
            'Metal powder: mask and no open flame while it is weighed out; fine aluminium and its like burn fiercely, and water makes it worse. Never put a laser on a metal-filled inlay.',
        );
    }
    list.push(...steps.flatMap((step) => stepCautions(step, recipe)));
    return list.length === 0 ? [] : [...new Set(list), whatComesFirst];
}

/** Every step with the cautions of its own. */
export function withCautions(steps: readonly StepPlan[], recipe: Recipe): StepPlan[] {
    return steps.map((step) => {
        const own = [...attendanceHere(step), ...stepCautions(step, recipe)];
        return own.length === 0 ? step : { ...step, cautions: [...new Set(own)] };
    });
}

/** How long somebody has to stand by. */
function attendance(steps: readonly StepPlan[]): string[] {
    const long = steps.filter(isLong);
    if (long.length === 0) return [];
    const each = long.map(({ title, times }) => `${showTime(times.machine)} in “${title}”`);
    return [`The laser runs long for each piece: ${each.join(', ')}. Plan for somebody to stay beside it all that time.`];
}

function attendanceHere(step: StepPlan): string[] {
    if (!isLong(step)) return [];
    return [`The laser runs for ${showTime(step.times.machine)}: somebody stays beside it all that time.`];
}

/** What holds whenever a laser burns wood. */
export function laserCautions(laser: Laser | undefined): string[] {
    const wavelength = (laser?.wavelength ?? laser?.beam?.wavelength)?.value;
    const what = wavelength === undefined ? 'this laser' : showWavelength(wavelength);
    return [
        'Fire: never leave the laser running alone; keep an extinguisher at hand and look again an hour after the last burn.',
        'Smoke: run the extraction and keep the door closed; wood smoke harms the lungs.',
        `Eyes: keep the enclosure shut, or wear eyewear whose mark says that it is made for ${what}; a beam that glances off metal is as strong as before.`,
        ...(laser?.beam?.cautions ?? []).map((text) => `${laser!.beam!.name}: ${text}`),
        'Never burn PVC, vinyl or anything that may hold chlorine, treated wood, or boards of unknown glue.',
    ];
}

/** In nm for light that can be seen or nearly so, in µm beyond. */
function showWavelength(mm: number): string {
    return mm < 2e-3 ? `${showNumber(mm * 1e6, 0)} nm` : `${showNumber(mm * 1e3, 1)} µm`;
}
