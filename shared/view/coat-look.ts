import type { Column } from '../piece/column';
import type { Plan } from '../plan/plan';
import { coatOf } from '../recipe/laid-by';

/**
 * What a coat leaves of the light that the wood gives back, in red, green and blue: oil wets the wood and makes it deeper and warmer, shellac is amber, a
 * clear film darkens a little.
 * @commonPractice Own judgement by eye, for the picture alone.
 */
const leaves: Readonly<Record<string, readonly [number, number, number]>> = {
    'drying-oil': [0.88, 0.8, 0.68],
    'mineral-oil': [0.9, 0.86, 0.8],
    shellac: [0.95, 0.89, 0.76],
    varnish: [0.93, 0.87, 0.76],
    wax: [0.96, 0.93, 0.88],
};
/** Of any other film. @commonPractice Own judgement by eye. */
const clearFilm = [0.96, 0.95, 0.92] as const;
/** More coats deepen it by so much less each. @commonPractice Own judgement by eye. */
const ofFurtherCoats = 0.25;

/** What the coats that lie open on a place leave of its light, not those below a fill or veneer, as parts of red, green and blue in sRGB; undefined where there are none. */
export function coatTint(plan: Plan, { layers }: Pick<Column, 'layers'>): readonly [number, number, number] | undefined {
    const open = layers.findIndex(({ kind }) => kind !== 'coat');
    const coats = open < 0 ? layers : layers.slice(0, open);
    const steps = new Set(coats.flatMap(({ kind, step }) => (kind === 'coat' && step !== undefined ? [step] : [])));
    if (steps.size === 0) return undefined;
    let tint: readonly [number, number, number] = [1, 1, 1];
    for (const index of steps) {
        const step = plan.steps[index]?.step;
        const coat = coatOf(step);
        const [r, g, b] = leaves[coat?.kinds.find((kind) => Object.hasOwn(leaves, kind)) ?? ''] ?? clearFilm;
        const count = step?.kind === 'finish' || step?.kind === 'seal' ? step.coats : 1;
        const power = 1 + ofFurtherCoats * Math.log2(Math.max(1, count));
        tint = [tint[0] * r ** power, tint[1] * g ** power, tint[2] * b ** power];
    }
    return tint;
}

/** A hex colour seen through that. */
export function tinted(colour: string, tint: readonly [number, number, number] | undefined): string {
    if (tint === undefined || !/^#[\da-f]{6}/i.test(colour)) return colour;
    const parts = tint.map((part, i) => Math.round(Number.parseInt(colour.slice(1 + 2 * i, 3 + 2 * i), 16) * part));
    return `#${parts.map((part) => part.toString(16).padStart(2, '0')).join('')}${colour.slice(7)}`;
}
