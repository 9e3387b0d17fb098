import type { Dimension } from '../../shared/quantity/dimension';
import { fromBase, type Quantity } from '../../shared/quantity/quantity';
import { showNumber } from '../../shared/quantity/show';
import { isPosition, isQuantity, type Position, type Quantity as QuantityNode, type Size } from '../generated/ast';
import { extentOf, pointOf, quantityOf } from '../lowering/quantity';
import { propertyOfNumber } from '../vocabulary/lookup';

/** Units in which a maker may want to see a number again. */
const alsoIn: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
    length: ['mm', 'in', 'thou'],
    area: ['mm2', 'cm2', 'in2'],
    volume: ['ml', 'floz'],
    time: ['s', 'min', 'h', 'd'],
    speed: ['mm/s', 'mm/min', 'in/min'],
    acceleration: ['mm/s2', 'in/s2'],
    dose: ['J/mm2', 'J/cm2'],
    mass: ['g', 'oz'],
    density: ['kg/m3', 'g/cm3'],
    temperature: ['degC', 'degF'],
    angle: ['deg', 'rad'],
};

/** A number by what it measures here, and in other units. */
export function describeNumber(node: QuantityNode | Size | Position): string | undefined {
    const property = propertyOfNumber(node);
    const quantities = quantitiesOf(node);
    const [first] = quantities;
    if (first === undefined) return property?.what;
    const lines = [property?.what ?? ''];
    const names = alsoIn[first.dimension] ?? [];
    const others = names
        .filter((unit) => unit !== first.unit)
        .map((unit) => `${quantities.map((one) => inUnit(one, unit)).join(' × ')} ${unit}`);
    if (others.length > 0) lines.push(`= ${others.join(' = ')}`);
    if (first.tolerance > 0) {
        const low = showNumber(fromBase(first.value - first.tolerance, first.unit), 4);
        const high = showNumber(fromBase(first.value + first.tolerance, first.unit), 4);
        lines.push(`From ${low} to ${high} ${first.unit}.`);
    }
    return lines.filter((line) => line !== '').join('\n\n');
}

function quantitiesOf(node: QuantityNode | Size | Position): Quantity[] {
    if (isQuantity(node)) return [quantityOf(node) ?? []].flat();
    if (isPosition(node)) {
        const point = pointOf(node);
        return point === undefined ? [] : [point.x, point.y];
    }
    const extent = extentOf(node);
    return extent === undefined ? [] : [extent.width, extent.height];
}

/** Four digits that say something, whatever the size. */
function inUnit(quantity: Quantity, unit: string): string {
    const value = fromBase(quantity.value, unit);
    return String(Number(value.toPrecision(4)));
}
