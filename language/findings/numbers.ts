import type { AstNode } from 'langium';
import { dimensionWords } from '../../shared/quantity/dimension';
import type { Where } from '../../shared/quantity/where';
import type { Finding, Fix } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { amountOf, dimensionOf, isBare, type Reading, readNumber } from '../lowering/number';
import { whereOf, whereOfPart } from '../lowering/places';
import { lowUnitOf, unitOf, unitOfList } from '../lowering/quantity';
import { propertyOfNumber } from '../vocabulary/lookup';
import { type Property, takesRange } from '../vocabulary/property';
import { unitMeant } from '../vocabulary/unit-aliases';
import { inUnit, isUsual, likelyUnits, wants } from './number-words';
import { removal, replaceWith, say } from './say';

/** A number as it stands in the text, with the unit that holds for it. */
interface Written {
    readonly node: NumberNode;
    readonly amount: ast.Amount;
    readonly unit: string | undefined;
    /** The part of the node that is the unit; undefined where it is shared from elsewhere or missing. */
    readonly unitKey: string | undefined;
    /** Which of several such parts it is, where both ends of a range have one. */
    readonly unitIndex?: number;
    /** The part of the node that is the unit of another number and holds for this one, too. */
    readonly sharedKey: string | undefined;
    readonly property: Property;
    /** It says nothing, since it is the step to a second copy and there is one: any amount will do. */
    readonly idle?: boolean;
}

const nothing: readonly Finding[] = [];

/** Numbers whose unit is missing, unknown or of the wrong kind, and values that cannot be or hardly are meant. */
export function numberFindings(node: AstNode): Iterable<Finding> {
    if (ast.isQuantity(node)) return quantityFindings(node);
    if (ast.isSize(node)) {
        const { columns, rows } = ast.isRepeat(node.$container) ? node.$container : { columns: 0, rows: 0 };
        return both(
            withIdle(writtenOf(node, 'width', 'widthUnit', 'heightUnit'), columns === 1),
            withIdle(writtenOf(node, 'height', 'heightUnit', 'widthUnit'), rows === 1),
        );
    }
    if (!ast.isPosition(node)) return nothing;
    return both(writtenOf(node, 'x', 'xUnit', 'yUnit'), writtenOf(node, 'y', 'yUnit', 'xUnit'));
}

/** Every third node of a text is one, and nearly all are right: nothing is made for those. */
function quantityFindings(node: ast.Quantity): Iterable<Finding> {
    const shared = node.tolerance === undefined ? undefined : sharedUnit(node);
    const lowUnit = lowUnitOf(node);
    const low = check(
        withUnit(writtenOf(node, 'low', 'unit', shared), lowUnit ?? (node.unit === undefined ? unitOfList(node) : undefined), 0),
    );
    const high =
        node.high === undefined
            ? undefined
            : check(withUnit(writtenOf(node, 'high', 'unit', shared), lowUnit && node.unit, 1), lowUnit !== undefined);
    const second = node.rest === undefined ? undefined : check(writtenOf(node, 'rest', 'restUnit'));
    const rest = second?.severity === 'error' ? second : undefined; // how much is usual is asked of the whole
    if (low === undefined && node.high === undefined && node.tolerance === undefined && rest === undefined) return nothing;
    const wrong = [low, high, rest].flatMap((each) => each ?? []).concat([...toleranceFindings(node)]);
    const range = wrong.some(({ severity }) => severity === 'error') ? undefined : rangeFinding(node);
    return range === undefined ? wrong : [...wrong, range];
}

/** Where the unit stands behind the tolerance alone: `0.5 ± 0.1 mm`. */
function sharedUnit(node: ast.Quantity): string | undefined {
    const property = propertyOfNumber(node);
    return node.unit === undefined && property !== undefined && unitOf(node, property) !== undefined
        ? 'toleranceUnit'
        : undefined;
}

/** A range or a tolerance that nothing could keep, and a range whose ends stand the wrong way round. */
function rangeFinding(node: ast.Quantity): Finding | undefined {
    const property = propertyOfNumber(node);
    if (property === undefined || (node.high === undefined && node.tolerance === undefined)) return undefined;
    const unit = unitOf(node, property);
    const [low, high] = [readNumber(node.low, lowUnitOf(node) ?? unit, property), readNumber(node.high, unit, property)];
    if (!takesRange(property)) {
        const single = `${amountText(node.low)}${unit === undefined ? '' : ` ${lowUnitOf(node) ?? unit}`}`;
        const what = node.high === undefined ? 'tolerance' : 'range';
        return say('not-a-range', {
            message: phrase`\`${property.words}\` is one figure: a ${what} would not be kept here, such as \`${property.example}\`.`,
            where: whereOf(node.high ?? node.tolerance),
            fixes: [replaceWith(whereOf(node), single, phrase`Change to ${single}`)],
        });
    }
    if (!low.ok || !high.ok || low.value <= high.value) return undefined;
    const lowUnit = lowUnitOf(node);
    const both = lowUnit !== undefined;
    const turned = `${amountText(node.high as ast.Amount)}${both ? ` ${unit}` : ''} .. ${amountText(node.low)}${both ? ` ${lowUnit}` : ''}`;
    const [from, to] = [whereOf(node.low), both ? whereOfPart(node, 'unit', 1) : whereOf(node.high)];
    const where = { ...from, length: to.offset + to.length - from.offset };
    return say('impossible-value', {
        message: phrase`A range goes from less to more: \`${turned}${both || unit === undefined ? '' : ` ${unit}`}\`.`,
        where,
        fixes: [replaceWith(where, turned, phrase`Change to ${turned}`, true)],
    });
}

