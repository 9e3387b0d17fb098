import type { AstNode, CstNode } from 'langium';
import { isAllow, isCount, isDated, isMix, isTone, isTrait } from '../generated/ast';
import type { OutsideServices } from '../outside';
import { itemKey } from '../vocabulary/item-key';
import { propertyOf } from '../vocabulary/lookup';

/** What a rule that is allowed is about: its page where whoever has the rules gives it, else when it shows. */
export async function describeAllowed(
    { text }: CstNode,
    node: AstNode,
    { pages, rulePage }: OutsideServices,
): Promise<string | undefined> {
    const head = isAllow(node) && node.rule === text ? pages.get(text) : undefined;
    return head && ((await rulePage(text)) ?? `**${head.title}.** ${head.condition}`);
}

/** What a bare word, count or colour stands for where it is: the line's own meaning. */
export function describeValue({ text }: CstNode, node: AstNode): string | undefined {
    const isPlainText = isTrait(node) && text.startsWith('"');
    if (isPlainText || !(isCount(node) || isTrait(node) || isTone(node) || isMix(node) || isDated(node))) return undefined;
    const block = node.$container?.$type;
    const property = block === undefined ? undefined : propertyOf(block, itemKey(node) ?? '');
    if (property === undefined) return undefined;
    const choices = property.choices.length > 1 ? `One of ${property.choices.map((word) => `\`${word}\``).join(', ')}.` : '';
    return [property.what, choices].filter((part) => part !== '').join('\n\n');
}
