import type { AstNode } from 'langium';
import { constructOf, constructs } from '../vocabulary/constructs';
import { itemKey } from '../vocabulary/item-key';
import { joiningWord } from '../vocabulary/joints';
import { propertyAfter, propertyOf } from '../vocabulary/lookup';

/** A word of the language by what it does where it stands, with an example. */
export function describeWord(word: string, node: AstNode): string | undefined {
    const joining = joiningWord(node.$type, word);
    if (joining !== undefined) {
        const around = node.$container === undefined ? undefined : constructOf(node.$container.$type);
        return explained(joining, (constructOf(node.$type) ?? around)?.example);
    }
    const key = itemKey(node);
    const own = key === undefined || node.$container === undefined ? undefined : propertyOf(node.$container.$type, key);
    if (own?.before === word) return explained(`${own.what} Now written \`${own.words}\`.`, own.example);
    const property = own?.words.split(' ').includes(word) ? own : (propertyAfter(word, typesAround(node)) ?? own);
    const pointed = node.$type === 'StepAt' || (node.$type === 'Without' && word !== 'without');
    if (pointed && key === undefined)
        return (constructs.find(({ where, word: first }) => where !== 'file' && first === word) ?? property)?.what;
    const construct = constructs.find(({ type, word: first }) => type === node.$type && first === word);
    const found = construct ?? property;
    return found && explained(found.what, found.example);
}

function explained(what: string, example: string | undefined): string {
    return example === undefined ? what : `${what}\n\n\`\`\`kerfbook\n${example}\n\`\`\``;
}

/** Types of the nodes that hold this one, outermost first, itself last. */
function typesAround(node: AstNode): string[] {
    const types: string[] = [];
    for (let at: AstNode | undefined = node; at !== undefined; at = at.$container) types.unshift(at.$type);
    return types;
}
