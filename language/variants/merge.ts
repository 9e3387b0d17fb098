import type { AstNode } from 'langium';
import * as ast from '../generated/ast';
import { adjusted } from './adjusted';
import { BaseLines } from './base-lines';
import { basesOf } from './lineage';

/** A line of the base: what the variant makes of it, and what it puts around it. */
interface Slot {
    now: ast.RecipeItem | undefined;
    readonly before: ast.RecipeItem[];
    readonly after: ast.RecipeItem[];
}

/** All lines of a recipe as if they were written in one place: those of its bases with what the variants say over them. */
export function mergedItems(recipe: ast.Recipe): readonly ast.RecipeItem[] {
    const [origin = recipe, ...variants] = [recipe, ...basesOf(recipe)].reverse();
    return variants.reduce((items, { items: own }) => overlaid(items, own), origin.items as readonly ast.RecipeItem[]);
}

/** What a variant is laid over: the lines of its base, with everything further down in them. */
export function linesOfBase(recipe: ast.Recipe): BaseLines | undefined {
    const base = basesOf(recipe)[0];
    return base && new BaseLines(mergedItems(base));
}

function overlaid(base: readonly ast.RecipeItem[], own: readonly ast.RecipeItem[]): ast.RecipeItem[] {
    const lines = new BaseLines(base);
    const slots = new Map(base.map((item): [ast.RecipeItem, Slot] => [item, { now: item, before: [], after: [] }]));
    const slotOf = (item: ast.RecipeItem | undefined): Slot | undefined => item && slots.get(item);
    const added: ast.RecipeItem[] = [];
    for (const item of own) {
        if (ast.isWithout(item)) {
            const slot = slotOf(lines.leftOut(item));
            if (slot !== undefined) slot.now = undefined;
        } else if (ast.isInserted(item)) {
            const slot = slotOf(item.step && lines.at(item.step)[0]);
            (item.place === 'before' ? slot?.before : slot?.after)?.push(...item.items);
        } else {
            const said = lines.saidBy(item)[0];
            const slot = slotOf(said);
            if (slot === undefined || said === undefined) added.push(item);
            else slot.now = isBlock(item) ? adjusted(item, said as typeof item) : item;
        }
    }
    return [...[...slots.values()].flatMap(({ before, now = [], after }) => [...before, now, ...after].flat()), ...added];
}

function isBlock(item: AstNode): boolean {
    return ast.isStep(item) || ast.isArt(item) || ast.isBlank(item) || ast.isPlaces(item);
}
