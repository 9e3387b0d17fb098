import * as ast from '../generated/ast';
import { itemKey } from '../vocabulary/item-key';
import { type Known, knownAs, pointedAt } from './same-step';

/** The lines of a base, found by what a line of its variant says. */
export class BaseLines {
    private readonly byKey = new Map<string, ast.RecipeItem>();
    private readonly steps = new Map<string, ast.Step[]>();

    constructor(readonly items: readonly ast.RecipeItem[]) {
        for (const item of items) {
            if (ast.isStep(item)) {
                const { kind, of } = knownAs(item);
                for (const key of [kind, `${kind} ${of}`]) {
                    const alike = this.steps.get(key);
                    if (alike === undefined) this.steps.set(key, [item]);
                    else alike.push(item);
                }
            } else {
                const key = keyOf(item);
                if (key !== undefined && !this.byKey.has(key)) this.byKey.set(key, item);
            }
        }
    }

    /** What a line says anew or in part: one line where all is well, several where it does not say of which. */
    saidBy(item: ast.RecipeItem): readonly ast.RecipeItem[] {
        return ast.isStep(item) ? this.alike(knownAs(item)) : this.keyed(keyOf(item));
    }

    /** The step behind `after`, `before` or `without`. */
    at(step: ast.StepAt): readonly ast.Step[] {
        return this.alike(pointedAt(step));
    }

    leftOut({ step, art, blank, places, rule, key }: ast.Without): ast.RecipeItem | undefined {
        if (step !== undefined) return this.at(step)[0];
        if (key !== undefined) return this.keyed(key)[0];
        if (rule !== undefined) return this.keyed(`allow ${rule}`)[0];
        if (places !== undefined) return this.keyed(`Places ${places.$refText}`)[0];
        return this.keyed(art === undefined ? `Blank ${blank?.$refText}` : `Art ${art.$refText}`)[0];
    }

    private keyed(key: string | undefined): readonly ast.RecipeItem[] {
        const found = key === undefined ? undefined : this.byKey.get(key);
        return found === undefined ? [] : [found];
    }

    private alike({ kind, of, nth, called }: Known): readonly ast.Step[] {
        const all = this.steps.get(kind) ?? [];
        if (called !== undefined) return all.filter((step) => knownAs(step).called === called);
        const named = this.steps.get(`${kind} ${of}`) ?? [];
        // A wait without a reason is any wait; one with a new reason can be told by its number alone.
        const isAnyWait = kind === 'wait' && (of === undefined || (named.length === 0 && nth !== undefined));
        const candidates = isAnyWait ? all : named;
        if (nth === undefined) return candidates;
        const chosen = candidates[Number(nth.slice(1)) - 1];
        return chosen === undefined ? [] : [chosen];
    }
}

function keyOf(item: ast.RecipeItem): string | undefined {
    if (ast.isArt(item) || ast.isBlank(item) || ast.isPlaces(item)) return `${item.$type} ${item.name}`;
    if (ast.isAllow(item)) return `allow ${item.rule}`;
    return itemKey(item);
}
