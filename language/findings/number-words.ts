import { dimensionWords } from '../../shared/quantity/dimension';
import { fromBase } from '../../shared/quantity/quantity';
import { unitsOf } from '../../shared/quantity/units';
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

/** The units in which a bare number would be a likely value, likeliest first; all of the kind where none is likely. */
export function likelyUnits(written: number, property: Property): string[] {
    const all = property.measures.flatMap((measure) =>
        unitsOf(measure.dimension).map(({ name, factor, offset }) => ({
            name,
            usual: isUsual(written * factor + offset, measure),
        })),
    );
    const usual = all.filter((unit) => unit.usual);
    return (usual.length > 0 ? usual : all).slice(0, 3).map(({ name }) => name);
}
