import { type AstNode, AstUtils } from 'langium';
import { CodeActionKind } from 'vscode-languageserver';
import { fromBase, toBase } from '../../../shared/quantity/quantity';
import { units } from '../../../shared/quantity/units';
import { phrase } from '../../../shared/recipe/phrase';
import { isAtHand } from '../../findings/number-words';
import { type Amount, isPosition, isQuantity, isSize, type Position, type Quantity, type Size } from '../../generated/ast';
import { amountOf } from '../../lowering/number';
import { lowUnitOf } from '../../lowering/quantity';
import { propertyOfNumber } from '../../vocabulary/lookup';
import type { SpanEdit } from '../text-edits';
import type { Refactor, RefactorPlace } from './refactor';

type Measured = Quantity | Size | Position;

/** The units that a shop writes a dimension in, from which it may turn to the others. */
const turns: readonly (readonly string[])[] = [
    ['mm', 'in', 'thou', 'cm'],
    ['mm/s', 'mm/min', 'in/min', 'in/s'],
    ['mm/s2', 'in/s2'],
    ['s', 'min', 'h', 'd'],
    ['ml', 'floz'],
    ['g', 'oz'],
    ['degC', 'degF'],
    ['mm2', 'in2'],
];

/** A number says the same again in another unit: the one under the cursor, or all of its kind in the file. */
export function convertUnits({ document, node, offset }: RefactorPlace): Refactor[] {
    const measured = AstUtils.getContainerOfType(node, isMeasured);
    const unit = measured && unitOf(measured);
    if (measured === undefined || unit === undefined || (measured.$cstNode?.end ?? 0) < offset) return [];
    const family = turns.find((each) => units.get(each[0]!)?.dimension === units.get(unit)?.dimension) ?? [];
    const uri = document.uri.toString();
    const kind = CodeActionKind.RefactorRewrite;
    const measure = propertyOfNumber(measured)?.measures.find(({ dimension }) => dimension === units.get(unit)?.dimension);
    if (measure === undefined) return []; // a wrong kind of unit is to be changed, not turned into another
    const others = family.filter((each) => each !== unit && isAtHand(units.get(each)!, measure));
    const here = others.flatMap((other): Refactor[] => {
        const edit = inUnit(measured, other);
        return edit === undefined ? [] : [{ title: phrase`Write it as ${edit.text}`, kind, edits: new Map([[uri, [edit]]]) }];
    });
    const inFile = [...AstUtils.streamAst(document.parseResult.value)].filter(isMeasured);
    const everywhere = others.slice(0, 2).flatMap((other): Refactor[] => {
        const edits = inFile.flatMap((each) => (isOf(each, other) ? (inUnit(each, other) ?? []) : []));
        return edits.length < 2
            ? []
            : [{ title: phrase`Write all ${edits.length} of this file in ${other}`, kind, edits: new Map([[uri, edits]]) }];
    });
    return [...here, ...everywhere];
}

function isMeasured(node: AstNode): node is Measured {
    return isQuantity(node) || isSize(node) || isPosition(node);
}

function isOf(measured: Measured, other: string): boolean {
    const unit = unitOf(measured);
    return unit !== undefined && unit !== other && units.get(unit)?.dimension === units.get(other)?.dimension;
}

function unitOf(node: Measured): string | undefined {
    const unit = isQuantity(node) ? node.unit : isSize(node) ? (node.heightUnit ?? node.widthUnit) : (node.yUnit ?? node.xUnit);
    return unit !== undefined && units.has(unit) ? unit : undefined;
}

function inUnit(node: Measured, unit: string): SpanEdit | undefined {
    const cst = node.$cstNode;
    const text = isQuantity(node) ? quantityIn(node, unit) : pairIn(node, unit);
    return cst === undefined || text === undefined ? undefined : { offset: cst.offset, length: cst.length, text };
}

function quantityIn(node: Quantity, unit: string): string | undefined {
    if (node.rest !== undefined) return undefined;
    const from = node.unit ?? node.toleranceUnit ?? '';
    const low = turned(node.low, lowUnitOf(node) ?? from, unit);
    const high = node.high === undefined ? '' : turned(node.high, from, unit);
    const own = node.toleranceUnit ?? from;
    const kept = own === '%' && from !== '%'; // a share of the value stays one
    const spread =
        node.tolerance === undefined ? '' : kept ? node.tolerance.$cstNode?.text : turned(node.tolerance, own, unit, true);
    if (low === undefined || high === undefined || spread === undefined) return undefined;
    const range = high === '' ? low : `${low} .. ${high}`;
    return spread === '' ? `${range} ${unit}` : `${range} ${unit} +- ${spread} ${kept ? own : unit}`;
}

function pairIn(node: Size | Position, unit: string): string | undefined {
    const [one, oneUnit, other, otherUnit] = isSize(node)
        ? [node.width, node.widthUnit ?? node.heightUnit, node.height, node.heightUnit ?? node.widthUnit]
        : [node.x, node.xUnit ?? node.yUnit, node.y, node.yUnit ?? node.xUnit];
    const first = turned(one, oneUnit ?? '', unit);
    const second = turned(other, otherUnit ?? '', unit);
    if (first === undefined || second === undefined) return undefined;
    return isSize(node) ? `${first} x ${second} ${unit}` : `${first}, ${second} ${unit}`;
}

/** The number in another unit; as a fraction where inches are exactly one. A difference has no zero point of its own. */
function turned(amount: Amount | undefined, from: string, to: string, difference = false): string | undefined {
    const written = amountOf(amount);
    const base = written === undefined ? undefined : toBase(written, from);
    if (written === undefined || base === undefined || units.get(from)?.dimension !== units.get(to)?.dimension) return undefined;
    const ratio = (units.get(from)?.factor ?? 1) / (units.get(to)?.factor ?? 1);
    const value = from === to ? written : difference ? written * ratio : fromBase(base, to);
    return (to === 'in' ? asFraction(value) : undefined) ?? shortest(value);
}

/** `1 1/4` for what rulers have a line for and decimals do not say as shortly. */
function asFraction(inches: number): string | undefined {
    const parts = Math.round(inches * 64);
    if (parts <= 0 || parts % 64 === 0 || Math.abs(inches * 64 - parts) > 1e-9) return undefined;
    const whole = Math.floor(parts / 64);
    let [over, under] = [parts % 64, 64];
    while (over % 2 === 0) [over, under] = [over / 2, under / 2];
    return under <= 4 && whole === 0 && under === 2 ? '0.5' : `${whole > 0 ? `${whole} ` : ''}${over}/${under}`;
}

/** As few digits as keep the value to within a hundred thousandth of itself; what was round stays so. */
function shortest(value: number): string | undefined {
    if (!Number.isFinite(value)) return undefined;
    for (let digits = 1; digits <= 15; digits++) {
        const rounded = Number(value.toPrecision(digits));
        if (Math.abs(rounded - value) <= 1e-5 * Math.abs(value)) return writeNumber(rounded);
    }
    return writeNumber(value);
}

function writeNumber(value: number): string {
    return String(value).replace('e+', 'e');
}
