import type { Dimension } from '../../shared/quantity/dimension';
import { toBase } from '../../shared/quantity/quantity';
import { unitNamed } from '../../shared/quantity/units';
import type { Amount } from '../generated/ast';
import type { Measure, Property } from '../vocabulary/property';

/** A number as it can be used, in base units, or why it cannot. */
export type Reading =
    | { readonly ok: true; readonly value: number; readonly unit: string; readonly measure: Measure }
    | { readonly ok: false; readonly why: 'broken' | 'missing-unit' | 'unknown-unit' | 'wrong-unit' | 'impossible' };

/** The number that was written, whole and fraction together; undefined for `1/0`, for overflow and for a broken line. */
export function amountOf(amount: Amount | undefined): number | undefined {
    if (amount === undefined) return undefined;
    const whole = amount.whole ?? 0;
    const part = fractionOf(amount.fraction);
    if (part === undefined || (amount.whole === undefined && amount.fraction === undefined)) return undefined;
    const value = whole < 0 || Object.is(whole, -0) ? whole - part : whole + part;
    return Number.isFinite(value) ? value : undefined;
}

function fractionOf(fraction: string | undefined): number | undefined {
    if (fraction === undefined) return 0;
    const [over = '', under = ''] = fraction.split('/');
    const value = Number(over) / Number(under);
    return Number.isFinite(value) ? value : undefined;
}

/** Takes a written number for what the property wants; `unit` is the one written with it or shared with it. */
export function readNumber(amount: Amount | undefined, unit: string | undefined, property: Property): Reading {
    const value = amountOf(amount);
    if (amount === undefined) return { ok: false, why: 'broken' };
    if (value === undefined) return { ok: false, why: 'impossible' };
    const measure = measureFor(unit, property);
    if (typeof measure === 'string') return { ok: false, why: measure };
    const base = unit === undefined ? value : toBase(value, unit);
    const [low, high] = measure.bounds;
    if (base === undefined || !(base >= low && base <= high)) return { ok: false, why: 'impossible' };
    return { ok: true, value: base, unit: unit ?? '', measure };
}

/** What is written without a unit: plain numbers, and money, whose unit is the shop's currency. */
export function isBare(dimension: Dimension): boolean {
    return dimension === 'count' || dimension === 'money';
}

function measureFor(unit: string | undefined, property: Property): Measure | 'missing-unit' | 'unknown-unit' | 'wrong-unit' {
    if (unit === undefined) return property.measures.find(({ dimension }) => isBare(dimension)) ?? 'missing-unit';
    const known = unitNamed(unit);
    if (known === undefined) return 'unknown-unit';
    return property.measures.find(({ dimension }) => dimension === known.dimension) ?? 'wrong-unit';
}

/** Half of what was written after `+-`, or of a range, in base units: a difference, so that degF loses its offset. */
export function toBaseDifference(written: number, unit: string): number {
    return written * (unitNamed(unit)?.factor ?? 1);
}

/** The dimension of a unit; undefined for one that is not known. */
export function dimensionOf(unit: string): Dimension | undefined {
    return unitNamed(unit)?.dimension;
}
