import { GrammarUtils } from 'langium';
import type { Quantity } from '../../shared/quantity/quantity';
import type { Point } from '../../shared/recipe/step';
import type { Extent } from '../../shared/recipe/stock';
import * as ast from '../generated/ast';
import { propertyOfNumber } from '../vocabulary/lookup';
import { type Property, takesRange } from '../vocabulary/property';
import { amountOf, dimensionOf, readNumber, toBaseDifference } from './number';
import { whereOf, whereOfPart } from './places';

/** A written quantity in base units; undefined where it is not what the line wants. `a .. b` becomes its middle and half width. */
export function quantityOf(node: ast.Quantity | undefined): Quantity | undefined {
    const property = node && propertyOfNumber(node);
    if (node === undefined || property === undefined) return undefined;
    const unit = unitOf(node, property);
    const low = readNumber(node.low, lowUnitOf(node) ?? unit, property);
    if (!low.ok) return undefined;
    const high = node.high === undefined ? low : readNumber(node.high, unit, property);
    if (!high.ok || high.value < low.value) return undefined;
    if ((node.high !== undefined || node.tolerance !== undefined) && !takesRange(property)) return undefined;
    const rest = node.rest === undefined ? 0 : restOf(node, property);
    const tolerance = toleranceOf(node, unit, (low.value + high.value) / 2);
    if (tolerance === undefined || rest === undefined) return undefined;
    return {
        value: (low.value + high.value) / 2 + rest,
        tolerance: (high.value - low.value) / 2 + tolerance,
        dimension: low.measure.dimension,
        unit: node.high === undefined ? low.unit : high.unit,
        where: whereOf(node),
    };
}

/** The unit of a number; in `0.5 ± 0.1 mm` the one behind the tolerance holds for both. */
export function unitOf(node: ast.Quantity, property: Property): string | undefined {
    const { unit, toleranceUnit } = node;
    if (unit !== undefined) return unit;
    if (toleranceUnit === undefined) return unitOfList(node);
    const dimension = dimensionOf(toleranceUnit);
    return property.measures.some((measure) => measure.dimension === dimension) ? toleranceUnit : undefined;
}

/** In `0.18, 0.36, 0.53 mm` the unit behind the last holds for all. */
export function unitOfList(node: ast.Quantity): string | undefined {
    const { $container, $containerIndex } = node;
    if (!ast.isBurnt($container) || $containerIndex === undefined) return undefined;
    const last = $container.depths.at(-1);
    return last === node ? undefined : (last?.unit ?? last?.toleranceUnit);
}

/** The unit behind the lower end of a range that has one behind both: `2 h .. 1 d`. */
export function lowUnitOf(node: ast.Quantity): string | undefined {
    if (node.high === undefined) return undefined;
    const units = GrammarUtils.findNodesForProperty(node.$cstNode, 'unit');
    return units.length > 1 ? units[0]?.text : undefined;
}

/** The second part of `1 h 30 min`, in base units. What stands on the next line and is no time is a slip of its own. */
function restOf(node: ast.Quantity, property: Property): number | undefined {
    const rest = readNumber(node.rest, node.restUnit, property);
    if (rest.ok) return rest.value;
    const start = GrammarUtils.findNodeForProperty(node.$cstNode, 'rest')?.range.start.line;
    return start === node.$cstNode?.range.start.line ? undefined : 0;
}

/** `+- 0.3 mm` as it stands; `+- 5 %` of anything but a percentage is a share of the value. */
function toleranceOf(node: ast.Quantity, own: string | undefined, value: number): number | undefined {
    if (node.tolerance === undefined) return 0;
    const amount = amountOf(node.tolerance);
    const unit = node.toleranceUnit ?? own ?? '';
    if (amount === undefined || amount < 0) return undefined;
    const sameKind = dimensionOf(unit) === dimensionOf(own ?? '');
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
