import { showMoney } from '../quantity/currency';
import { fromBase } from '../quantity/quantity';
import { type Amount, type Figure, showAmount } from './figure';

/** One figure before and after. A side on which there is no such figure is absent. */
export interface Change {
    readonly label: string;
    readonly before?: string;
    readonly after?: string;
    /** The difference with its sign, where both are numbers of one kind. */
    readonly by?: string;
    /** The numbers themselves, in base units. */
    readonly amounts?: { readonly before?: Amount; readonly after?: Amount };
}

/** What differs between two lists of figures: matched by label, and by order where a label comes more than once. */
export function changesOf(before: readonly Figure[], after: readonly Figure[]): Change[] {
    const old = numbered(before);
    const now = numbered(after);
    const changes: Change[] = [];
    for (const [label, figure] of now) {
        const was = old.get(label);
        if (was?.key !== figure.key) changes.push(change(label, was, figure));
    }
    for (const [label, figure] of old) if (!now.has(label)) changes.push(change(label, figure, undefined));
    return changes;
}

function change(label: string, before: Figure | undefined, after: Figure | undefined): Change {
    const by = before?.amount && after?.amount ? difference(before.amount, after.amount) : undefined;
    const amounts = {
        ...(before?.amount && { before: before.amount }),
        ...(after?.amount && { after: after.amount }),
    };
    return {
        label,
        ...(before && { before: before.text }),
        ...(after && { after: after.text }),
        ...(by !== undefined && { by }),
        ...(Object.keys(amounts).length > 0 && { amounts }),
    };
}

/** "+0.04 mm": in the maker's unit when both are written in one, as figures of that kind are shown otherwise. */
function difference(before: Amount, after: Amount): string | undefined {
    if (before.dimension !== after.dimension) return undefined;
    const base = after.value - before.value;
    if (!Number.isFinite(base)) return undefined;
    const sign = base < 0 ? '−' : '+';
    const { unit } = after;
    if (after.dimension === 'money' && unit !== undefined && unit === before.unit)
        return `${sign}${showMoney(Math.abs(base), unit)}`;
    if (unit !== undefined && unit === before.unit) {
        const size = Number(Math.abs(fromBase(after.value, unit) - fromBase(before.value, unit)).toPrecision(6));
        return size === 0 ? undefined : `${sign}${size}${unit === '' ? '' : ` ${unit}`}`;
    }
    const size = showAmount(Math.abs(base), after.dimension);
    return /^0(?:\s|$)/.test(size) ? undefined : `${sign}${size}`;
}

/** Figures by label; the second of a label becomes "label (2)", and so on. */
export function numbered(figures: readonly Figure[]): Map<string, Figure> {
    const count = new Map<string, number>();
    const named = new Map<string, Figure>();
    for (const figure of figures) {
        const nth = (count.get(figure.label) ?? 0) + 1;
        count.set(figure.label, nth);
        named.set(nth === 1 ? figure.label : `${figure.label} (${nth})`, figure);
    }
    return named;
}
