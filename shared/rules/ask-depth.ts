import { fromBase, toBase } from '../quantity/quantity';
import { showLength } from '../quantity/show';
import type { Fix } from '../recipe/finding';
import type { Engrave } from '../recipe/step';
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

/** Asks for another depth; none where the settings are held, since they would go on giving the old one. */
export function askDepth(step: Engrave, mm: number): Fix[] {
    const { depth, name } = step;
    if (depth === undefined || settingsHeld(step) || !(mm > 0)) return [];
    const text = showLength(mm, depthUnit(step));
    return [
        {
            title: `Make ${name} ${text} deep`,
            changes: [{ do: 'replace', where: depth.where, text: 'through' in depth ? `depth ${text}` : text }],
        },
    ];
}
