import type { AstNode } from 'langium';
import * as ast from '../generated/ast';

/** A few words that tell things of one kind apart in a list: "12 mm +- 0.3 mm, black-walnut". */
export function summaryOf(node: AstNode): string {
    const items = (node as { items?: readonly AstNode[] }).items ?? [];
    const parts: (string | undefined)[] = (wanted[node.$type] ?? []).map(
        (type) => items.filter((item) => matches(item, type)).map(valueText)[0],
    );
    if (ast.isArt(node)) parts.push(node.path);
    if (ast.isRecipe(node)) parts.push(node.title);
    if (ast.isEngrave(node) || ast.isCut(node)) parts.push(node.blank?.$refText && `on ${node.blank.$refText}`);
    return parts.filter((part) => part !== undefined && part !== '').join(', ');
}

/** The lines that say most, by key or by type. */
const wanted: Readonly<Record<string, readonly string[]>> = {
    Board: ['thickness', 'WoodOf'],
    Veneer: ['thickness', 'WoodOf'],
    Laser: ['power', 'LaserBeam'],
    Resin: ['Kind', 'potlife', 'cure'],
    Sealer: ['Kind', 'dry'],
    Glue: ['Kind', 'cure'],
    Coat: ['Kind', 'dry'],
    Wood: ['density', 'pores'],
    Beam: ['wavelength'],
    Abrasive: ['grain'],
    Shop: ['currency', 'hourly'],
    Blank: ['Material', 'size'],
    Engrave: ['Depth', 'tone'],
};

function matches(item: AstNode, type: string): boolean {
    return item.$type === type || (item as { key?: string }).key === type;
}

/** The line without its first word. */
function valueText(item: AstNode): string {
    const text = item.$cstNode?.text ?? '';
    const times = ['potlife', 'cure', 'dry'];
    if (ast.isFigure(item) && !times.includes(item.key)) return item.value?.$cstNode?.text ?? '';
    if (ast.isFigure(item)) return text;
    if (ast.isExtent(item)) return item.size?.$cstNode?.text ?? '';
    return text.replace(/^\S+\s*/, '');
}
