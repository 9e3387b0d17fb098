import { showNumber } from '../quantity/show';
import type { Recipe } from '../recipe/recipe';
import type { Step } from '../recipe/step';
import type { Laser } from '../recipe/stock';

/** Stands behind every list of cautions. */
export const whatComesFirst =
    'Local codes, the maker’s manuals of machine and materials, and licensed practice come before anything written here.';

/** The usual cautions of the work in a recipe, most urgent first. They never promise that a thing is safe. */
export function cautions(recipe: Recipe): string[] {
    const list: string[] = [];
    const has = (kind: Step['kind']): boolean => recipe.steps.some((step) => step.kind === kind);
    if (has('engrave') || has('cut')) list.push(...laserCautions(recipe.laser));
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
    list.push(...stockCautions(recipe));
    return list.length === 0 ? [] : [...list, whatComesFirst];
}

/** What holds whenever a laser burns wood. */
export function laserCautions(laser: Laser | undefined): string[] {
    const wavelength = (laser?.wavelength ?? laser?.beam?.wavelength)?.value;
    const what = wavelength === undefined ? 'this laser' : showWavelength(wavelength);
    return [
        'Fire: never leave the laser running alone; keep an extinguisher at hand and look again an hour after the last burn.',
        'Smoke: run the extraction and keep the door closed; wood smoke harms the lungs.',
        `Eyes: keep the enclosure shut, or wear eyewear made for ${what}; a beam that glances off metal is as strong as before.`,
        'Never burn PVC, vinyl or anything that may hold chlorine, treated wood, or boards of unknown glue.',
    ];
}

function stockCautions(recipe: Recipe): string[] {
    const list: string[] = [];
    for (const { sheet } of recipe.blanks) {
        for (const text of sheet?.wood?.cautions ?? []) list.push(`${sheet?.wood?.name}: ${text}`);
    }
    for (const step of recipe.steps) {
        const stock =
            step.kind === 'seal'
                ? step.sealer
                : step.kind === 'fill'
                  ? step.resin
                  : step.kind === 'finish'
                    ? step.coat
                    : step.kind === 'inlay'
                      ? step.glue
                      : undefined;
        for (const text of stock?.cautions ?? []) list.push(`${stock?.name}: ${text}`);
    }
    return [...new Set(list)];
}

/** In nm for light that can be seen or nearly so, in µm beyond. */
function showWavelength(mm: number): string {
    return mm < 2e-3 ? `${showNumber(mm * 1e6, 0)} nm` : `${showNumber(mm * 1e3, 1)} µm`;
}
