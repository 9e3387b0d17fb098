import { settingFor, wattsAt } from '../../shared/burn/power-curve';
import type { Dimension } from '../../shared/quantity/dimension';
import { fromBase, type Quantity } from '../../shared/quantity/quantity';
import { showNumber } from '../../shared/quantity/show';
import { isPosition, isQuantity, type Position, type Quantity as QuantityNode, type Size } from '../generated/ast';
import { extentOf, pointOf, quantityOf } from '../lowering/quantity';
import { propertyOfNumber } from '../vocabulary/lookup';
import { laserSet } from './laser-set';

/** Units in which a maker may want to see a number again. */
const alsoIn: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
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

/** Waves are told in the units of light, the rest by what can be read off a rule or a caliper. */
function lengthUnits(mm: number): readonly string[] {
    if (Math.abs(mm) < 0.02) return ['um', 'nm'];
    return Math.abs(mm) < 3 ? ['mm', 'in', 'thou'] : ['mm', 'in'];
}

/** A number by what it measures here, in other units, and how far its tolerance or range reaches. */
export function describeNumber(node: QuantityNode | Size | Position): string | undefined {
    const property = propertyOfNumber(node);
    const quantities = quantitiesOf(node);
    const [first] = quantities;
    if (first === undefined) return property?.what;
    const isRange = isQuantity(node) && node.high !== undefined;
    const lines = [property?.what ?? ''];
    const others = isRange ? [] : convertUnits(node, quantities);
    if (others.length > 0) lines.push(`= ${others.join(' = ')}`);
    if (first.tolerance > 0) {
        const units = [first.unit, ...unitsFor(first).filter((unit) => unit !== first.unit && unit !== 'thou')].slice(0, 2);
        const [own, other] = units.map((unit) => reach(first, unit));
        lines.push(`From ${own}${other === undefined ? '' : ` (${other})`}.`);
    }
    return lines.filter((line) => line !== '').join('\n\n');
}

/** The number in other units; a fraction in its own as a decimal too, and a share of the laser's power in watts. */
function convertUnits(node: QuantityNode | Size | Position, quantities: readonly Quantity[]): string[] {
    const [first] = quantities;
    if (first === undefined) return [];
    const hasFraction = /\d\/\d/.test(node.$cstNode?.text ?? '');
    const units = unitsFor(first).filter((unit) => unit !== first.unit);
    const others = (hasFraction ? [first.unit, ...units] : units).map(
        (unit) => `${quantities.map((one) => inUnit(one.value, unit)).join(' × ')} ${unit}`,
    );
    const laser = laserSet(node);
    const watts = first.dimension === 'ratio' ? wattsAt(laser, first.value) : undefined;
    const setting = first.dimension === 'power' ? settingFor(laser, first.value) : undefined;
    if (watts !== undefined) others.push(`${inUnit(watts, 'W')} W`);
    if (setting !== undefined) others.push(`${inUnit(setting, '%')} %`);
    return others;
}

function unitsFor({ dimension, value }: Quantity): readonly string[] {
    return dimension === 'length' ? lengthUnits(value) : (alsoIn[dimension] ?? []);
}

function reach({ value, tolerance }: Quantity, unit: string): string {
    const [low, high] = [value - tolerance, value + tolerance].map((end) => showNumber(fromBase(end, unit), 4));
    return `${low} to ${high} ${unit}`;
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
function inUnit(value: number, unit: string): string {
    return String(Number(fromBase(value, unit).toPrecision(4)));
}
