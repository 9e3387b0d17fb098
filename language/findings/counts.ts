import type { AstNode } from 'langium';
import { showLength } from '../../shared/quantity/show';
import type { Where } from '../../shared/quantity/where';
import type { Finding } from '../../shared/recipe/finding';
import { mostCopies } from '../../shared/recipe/most-copies';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import { clausesOf } from '../editing/line-clauses';
import * as ast from '../generated/ast';
import { isDay, likelyDay } from '../lowering/day';
import { isColour, isCountable, isGrid } from '../lowering/items';
import { amountOf } from '../lowering/number';
import { whereOfCst, whereOfPart } from '../lowering/places';
import { quantityOf } from '../lowering/quantity';
import { isAnswer } from '../lowering/runs';
import { kerfOf } from '../lowering/stock';
import { oneOf } from '../vocabulary/expected';
import { propertyOf } from '../vocabulary/lookup';
import { removal, replaceWith, say } from './say';

/** Bare numbers, colours and words out of a list. */
export function* valueFindings(node: AstNode): Iterable<Finding> {
    if (ast.isCount(node)) yield* countFindings(node);
    else if (ast.isBurn(node) || ast.isBurnt(node) || ast.isCutTest(node)) {
        if (node.passes !== undefined) yield* passesFindings(node, node.passes);
        if (ast.isBurnt(node)) yield* answerFinding(node);
        if (ast.isCutTest(node)) yield* [...stripFinding(node), ...fitsFinding(node)];
    } else if (ast.isRun(node) || ast.isOrder(node) || ast.isDated(node)) yield* dateFindings(node);
    else if (ast.isOnHand(node) || ast.isOffcut(node)) yield* onHandFindings(node);
    else if (ast.isWanted(node)) yield* wantedFindings(node);
    else if (ast.isRepeat(node)) yield* gridFindings(node);
    else if (ast.isTone(node)) yield* colourFindings(node);
    else if (ast.isTrait(node)) yield* wordFindings(node);
    else if (ast.isMix(node)) yield* mixFindings(node);
}

function* countFindings(node: ast.Count): Iterable<Finding> {
    const block = node.$container.$type;
    const property = propertyOf(block, node.key);
    if (node.unit !== undefined) {
        const where = whereOfPart(node, 'unit');
        const message = phrase`\`${node.key}\` is counted: it is a plain number without a unit.`;
        yield say('wrong-unit', { message, where, fixes: [removal(where, phrase`Remove the unit`)] });
    }
    if (node.value === undefined || property === undefined) return;
    const [low, high] = property.measures[0]?.usual ?? [0, 0];
    const where = whereOfPart(node, 'value');
    if (!isCountable(node.value, block, node.key)) {
        yield say('impossible-value', { message: phrase`\`${node.key}\` is a whole number, ${low} or more.`, where });
    } else if (node.value > high) {
        const message = phrase`That is unusually much for \`${node.key}\`: up to ${high} is usual.`;
        yield say('unlikely-magnitude', { severity: 'hint', message, where });
    }
}

function* passesFindings(node: ast.Burn | ast.Burnt | ast.CutTest, passes: number): Iterable<Finding> {
    if (Number.isInteger(passes) && passes >= 1 && passes <= 1e6) return;
    yield say('impossible-value', {
        message: phrase`Passes are counted in whole numbers, 1 or more.`,
        where: whereOfPart(node, 'passes'),
    });
}

/** A kerf has some width, and less than this, mm. */
const widestKerf = 3;

/** A strip that lacks nothing of its drawn width, or too much; or one that says a kerf which is written too. */
function* stripFinding(node: ast.CutTest): Iterable<Finding> {
    if (node.strip === undefined) return;
    if (node.kerf !== undefined) {
        const message = phrase`The strip says the kerf as well: the one that is written counts. Leave one of them out.`;
        const where = whereOfPart(node, 'strip');
        yield say('duplicate-property', {
            message,
            where,
            fixes: [removal(whereOfStrip(node) ?? where, phrase`Remove the strip`)],
        });
        return;
    }
    const { kerf, back } = kerfOf(node);
    for (const [width, part] of [
        [kerf, 'strip'],
        [back, 'stripBack'],
    ] as const) {
        if (width === undefined || (width.value > 0 && width.value < widestKerf)) continue;
        const left = width.value > 0 ? phrase`${showLength(width.value)} too little is no kerf` : phrase`this one lacks nothing`;
        const message = phrase`A strip comes out narrower than it was drawn, by the kerf: ${left}. Measured first, then drawn, as in \`strip 5.82 mm of 6 mm\`.`;
        yield say('impossible-value', { message, where: whereOfPart(node, part) });
    }
}

/** What did not come through is tried in no opening. */
function* fitsFinding(node: ast.CutTest): Iterable<Finding> {
    if (node.fits === undefined || node.through === 'through') return;
    if (node.through === undefined && node.gives === undefined) return; // unsaidClauses says that
    const message = phrase`Plugs are tried in an opening once both are cut out, so \`fits\` counts for nothing here. Write it on a line that \`gives through\`.`;
    yield say('impossible-value', { message, where: whereOfPart(node, 'fits') });
}

