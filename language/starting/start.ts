import type { Technique } from '../../shared/view/techniques';

export interface SizeInMm {
    readonly width: number;
    readonly height: number;
}

/** All that the text of a new recipe is made of. Lengths in mm, times in s. */
export interface Start {
    readonly technique: Technique;
    readonly name: string;
    readonly title: string;
    /** Paths of the files that declare what is named here. */
    readonly uses: readonly string[];
    /** Blocks of stock that no file declares yet. */
    readonly stock: readonly string[];
    readonly laser: string;
    readonly board: { readonly name: string; readonly thinnest?: number; readonly bleeds: boolean };
    readonly size: SizeInMm;
    readonly art: StartArt;
    /** Said above the recipe: what was not measured. */
    readonly remarks: readonly string[];
    readonly sealer: { readonly name: string; readonly dry?: number };
    readonly resin: { readonly name: string; readonly cure?: number; readonly deepestPour?: number };
    readonly finish: { readonly name: string };
    readonly inlay?: StartInlay;
}

export interface StartArt {
    readonly name: string;
    readonly path: string;
    readonly bitmap: boolean;
    /** As it is burnt. */
    readonly page: SizeInMm;
    /** Whether its size has to be written, since the file says none or another. */
    readonly sized: boolean;
}

export interface StartInlay {
    readonly veneer: { readonly name: string; readonly thickness: number };
    readonly glue: { readonly name: string; readonly film: number; readonly cure?: number };
}
