import { boardRuns, toldPocket } from '../burn/board-runs';
import { powerWords } from '../burn/drift-words';
import { pocketWords } from '../burn/run-words';
import type { Where } from '../quantity/where';
import type { Recipe } from '../recipe/recipe';
import type { MeasuredPocket } from '../recipe/run';
import type { Sheet } from '../recipe/stock';

/** What is shown of a run: plain data, since it is worked out in another thread than it is asked for. */
export interface RunFacts {
    /** What was measured in each line that counts, beside what was to be expected; with the place where the line begins. */
    readonly lines: readonly { readonly offset: number; readonly step: string; readonly words: string }[];
    /** What all runs say of the power on each of its boards. */
    readonly boards: readonly string[];
}

/** @param run the whole run as it stands in its file */
export function runFacts(recipe: Recipe, run: Where): RunFacts {
    const sheets = new Map(recipe.blanks.flatMap(({ sheet }) => (sheet === undefined ? [] : [[sheet.name, sheet] as const])));
    const mine = recipe.measured.filter((pocket) => isIn(pocket, run)).flatMap((pocket) => withSheet(pocket, sheets));
    return {
        lines: mine.map(({ pocket, sheet }) => ({
            offset: pocket.where.offset,
            step: pocket.step,
            words: pocketWords(toldPocket(recipe, sheet, pocket)),
        })),
        boards: [...new Set(mine.map(({ sheet }) => sheet))].flatMap((sheet) => {
            const board = boardRuns(recipe, sheet);
            return board === undefined ? [] : [`${board.sheet} on ${board.laser}: ${powerWords(board)}`];
        }),
    };
}

function withSheet(
    pocket: MeasuredPocket,
    sheets: ReadonlyMap<string, Sheet>,
): { readonly pocket: MeasuredPocket; readonly sheet: Sheet }[] {
    const sheet = sheets.get(pocket.sheet);
    return sheet === undefined ? [] : [{ pocket, sheet }];
}

function isIn({ where }: MeasuredPocket, run: Where): boolean {
    return where.uri === run.uri && where.offset >= run.offset && where.offset + where.length <= run.offset + run.length;
}
