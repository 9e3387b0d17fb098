import { mixAt, mixRange, type Shading } from './shading';

/**
 * What is seen through some paint, as a function of how dark that looks which lies below. At every
 * place it is `add + keep · below` ("over": T. Porter and T. Duff, "Compositing digital images",
 * 1984; darkness is linear in coded colours, so it is laid over as they are).
 */
export type Filter = Flat | Shaded | Stack | Grouped;

interface Flat {
    readonly kind: 'flat';
    readonly add: number;
    readonly keep: number;
}

interface Shaded {
    readonly kind: 'shaded';
    readonly shading: Shading;
}

/** The topmost first. */
interface Stack {
    readonly kind: 'stack';
    readonly filters: readonly (Flat | Shaded | Grouped)[];
}

/** A group that is put together by itself, then seen through as one. */
interface Grouped {
    readonly kind: 'group';
    readonly opacity: number;
    readonly inner: Filter;
}

/** Nothing at all, and bare wood. */
export const clear: Filter = { kind: 'flat', add: 0, keep: 1 };
export const bare: Filter = { kind: 'flat', add: 0, keep: 0 };

/** Less than this is no light. */
const faint = 1e-6;

export function flat(add: number, keep: number): Filter {
    return { kind: 'flat', add, keep };
}

/** One on top of the other. */
export function over(upper: Filter, lower: Filter): Filter {
    if (lower === clear || isClosed(upper)) return upper;
    if (upper === clear) return lower;
    const filters: (Flat | Shaded | Grouped)[] = [];
    for (const filter of [...listOf(upper), ...listOf(lower)]) {
        const last = filters.at(-1);
        if (last?.kind === 'flat' && filter.kind === 'flat') {
            filters[filters.length - 1] = {
                kind: 'flat',
                add: last.add + last.keep * filter.add,
                keep: last.keep * filter.keep,
            };
        } else filters.push(filter);
    }
    return filters.length === 1 ? filters[0]! : { kind: 'stack', filters };
}

function listOf(filter: Filter): readonly (Flat | Shaded | Grouped)[] {
    return filter.kind === 'stack' ? filter.filters : [filter];
}

export function grouped(opacity: number, inner: Filter): Filter {
    if (inner === clear) return clear;
    if (inner.kind !== 'flat') return { kind: 'group', opacity, inner };
    return { kind: 'flat', add: opacity * inner.add, keep: 1 - opacity + opacity * inner.keep };
}

/** Whether nothing of what lies below is seen. */
export function isClosed(filter: Filter): boolean {
    switch (filter.kind) {
        case 'flat':
            return filter.keep < faint;
        case 'shaded':
            return filter.shading.stops.every(({ opacity }) => opacity > 1 - faint);
        case 'stack':
            return filter.filters.some(isClosed);
        case 'group':
            return filter.opacity > 1 - faint && isClosed(filter.inner);
    }
}

/** How dark it looks where the shadings are at the places that `placeOf` says. */
export function darknessThrough(filter: Filter, below: number, placeOf: (shading: Shading) => number): number {
    switch (filter.kind) {
        case 'flat':
            return filter.add + filter.keep * below;
        case 'shaded':
            return mixAt(filter.shading, placeOf(filter.shading), below);
        case 'stack': {
            let seen = below;
            for (let i = filter.filters.length - 1; i >= 0; i--) seen = darknessThrough(filter.filters[i]!, seen, placeOf);
            return seen;
        }
        case 'group':
            return filter.opacity * darknessThrough(filter.inner, below, placeOf) + (1 - filter.opacity) * below;
    }
}

/** The least (0) or the greatest (1) darkness it can look anywhere. */
export function extremeThrough(filter: Filter, below: number, which: 0 | 1): number {
    switch (filter.kind) {
        case 'flat':
            return filter.add + filter.keep * below;
        case 'shaded':
            return mixRange(filter.shading, below)[which];
        case 'stack': {
            let seen = below;
            for (let i = filter.filters.length - 1; i >= 0; i--) seen = extremeThrough(filter.filters[i]!, seen, which);
            return seen;
        }
        case 'group':
            return filter.opacity * extremeThrough(filter.inner, below, which) + (1 - filter.opacity) * below;
    }
}

/** Adds what shadings it is made of. */
export function gatherShadings(filter: Filter, found: Set<Shading>): void {
    if (filter.kind === 'shaded') found.add(filter.shading);
    else if (filter.kind === 'stack') for (const one of filter.filters) gatherShadings(one, found);
    else if (filter.kind === 'group') gatherShadings(filter.inner, found);
}

/** The same for filters through which everything looks the same. */
export function keyOf(filter: Filter, known: Map<Shading, number>): string {
    switch (filter.kind) {
        case 'flat':
            return `${filter.add.toFixed(9)} ${filter.keep.toFixed(9)}`;
        case 'shaded': {
            if (!known.has(filter.shading)) known.set(filter.shading, known.size);
            return `s${known.get(filter.shading)}`;
        }
        case 'stack':
            return filter.filters.map((one) => keyOf(one, known)).join();
        case 'group':
            return `(${filter.opacity} ${keyOf(filter.inner, known)})`;
    }
}
