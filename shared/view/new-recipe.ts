/** What a recipe can be begun with: what the shop has, what is built in, and what the maker chose of it. */

/** Techniques as the command line names them. */
export const techniques = ['engraving', 'filled', 'inlay', 'picture'] as const;
export type Technique = (typeof techniques)[number];

export interface NewRecipeChoicesParams {
    /** Folder in which the recipe is to lie. */
    readonly folder: string;
    /** Recipe files of the workspace, for a server that cannot look for them by itself. */
    readonly files: readonly string[];
}

export interface NewRecipeChoices {
    /** The shop's own first, then a board that can be made of each built-in wood. */
    readonly boards: readonly StockChoice[];
    readonly veneers: readonly StockChoice[];
    readonly lasers: readonly LaserChoice[];
}

/** A thing by its name; `file` is where it is declared, absent for what is built in and has to be written down first. */
export interface Picked {
    readonly name: string;
    readonly file?: string;
}

export interface StockChoice extends Picked {
    readonly detail: string;
    /** Lasers on which a coupon of it has been burnt. */
    readonly coupons: readonly string[];
}

export interface LaserChoice extends Picked {
    readonly detail: string;
    /** Whether foil stops its beam, as an inlay needs. */
    readonly foilStops: boolean;
}

export interface NewRecipeParams extends NewRecipeChoicesParams {
    readonly technique: Technique;
    readonly board: Picked;
    /** For an inlay; the one that shows best when absent. */
    readonly veneer?: Picked;
    readonly laser: Picked;
    /** Address of an SVG, PNG or JPEG; a drawing to begin with is written when absent. */
    readonly art?: string;
    /** What was typed: becomes a name of the language, and the title. */
    readonly title: string;
    /** mm; what fits art, board and laser when absent. */
    readonly size?: { readonly width: number; readonly height: number };
}

export type NewRecipeAnswer =
    | {
          /** Files to be written that are not there yet, the recipe first. Relative to the folder, with forward slashes. */
          readonly files: readonly NewFile[];
          readonly size: { readonly width: number; readonly height: number };
          /** What is still said of the recipe, errors and warnings only: mostly what the art is like. */
          readonly findings: readonly string[];
      }
    | { readonly problem: string };

export type NewFile = { readonly path: string } & ({ readonly text: string } | { readonly base64: string });
