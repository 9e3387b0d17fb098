import { isCurrency } from './currency';
import type { Dimension } from './dimension';

/** A unit of the language: its dimension and the factor (and offset) to the base unit. */
export interface Unit {
    readonly name: string;
    readonly dimension: Dimension;
    /** base = written * factor + offset */
    readonly factor: number;
    readonly offset: number;
}

const INCH = 25.4; // mm, exact (international yard and pound agreement of 1959)
const POUND = 453.59237; // g, exact (same)
const FLUID_OUNCE_US = 29573.5295625; // mm3, exact (231 in3 / 128)

function unit(name: string, dimension: Dimension, factor: number, offset = 0): [string, Unit] {
    return [name, { name, dimension, factor, offset }];
}

/** Every unit a recipe may be written in, by its spelling. */
export const units: ReadonlyMap<string, Unit> = new Map([
    unit('mm', 'length', 1),
    unit('cm', 'length', 10),
    unit('m', 'length', 1000),
    unit('um', 'length', 1e-3),
    unit('nm', 'length', 1e-6),
    unit('in', 'length', INCH),
    unit('thou', 'length', INCH / 1000),
    unit('mm2', 'area', 1),
    unit('cm2', 'area', 100),
    unit('m2', 'area', 1e6),
    unit('in2', 'area', INCH * INCH),
    unit('mm3', 'volume', 1),
    unit('cm3', 'volume', 1000),
    unit('ml', 'volume', 1000),
    unit('l', 'volume', 1e6),
    unit('floz', 'volume', FLUID_OUNCE_US),
    unit('s', 'time', 1),
    unit('min', 'time', 60),
    unit('h', 'time', 3600),
    unit('d', 'time', 86400),
    unit('mm/s', 'speed', 1),
    unit('mm/min', 'speed', 1 / 60),
    unit('m/s', 'speed', 1000),
    unit('in/s', 'speed', INCH),
    unit('in/min', 'speed', INCH / 60),
    unit('mm/s2', 'acceleration', 1),
    unit('m/s2', 'acceleration', 1000),
    unit('in/s2', 'acceleration', INCH),
    unit('W', 'power', 1),
    unit('mW', 'power', 1e-3),
    unit('kW', 'power', 1000),
    unit('%', 'ratio', 0.01),
    unit('J/mm2', 'dose', 1),
    unit('J/cm2', 'dose', 0.01),
    unit('J/mm3', 'removal-energy', 1),
    unit('J/cm3', 'removal-energy', 1e-3),
    unit('g', 'mass', 1),
    unit('kg', 'mass', 1000),
    unit('oz', 'mass', POUND / 16),
    unit('lb', 'mass', POUND),
    unit('kg/m3', 'density', 1e-6),
    unit('g/cm3', 'density', 1e-3),
    unit('g/ml', 'density', 1e-3),
    unit('g/m2', 'spread', 1e-6),
    unit('degC', 'temperature', 1),
    unit('degF', 'temperature', 5 / 9, -160 / 9),
    unit('deg', 'angle', Math.PI / 180),
    unit('rad', 'angle', 1),
    unit('sheet', 'sheets', 1),
    unit('sheets', 'sheets', 1),
]);

/** A unit as it is printed, in the letters of a keyboard: `µm`, `mm/s²`, `°C` are `um`, `mm/s2`, `degC`. */
function plainUnit(printed: string): string {
    return printed.replace(/[µμ]/g, 'u').replaceAll('²', '2').replaceAll('³', '3').replace('°', 'deg');
}

/** A unit by its spelling; the code of a currency is one of money. */
export function unitNamed(name: string): Unit | undefined {
    return (
        units.get(name) ??
        units.get(plainUnit(name)) ??
        (isCurrency(name) ? { name, dimension: 'money', factor: 1, offset: 0 } : undefined)
    );
}

/** The units of one dimension, in the order in which they are offered. */
export function unitsOf(dimension: Dimension): Unit[] {
    return [...units.values()].filter((candidate) => candidate.dimension === dimension);
}
