import * as v from 'valibot';
import type { Message } from '../recipe/phrase';
import { address, figure, listOf, maybe } from './shapes';
import { techniques } from './techniques';

/** What a recipe can be begun with: what the shop has, what is built in, and what the maker chose of it. */

const inFolder = {
    /** Folder in which the recipe is to lie. */
    folder: address,
    /** Recipe files of the workspace, for a server that cannot look for them by itself. */
    files: listOf(address),
};
export const newRecipeChoicesParams = v.object(inFolder);
export type NewRecipeChoicesParams = v.InferOutput<typeof newRecipeChoicesParams>;

export interface NewRecipeChoices {
    /** The shop's own first, then a board that can be made of each built-in wood. */
    readonly boards: readonly StockChoice[];
    readonly veneers: readonly StockChoice[];
    /** The shop's own that can be poured, for a filled engraving. */
    readonly resins: readonly ResinChoice[];
    readonly lasers: readonly LaserChoice[];
}

/** A thing by its name; `file` is where it is declared, absent for what is built in and has to be written down first. */
const picked = v.object({ name: v.string(), file: maybe(v.string()) });
export type Picked = v.InferOutput<typeof picked>;

export interface StockChoice extends Picked {
    readonly detail: string;
    /** Lasers on which a coupon of it has been burnt. */
    readonly coupons: readonly string[];
}

export interface ResinChoice extends Picked {
    readonly detail: string;
    /** As `#1d5f7a`. */
    readonly colour: string;
}

export interface LaserChoice extends Picked {
    readonly detail: string;
    /** Whether foil stops its beam, as an inlay needs. */
    readonly foilStops: boolean;
}

export const newRecipeParams = v.object({
    ...inFolder,
    technique: v.picklist(techniques),
    board: picked,
    /** For an inlay; the one that shows best when absent. */
    veneer: maybe(picked),
    laser: picked,
    /** What a filled engraving is filled with: the shop's resin, or a colour of which a resin is written; the one that shows best when absent. */
    resin: maybe(picked),
    colour: maybe(v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/i))),
    /** Address of an SVG, PNG or JPEG; a drawing to begin with is written when absent. */
    art: maybe(address),
    /** What was typed: becomes a name of the language, and the title. */
    title: v.string(),
    /** mm; what fits art, board and laser when absent. */
    size: maybe(v.object({ width: figure, height: figure })),
});
export type NewRecipeParams = v.InferOutput<typeof newRecipeParams>;

export type NewRecipeAnswer =
    | {
          /** Files to be written that are not there yet, the recipe first. Relative to the folder, with forward slashes. */
          readonly files: readonly NewFile[];
          readonly size: { readonly width: number; readonly height: number };
          /** What is still said of the recipe, errors and warnings only: mostly what the art is like. */
          readonly findings: readonly string[];
      }
    | { readonly problem: Message };

/** A file with its text, or with its bytes as base64. */
export const newFile = v.union([
    v.object({ path: v.string(), text: v.string() }),
    v.object({ path: v.string(), base64: v.string() }),
]);
export type NewFile = v.InferOutput<typeof newFile>;