/** From its first word to its last figure. */
function whereOfStrip(node: ast.CutTest): Where | undefined {
    const parts = clausesOf(node).clauses.find(({ word }) => word === 'strip')?.parts;
    const [first, last] = [parts?.[0], parts?.at(-1)];
    return first && last && { ...whereOfCst(node, first), length: last.end - first.offset };
}

/** Whether it came through is answered by one of two words. */
function* answerFinding(node: ast.Burnt): Iterable<Finding> {
    if (node.through === undefined || isAnswer(node.through)) return;
    const where = whereOfPart(node, 'through');
    yield say('unknown-word', {
        message: phrase`\`through\` is \`yes\` or \`no\`, not \`${node.through}\`.`,
        where,
        fixes: ['yes', 'no'].map((word) => replaceWith(where, word, phrase`Change to \`${word}\``)),
    });
}

/** More pieces than these are a slip of the keys. */
const mostWanted = 1e6;

function* wantedFindings(node: ast.Wanted): Iterable<Finding> {
    yield* dayFindings(node.due, () => whereOfPart(node, 'due'));
    if (node.count === undefined || (Number.isInteger(node.count) && node.count >= 1 && node.count <= mostWanted)) return;
    yield say('impossible-value', {
        message: phrase`Pieces are counted in whole numbers, 1 or more.`,
        where: whereOfPart(node, 'count'),
    });
}

function* dateFindings(node: ast.Run | ast.Order | ast.Dated): Iterable<Finding> {
    yield* dayFindings(node.date, () => whereOfPart(node, 'date'));
}

/** Of boards and veneers sheets are counted. */
function* onHandFindings(node: ast.OnHand | ast.Offcut): Iterable<Finding> {
    yield* dayFindings(node.counted, () => whereOfPart(node, 'counted'));
    const amount = ast.isOnHand(node) ? quantityOf(node.amount) : undefined;
    if (amount === undefined) return;
    if (amount.dimension === 'sheets' || ast.isFluid(node.$container)) return;
    const message = phrase`Of this sheets are on hand, such as \`on hand 3 sheet counted 2026-11-29\`; what is left of one is an \`offcut\`.`;
    yield say('wrong-unit', { message, where: whereOfPart(node, 'amount') });
}

function* dayFindings(date: string | undefined, place: () => Where): Iterable<Finding> {
    if (date === undefined || isDay(date)) return;
    const where = place();
    const meant = likelyDay(date);
    yield say('impossible-value', {
        message: phrase`\`${date}\` is no day${meant === undefined ? '' : phrase` as it is written here`}: year, month and day, as in \`2026-11-20\`.`,
        where,
        fixes: meant === undefined ? [] : [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
    });
}

function* gridFindings(node: ast.Repeat): Iterable<Finding> {
    if (node.columns === undefined || node.rows === undefined || isGrid(node)) return;
    const whole = Number.isInteger(node.columns) && Number.isInteger(node.rows) && node.columns >= 1 && node.rows >= 1;
    const message = whole
        ? phrase`That would be ${node.columns * node.rows} copies; at most ${mostCopies} are laid down.`
        : phrase`Copies are counted in whole numbers, 1 or more, as in \`repeat 4 x 3\`.`;
    yield say('impossible-value', { message, where: whereOfPart(node, 'columns') });
}

function* colourFindings(node: ast.Tone): Iterable<Finding> {
    if (node.value === undefined || isColour(node.value)) return;
    const message = phrase`\`${node.value}\` is no colour: three or six hexadecimal digits follow the #, as in \`#1f6f8b\`.`;
    yield say('impossible-value', { message, where: whereOfPart(node, 'value') });
}

function* wordFindings(node: ast.Trait): Iterable<Finding> {
    const property = propertyOf(node.$container.$type, node.key);
    if (property === undefined || property.choices.length === 0 || node.value === undefined) return;
    if (property.choices.includes(node.value)) return;
    const where = whereOfPart(node, 'value');
    const meant = nearest(node.value, property.choices);
    yield say('unknown-word', {
        message: phrase`\`${property.words}\` is ${oneOf(property.choices)}, not \`${node.value}\`.`,
        where,
        fixes: (meant === undefined ? property.choices : [meant]).map((word) =>
            replaceWith(where, word, phrase`Change to \`${word}\``, meant !== undefined),
        ),
    });
}

function* mixFindings(node: ast.Mix): Iterable<Finding> {
    const resin = amountOf(node.resin);
    const hardener = amountOf(node.hardener);
    const isRight = (resin === undefined || resin > 0) && (hardener === undefined || hardener >= 0);
    const isRead =
        (node.resin === undefined) === (resin === undefined) && (node.hardener === undefined) === (hardener === undefined);
    if (isRight && isRead) return;
    yield say('impossible-value', {
        message: phrase`Both parts of a mix are more than nothing.`,
        where: whereOfPart(node, 'resin'),
    });
}
