import type { Dimension } from './dimension';
import { unitNamed } from './units';
import type { Where } from './where';

/**
 * A measured or wished-for number in base units (mm, s, W, J, g, rad, degC; see Dimension).
 * `tolerance` is the half width written after `+-`, or half of a written range.
 */
export interface Quantity {
    readonly value: number;
    readonly tolerance: number;
    readonly dimension: Dimension;
    /** The unit as it was written, so that messages answer in the maker's own unit. */
    readonly unit: string;
    readonly where: Where;
}

export function toBase(written: number, unit: string): number | undefined {
    const known = unitNamed(unit);
    return known === undefined ? undefined : written * known.factor + known.offset;
}

export function fromBase(value: number, unit: string): number {
    const known = unitNamed(unit);
    return known === undefined ? value : (value - known.offset) / known.factor;
}
