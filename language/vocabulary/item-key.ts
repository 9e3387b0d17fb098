import type { AstNode } from 'langium';
import { isCircle, isShape } from '../generated/ast';

const keys: Readonly<Record<string, string>> = {
    WoodOf: 'wood',
    LaserBeam: 'beam',
    Kind: 'kind',
    Mix: 'mix',
    Burn: 'burn',
    Setpoint: 'set',
    LaserUse: 'laser',
    Material: 'of',
    Grain: 'grain',
    Backing: 'backing',
    Depth: 'depth',
    Air: 'air',
    Scan: 'scan',
    GlueUse: 'glue',
    Flush: 'flush',
    Grits: 'grits',
    Allow: 'allow',
    ArtUse: 'art',
    SheetPrice: 'price',
    FluidPrice: 'price',
    ShopPrice: 'price',
    Note: 'note',
    Burnt: 'burnt',
    Curve: 'curve',
};

/** The key under which the vocabulary knows a line of a block; undefined for parts and steps of a recipe. */
export function itemKey(item: AstNode): string | undefined {
    const key = (item as { key?: unknown }).key;
    if (typeof key === 'string') return key;
    if (isShape(item)) return isCircle(item.outline) ? 'circle' : 'rectangle';
    return keys[item.$type];
}
