import { dimensionWords } from '../../shared/quantity/dimension';
import { fromBase } from '../../shared/quantity/quantity';
import { type Unit, unitsOf } from '../../shared/quantity/units';
import type { Measure, Property } from '../vocabulary/property';

/** A number as it is shown in a message: up to four figures, without needless zeros. */
export function short(value: number): string {
    return Number(value.toPrecision(4)).toString();
}

export function inUnit(base: number, unit: string): string {
    return unit === '' ? short(base) : `${short(fromBase(base, unit))} ${unit}`;
}

/** "a length", "a percentage or a power": what the property wants. */
export function wants(property: Property): string {
    return property.measures.map(({ dimension }) => dimensionWords[dimension].a).join(' or ');
}

export function isUsual(value: number, { usual }: Measure): boolean {
    return usual === undefined || (value >= usual[0] && value <= usual[1]);
}

/** So many of a unit at most make up the longest that is usual, and one at least. */
const mostOfUnit = 50_000;

/** Nobody measures a board in thousandths of an inch, nor a beam in metres. */
export function isAtHand({ dimension, factor }: Unit, { usual }: Measure): boolean {
    if (dimension !== 'length' || usual === undefined) return true;
    const longest = Math.max(Math.abs(usual[0]), Math.abs(usual[1])) / factor;
    return longest >= 1 && longest <= mostOfUnit;
}

/**
 * The units in which bare numbers would all be likely values, likeliest first; all that such things are measured in where
 * none is likely.
 */
export function likelyUnits(written: readonly number[], property: Property): string[] {
    const all = property.measures.flatMap((measure) =>
        unitsOf(measure.dimension)
            .filter((unit) => isAtHand(unit, measure))
            .map(({ name, factor, offset }) => ({
                name,
                usual: written.every((number) => isUsual(number * factor + offset, measure)),
            })),
    );
    const usual = all.filter((unit) => unit.usual);
    return (usual.length > 0 ? usual : all).slice(0, 3).map(({ name }) => name);
}
