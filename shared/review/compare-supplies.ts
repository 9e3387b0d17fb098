import type { Plan, Supply } from '../plan/plan';
import { showSupply } from '../quantity/show-supply';
import { type Change, changesOf } from './change';
import type { Figure } from './figure';
import { groupBy } from './group-by';

/** What has to be on the bench that differs. */
export function compareSupplies(before: Plan, after: Plan): Change[] {
    return changesOf(supplyFigures(before.supplies), supplyFigures(after.supplies));
}

/** Several lots of one thing (two blanks of a board, say) are told together. */
export function supplyFigures(supplies: readonly Supply[]): Figure[] {
    const lots = groupBy(supplies, ({ kind, item, unit }) => `${kind} ${item} ${unit}`);
    return [...lots.values()].map((lot) => {
        const { kind, item, unit } = lot[0]!;
        const text = lot.map(({ amount, note }) => `${showSupply(amount, unit)}${note === '' ? '' : ` (${note})`}`).join(', ');
        const { factor, dimension } = base[unit];
        const value = factor * lot.reduce((sum, { amount }) => sum + amount, 0);
        const label = item.startsWith(kind) ? item : `${kind} ${item}`;
        return { label, text, key: text, amount: { value, dimension } };
    });
}

const base = {
    pieces: { factor: 1, dimension: 'count' },
    sheets: { factor: 1, dimension: 'count' },
    ml: { factor: 1000, dimension: 'volume' },
    g: { factor: 1, dimension: 'mass' },
    cm2: { factor: 100, dimension: 'area' },
} as const satisfies Readonly<Record<Supply['unit'], unknown>>;