type NumberNode = ast.Quantity | ast.Size | ast.Position;

function writtenOf(node: NumberNode, amountKey: string, unitKey: string, sharedKey?: string): Written | undefined {
    const fields = node as unknown as Record<string, unknown>;
    const amount = fields[amountKey] as ast.Amount | undefined;
    const property = propertyOfNumber(node);
    if (amount === undefined || property === undefined) return undefined;
    const own = fields[unitKey] as string | undefined;
    const shared = sharedKey === undefined ? undefined : (fields[sharedKey] as string | undefined);
    return {
        node,
        amount,
        unit: own ?? shared,
        unitKey: own === undefined ? undefined : unitKey,
        sharedKey: own === undefined && shared !== undefined ? sharedKey : undefined,
        property,
    };
}

/** One end of a range that has a unit behind both. */
function withUnit(written: Written | undefined, unit: string | undefined, unitIndex: number): Written | undefined {
    return written === undefined || unit === undefined ? written : { ...written, unit, unitIndex };
}

function withIdle(written: Written | undefined, idle: boolean): Written | undefined {
    return idle && written !== undefined ? { ...written, idle } : written;
}

/** All numbers that the unit of this one holds for: another unit has to suit them, too. */
function sharing({ node, amount }: Written): number[] {
    const amounts = ast.isQuantity(node)
        ? lowUnitOf(node) === undefined
            ? [node.low, node.high]
            : [amount]
        : ast.isSize(node)
          ? [node.width, node.height]
          : [node.x, node.y];
    const ownUnits = ast.isSize(node)
        ? node.widthUnit !== undefined && node.heightUnit !== undefined
        : ast.isPosition(node) && node.xUnit !== undefined && node.yUnit !== undefined;
    return (ownUnits ? [amount] : amounts).flatMap((each) => amountOf(each) ?? []);
}

function unitWhereOf({ node, unitKey, unitIndex }: Written): Where | undefined {
    return unitKey === undefined ? undefined : whereOfPart(node, unitKey, unitIndex);
}

/** Two numbers that may share a unit: what is wrong with the unit is said once. */
function both(first: Written | undefined, second: Written | undefined): Iterable<Finding> {
    const unitless = first?.unit === undefined && second?.unit === undefined;
    const before = unitless ? undefined : check(first, first?.unitKey !== undefined);
    const behind = check(second);
    return before === undefined && behind === undefined ? nothing : [before, behind].flatMap((each) => each ?? []);
}

function check(written: Written | undefined, sayUnit = true): Finding | undefined {
    if (written === undefined) return undefined;
    const { amount, unit, property } = written;
    const reading = readNumber(amount, unit, property);
    if (reading.ok) {
        return written.idle === true || isUsual(reading.value, reading.measure) ? undefined : unlikely(written, reading);
    }
    if (reading.why === 'broken') return undefined;
    if (reading.why === 'impossible' || isNothing(written, reading.why)) return impossible(written);
    return sayUnit ? unitFinding(written, reading.why) : undefined;
}

/** `depth 0`: a unit would not mend it. */
function isNothing({ amount, property }: Written, why: string): boolean {
    return why === 'missing-unit' && amountOf(amount) === 0 && property.measures.every(({ bounds }) => bounds[0] > 0);
}

function unitFinding(written: Written, why: 'missing-unit' | 'unknown-unit' | 'wrong-unit'): Finding {
    const { amount, unit = '', property } = written;
    const unitWhere = unitWhereOf(written);
    const where = unitWhere ?? whereOf(amount);
    if (why === 'missing-unit') {
        const likely = likelyUnits(sharing(written), property);
        const end = { ...where, offset: where.offset + where.length, length: 0 };
        return say('missing-unit', {
            message: phrase`\`${amountText(amount)}\` needs a unit: \`${property.words}\` is ${wants(property)}, such as \`${property.example}\`.`,
            where,
            fixes: likely.map((name, index) =>
                replaceWith(end, ` ${name}`, phrase`${amountText(amount)} ${name}`, index === 0 && likely.length === 1),
            ),
        });
    }
    if (why === 'unknown-unit') {
        const meant = unitMeant(unit);
        return say('unknown-unit', {
            message: phrase`There is no unit \`${unit}\`.${meant === undefined ? ` ${wantsSentence(property)}` : phrase` Did you mean \`${meant}\`?`}`,
            where,
            fixes: meant === undefined ? [] : [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
        });
    }
    const kind = dimensionOf(unit);
    return say('wrong-unit', {
        message: phrase`\`${property.words}\` is ${wants(property)}, but \`${unit}\` measures ${kind === undefined ? phrase`something else` : dimensionWords[kind].a}.`,
        where,
        fixes: unitWhere === undefined ? [] : changes(unitWhere, property, sharing(written)),
    });
}

