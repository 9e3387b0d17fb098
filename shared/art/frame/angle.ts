import { splitLength } from './length';

/** rad in each of CSS's angle units; a bare number is degrees in SVG's attributes. */
const units: ReadonlyMap<string, number> = new Map([
    ['', Math.PI / 180],
    ['deg', Math.PI / 180],
    ['grad', Math.PI / 200],
    ['rad', 1],
    ['turn', 2 * Math.PI],
]);

/** An angle in rad; undefined if it is not one. */
export function parseAngle(text: string): number | undefined {
    const written = splitLength(text);
    const unit = written === undefined ? undefined : units.get(written.unit);
    return unit === undefined ? undefined : written!.number * unit;
}
