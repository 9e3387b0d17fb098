import type { Quantity } from '../../shared/quantity/quantity';
import type { Point } from '../../shared/recipe/step';
import type { Extent } from '../../shared/recipe/stock';
import type * as ast from '../generated/ast';
import { propertyOfNumber } from '../vocabulary/lookup';
import { type Property, takesRange } from '../vocabulary/property';
import { amountOf, dimensionOf, readNumber, toBaseDifference } from './number';
import { whereOf, whereOfPart } from './places';

/** A written quantity in base units; undefined where it is not what the line wants. `a .. b` becomes its middle and half width. */
export function quantityOf(node: ast.Quantity | undefined): Quantity | undefined {
    const property = node && propertyOfNumber(node);
    if (node === undefined || property === undefined) return undefined;
    const low = readNumber(node.low, node.unit, property);
    if (!low.ok) return undefined;
    const high = node.high === undefined ? low : readNumber(node.high, node.unit, property);
    if (!high.ok || high.value < low.value) return undefined;
    if ((node.high !== undefined || node.tolerance !== undefined) && !takesRange(property)) return undefined;
    const tolerance = toleranceOf(node, (low.value + high.value) / 2);
    if (tolerance === undefined) return undefined;
    return {
        value: (low.value + high.value) / 2,
        tolerance: (high.value - low.value) / 2 + tolerance,
        dimension: low.measure.dimension,
        unit: low.unit,
        where: whereOf(node),
    };
}

/** `+- 0.3 mm` as it stands; `+- 5 %` of anything but a percentage is a share of the value. */
function toleranceOf(node: ast.Quantity, value: number): number | undefined {
    if (node.tolerance === undefined) return 0;
    const amount = amountOf(node.tolerance);
    const unit = node.toleranceUnit ?? node.unit ?? '';
    if (amount === undefined || amount < 0) return undefined;
    const sameKind = dimensionOf(unit) === dimensionOf(node.unit ?? '');
    if (!sameKind && unit !== '%') return undefined;
    const tolerance = sameKind ? toBaseDifference(amount, unit) : Math.abs(value) * (amount / 100);
    return Number.isFinite(tolerance) ? tolerance : undefined;
}

export function extentOf(node: ast.Size | undefined): Extent | undefined {
    const property = node && propertyOfNumber(node);
    if (node === undefined || property === undefined) return undefined;
    const width = half(node, 'width', node.widthUnit ?? node.heightUnit, property);
    const height = half(node, 'height', node.heightUnit ?? node.widthUnit, property);
    return width && height && { width, height, where: whereOf(node) };
}

export function pointOf(node: ast.Position | undefined): Point | undefined {
    const property = node && propertyOfNumber(node);
    if (node === undefined || property === undefined) return undefined;
    const x = half(node, 'x', node.xUnit ?? node.yUnit, property);
    const y = half(node, 'y', node.yUnit ?? node.xUnit, property);
    return x && y && { x, y, where: whereOf(node) };
}

/** One of the two numbers of `300 x 200 mm` or `150, 100 mm`: a unit written once holds for both. */
function half(
    node: ast.Size | ast.Position,
    part: 'width' | 'height' | 'x' | 'y',
    unit: string | undefined,
    property: Property,
): Quantity | undefined {
    const read = readNumber((node as unknown as Record<string, ast.Amount | undefined>)[part], unit, property);
    if (!read.ok) return undefined;
    return {
        value: read.value,
        tolerance: 0,
        dimension: read.measure.dimension,
        unit: read.unit,
        where: whereOfPart(node, part),
    };
}
