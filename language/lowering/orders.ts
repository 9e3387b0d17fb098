import type { LangiumDocument } from 'langium';
import { isNewer } from '../edition';
import * as ast from '../generated/ast';
import { isDay } from './day';

/** Pieces of a recipe that somebody wants. Days as ISO 8601. */
export interface WantedPieces {
    readonly recipe: ast.Recipe;
    readonly pieces: number;
    readonly ordered: string;
    readonly due?: string;
    readonly whom?: string;
    readonly isDelivered: boolean;
}

/** What the orders of a linked file want, in the order in which they stand; without what cannot be read. */
export function ordersOf(document: LangiumDocument): WantedPieces[] {
    const file = document.parseResult.value;
    if (!ast.isFile(file) || isNewer(document)) return [];
    return file.entries.filter(ast.isOrder).flatMap(({ date, whom, items }) => {
        if (date === undefined || !isDay(date)) return [];
        const isDelivered = items.some((item) => ast.isDated(item) && isDay(item.date ?? ''));
        return items.filter(ast.isWanted).flatMap(({ recipe, count, due }): WantedPieces[] => {
            const node = recipe?.ref;
            if (node === undefined || !Number.isInteger(count) || count < 1 || count > 1e6) return [];
            return [
                {
                    recipe: node,
                    pieces: count,
                    ordered: date,
                    isDelivered,
                    ...(due !== undefined && isDay(due) ? { due } : {}),
                    ...(whom === undefined ? {} : { whom }),
                },
            ];
        });
    });
}
