import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { isFile, isRecipe } from '../generated/ast';
import { whereOf, whereOfFirstWord, whereOfPart } from '../lowering/places';
import { setOfNames } from '../names/taken';
import { membersOf } from '../variants/members';
import { itemKey } from '../vocabulary/item-key';
import { propertyOf } from '../vocabulary/lookup';
import { removal, replaceWith, say } from './say';
import { kindWords } from './unknown-name';

/** Two things of one kind with the same name, in a file or in a recipe. */
export function* duplicateNames(node: AstNode): Iterable<Finding> {
    const members: readonly AstNode[] = isFile(node) ? node.entries : isRecipe(node) ? membersOf(node) : [];
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
            message: `There is already a ${kindWords[kind] ?? 'thing'} called \`${name}\`: the first one is meant wherever the name stands.`,
            where,
            related: [{ message: 'The first one.', where: whereOfPart(earlier, 'name') }],
            fixes: [replaceWith(where, other, `Call it \`${other}\``)],
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
        if (key === undefined || key === 'mirror' || isBroken(item)) continue; // mirroring twice is a rule of the trade
        const property = propertyOf(node.$type, key);
        if (property === undefined || property.many) continue;
        const earlier = first.get(key);
        if (earlier === undefined) {
            first.set(key, item);
            continue;
        }
        yield say('duplicate-property', {
            severity: 'warning',
            message: `\`${property.words}\` is said twice here: the first one counts.`,
            where: whereOfFirstWord(item),
            related: [{ message: 'The one that counts.', where: whereOf(earlier) }],
            fixes: [removal(whereOf(item), 'Remove this line')],
        });
    }
}
