import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { type Message, phrase } from '../../shared/recipe/phrase';
import {
    type Engrave,
    isCount,
    isDepth,
    isEngrave,
    isFigure,
    isFile,
    isFlush,
    isLot,
    isRecipe,
    isSand,
    isScan,
    isSheet,
} from '../generated/ast';
import { whereOf, whereOfFirstWord, whereOfPart } from '../lowering/places';
import { quantityOf } from '../lowering/quantity';
import { setOfNames } from '../names/taken';
import { membersOf } from '../variants/members';
import { itemKey } from '../vocabulary/item-key';
import { isLine, propertyOf } from '../vocabulary/lookup';
import { removal, replaceWith, say } from './say';
import { kindWords } from './unknown-name';

/** Two things of one kind with the same name, in a file, in a recipe, or two lots of a board. */
export function* duplicateNames(node: AstNode): Iterable<Finding> {
    const members: readonly AstNode[] = isFile(node)
        ? node.entries
        : isRecipe(node)
          ? membersOf(node)
          : isSheet(node)
            ? node.items.filter(isLot)
            : [];
    const first = new Map<string, AstNode>();
    for (const member of members) {
        const name = (member as { name?: string }).name;
        if (name === undefined) continue;
        const kind = setOfNames(member);
        const earlier = first.get(`${kind} ${name}`);
        if (earlier === undefined) {
            first.set(`${kind} ${name}`, member);
            continue;
        }
        const where = whereOfPart(member, 'name');
        const other = `${name}-2`;
        yield say('duplicate-name', {
            message: phrase`There is already a ${kindWords[kind] ?? 'thing'} called \`${name}\`: the first one is meant wherever the name stands.`,
            where,
            related: [{ message: phrase`The first one.`, where: whereOfPart(earlier, 'name') }],
            fixes: [replaceWith(where, other, phrase`Call it \`${other}\``)],
        });
    }
}

/** The same line twice in one block. A line that is broken, as while it is typed, does not count. */
export function* duplicateProperties(node: AstNode, isBroken: (node: AstNode) => boolean): Iterable<Finding> {
    const items = (node as { items?: readonly AstNode[] }).items;
    if (items === undefined) return;
    const first = new Map<string, AstNode>();
    for (const item of items) {
        const key = itemKey(item);
        if (key === undefined || isBroken(item)) continue;
        const property = propertyOf(node.$type, key);
        if (property === undefined || property.many) continue;
        const earlier = first.get(key);
        if (earlier === undefined) {
            first.set(key, item);
            continue;
        }
        const alike = saysTheSame(earlier, item);
        if (key === 'mirror' && alike) continue; // mirroring twice is a rule of the trade
        yield say('duplicate-property', {
            severity: alike ? 'warning' : 'error',
            message: alike
                ? phrase`\`${property.words}\` is said twice here.`
                : phrase`\`${property.words}\` is said twice here, and differently: remove one of the two.`,
            where: whereOfFirstWord(item),
            related: [{ message: phrase`It is said here, too.`, where: whereOf(earlier) }],
            fixes: [
                removal(whereOf(item), alike ? phrase`Remove this line` : phrase`Keep \`${shownText(earlier)}\``),
                ...(alike ? [] : [removal(whereOf(earlier), phrase`Keep \`${shownText(item)}\``)]),
            ],
        });
    }
}

/** Whether two lines of one key say the same: the same figure in any unit, or the same words. */
function saysTheSame(one: AstNode, other: AstNode): boolean {
    const [a, b] = [figureOf(one), figureOf(other)];
    if (a !== undefined && b !== undefined) {
        return a.dimension === b.dimension && isNear(a.value, b.value) && isNear(a.tolerance, b.tolerance);
    }
    return shownText(one) === shownText(other);
}

function figureOf(item: AstNode) {
    return isFigure(item) || isDepth(item) ? quantityOf(item.value) : undefined;
}

function isNear(a: number, b: number): boolean {
    return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

function shownText(item: AstNode): string {
    return (item.$cstNode?.text ?? '').replaceAll(/\s+/g, ' ');
}

/** Two lines of a step of which only one can be done. */
export function* contradictions(node: AstNode, isBroken: (node: AstNode) => boolean): Iterable<Finding> {
    if (isBroken(node)) return;
    if (isEngrave(node)) {
        yield* besideOutline(node);
        const depth = node.items.find(isDepth);
        const tone = node.items.find((item) => isFigure(item) && isLine(item, 'tone'));
        if (depth === undefined || tone === undefined) return;
        yield contradiction(depth, tone, phrase`A step digs to a depth or colours to a tone, not both.`);
    } else if (isSand(node)) {
        const flush = node.items.find((item) => isFlush(item) && item.then !== undefined);
        const take = node.items.find((item) => isFigure(item) && isLine(item, 'take'));
        if (flush === undefined || take === undefined) return;
        yield contradiction(flush, take, phrase`\`flush then\` and \`take\` both say how much of the face goes.`);
    }
}

/** A step that follows its outline has no scan lines whose pitch could be said, and says by `passes` how often. */
function* besideOutline(node: Engrave): Iterable<Finding> {
    const scan = node.items.find((item) => isScan(item) && item.outline);
    if (scan === undefined) return;
    const pitch = node.items.find((item) => isFigure(item) && isLine(item, 'pitch'));
    const outline = node.items.find((item) => isCount(item) && isLine(item, 'outline'));
    if (pitch !== undefined)
        yield contradiction(scan, pitch, phrase`\`scan along outline\` follows one line: there is no distance between lines.`);
    if (outline !== undefined)
        yield contradiction(
            scan,
            outline,
            phrase`\`scan along outline\` follows nothing but the outline, as often as \`passes\` says.`,
        );
}

function contradiction(one: AstNode, other: AstNode, message: Message): Finding {
    const [first, second] = (one.$cstNode?.offset ?? 0) < (other.$cstNode?.offset ?? 0) ? [one, other] : [other, one];
    return say('contradiction', {
        message,
        where: whereOfFirstWord(second),
        related: [{ message: phrase`It is said here, too.`, where: whereOf(first) }],
        fixes: [
            removal(whereOf(second), phrase`Keep \`${shownText(first)}\``),
            removal(whereOf(first), phrase`Keep \`${shownText(second)}\``),
        ],
    });
}
