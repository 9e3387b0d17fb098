import type { AstNode } from 'langium';
import * as ast from '../generated/ast';
import { itemKey } from '../vocabulary/item-key';
import { isLine, type KeyOf } from '../vocabulary/lookup';
import type { NodeType } from '../vocabulary/property';

/** A few words that tell things of one kind apart in a list: "12 mm +- 0.3 mm, black-walnut". */
export function summaryOf(node: AstNode): string {
    const items = (node as { items?: readonly AstNode[] }).items ?? [];
    const parts: (string | undefined)[] = ((wanted[node.$type as NodeType] as readonly string[] | undefined) ?? []).map(
        (key) => items.filter((item) => itemKey(item) === key).map(valueText)[0],
    );
    if (ast.isArt(node)) parts.push(node.path);
    if (ast.isPlaces(node)) parts.push(placesText(node));
    if (ast.isRecipe(node)) parts.push(node.title);
    if (ast.isEngrave(node) || ast.isCut(node)) parts.push(node.blank?.$refText && `on ${node.blank.$refText}`);
    return parts.filter((part) => part !== undefined && part !== '').join(', ');
}

/** The lines that say most. */
const wanted: { readonly [Block in NodeType]?: readonly KeyOf<Block>[] } = {
    Board: ['thickness', 'wood'],
    Veneer: ['thickness', 'wood'],
    Laser: ['power', 'beam'],
    Resin: ['kind', 'potlife', 'cure'],
    Sealer: ['kind', 'dry'],
    Glue: ['kind', 'cure'],
    Coat: ['kind', 'dry'],
    Masking: ['kind', 'stays'],
    Wood: ['density', 'pores'],
    Beam: ['wavelength'],
    Abrasive: ['particle'],
    Shop: ['currency', 'hourly'],
    Blank: ['of', 'size'],
    Engrave: ['depth', 'tone'],
};

function placesText({ grid, at }: ast.Places): string {
    return grid?.$cstNode?.text ?? `${at.length} ${at.length === 1 ? 'place' : 'places'}`;
}

/** The line without its first word. */
function valueText(item: AstNode): string {
    const text = item.$cstNode?.text ?? '';
    if (ast.isFigure(item) && !isLine(item, 'potlife', 'cure', 'dry')) return item.value?.$cstNode?.text ?? '';
    if (ast.isFigure(item)) return text;
    if (ast.isExtent(item)) return item.size?.$cstNode?.text ?? '';
    return text.replace(/^\S+\s*/, '');
}
