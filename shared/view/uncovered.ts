import { type Column, type Layer, peelColumn } from '../piece/column';
import type { Hideable } from './hideable';

/**
 * A column without what somebody does not want to see. Only what lies on top comes off: a fill below a veneer stays as long as the veneer does.
 * A coat goes with what it lies on. Char is no layer and stays.
 */
export function uncovered(column: Column, hidden: ReadonlySet<Hideable>): Column {
    const bare = peelColumn(column, (layer) => {
        const group = groupOf(layer);
        return group !== undefined && hidden.has(group);
    });
    if (!hidden.has('coat') || !bare.layers.some(({ kind }) => kind === 'coat')) return bare;
    return { ...bare, layers: bare.layers.filter(({ kind }) => kind !== 'coat') };
}

function groupOf({ kind, step }: Layer): Hideable | undefined {
    switch (kind) {
        case 'resin':
            return 'fill';
        case 'tape':
            return 'tape';
        case 'wood':
        case 'glue':
            return step === undefined ? undefined : 'veneer';
        default:
            return undefined;
    }
}