function wantsSentence(property: Property): string {
    return phrase`\`${property.words}\` is ${wants(property)}, such as \`${property.example}\`.`;
}

function changes(where: Where, property: Property, values: readonly number[]): Fix[] {
    const bare = property.measures.some(({ dimension }) => isBare(dimension));
    if (bare) return [removal(where, phrase`Remove the unit`)];
    return likelyUnits(values, property).map((name) => replaceWith(where, name, phrase`Change to \`${name}\``));
}

function impossible({ amount, unit, property }: Written): Finding {
    const where = whereOf(amount);
    const value = amountOf(amount);
    const words = property.words;
    const bounds = property.measures.find(({ dimension }) => unit === undefined || dimension === dimensionOf(unit))?.bounds ?? [
        0, 0,
    ];
    const message = (() => {
        if (value === undefined) return phrase`\`${amountText(amount)}\` is no number that can be measured.`;
        if (value === 0 && bounds[0] > 0)
            return phrase`\`${words}\` cannot be 0: ${wants(property)} more than nothing, such as \`${property.example}\`.`;
        if (value < 0 && bounds[0] >= 0 && bounds[0] < 1e-6) return phrase`\`${words}\` cannot be negative.`;
        if (Math.abs(value) > 1e6 && bounds[1] >= 1e6)
            return phrase`\`${amountText(amount)}\` is more than anything in a workshop.`;
        return phrase`\`${words}\` lies between ${inUnit(bounds[0], unit ?? '')} and ${inUnit(bounds[1], unit ?? '')}.`;
    })();
    return say('impossible-value', { message, where });
}

function unlikely(written: Written, reading: Reading & { ok: true }): Finding {
    const { node, amount, property, unitKey, sharedKey } = written;
    const unitPart = unitKey ?? sharedKey;
    const where = whereOf(amount);
    const { unit, measure, value } = reading;
    const [low, high] = measure.usual ?? [0, 0];
    const numbers = sharing(written);
    const meant = likelyUnits(numbers, { ...property, measures: [measure] }).find((name) => name !== unit);
    const usualThere = meant !== undefined && numbers.every((each) => likelyIsUsual(each, meant, property));
    const question = usualThere ? phrase` Did you mean ${amountText(amount)} ${meant}?` : '';
    const size = value < low ? 'little' : 'much';
    return say('unlikely-magnitude', {
        // Of a number that another unit would make usual, the unit is most likely a slip; else the number is only far out.
        severity: usualThere ? 'info' : 'hint',
        message: phrase`That is unusually ${size} for \`${property.words}\`: ${inUnit(low, unit)} to ${inUnit(high, unit)} is usual.${question}`,
        where,
        fixes:
            usualThere && unitPart !== undefined
                ? [
                      replaceWith(
                          whereOfPart(node, unitPart),
                          meant,
                          numbers.length > 1
                              ? phrase`Change the unit to ${meant}`
                              : phrase`Change to ${amountText(amount)} ${meant}`,
                      ),
                  ]
                : [],
    });
}

function likelyIsUsual(written: number, unit: string, property: Property): boolean {
    return property.measures.some((measure) => {
        const reading = readNumber({ whole: written } as ast.Amount, unit, { ...property, measures: [measure] });
        return reading.ok && isUsual(reading.value, measure);
    });
}

function* toleranceFindings(node: ast.Quantity): Iterable<Finding> {
    const { tolerance, toleranceUnit } = node;
    if (tolerance === undefined) return;
    const amount = amountOf(tolerance);
    if (amount === undefined || amount < 0) {
        const message = phrase`A tolerance is a half width: it counts both ways and has no sign.`;
        yield say('impossible-value', { message, where: whereOf(tolerance) });
    }
    if (toleranceUnit === undefined || node.unit === undefined) return;
    const kind = dimensionOf(toleranceUnit);
    const where = whereOfPart(node, 'toleranceUnit');
    if (kind === undefined) {
        const meant = unitMeant(toleranceUnit) ?? node.unit;
        const message = phrase`There is no unit \`${toleranceUnit}\`. Did you mean \`${meant}\`?`;
        yield say('unknown-unit', { message, where, fixes: [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)] });
    } else if (kind !== dimensionOf(node.unit) && kind !== 'ratio' && dimensionOf(node.unit) !== undefined) {
        const message = phrase`A tolerance is of the same kind as its value, or a percentage of it; \`${toleranceUnit}\` measures ${dimensionWords[kind].a}.`;
        yield say('wrong-unit', { message, where, fixes: [replaceWith(where, node.unit, phrase`Change to \`${node.unit}\``)] });
    }
}

function amountText(amount: ast.Amount): string {
    return amount.$cstNode?.text ?? [amount.whole, amount.fraction].filter((part) => part !== undefined).join(' ');
}
