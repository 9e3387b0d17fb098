/** A picture as darknesses, row by row from the top left: 0 white to 255 black, whatever was see-through laid on white. */
export interface Raster {
    readonly columns: number;
    readonly rows: number;
    readonly darkness: Uint8Array;
}

/** Rec. 709 weights on coded values, in 1/255, like style/colour.ts's for vector art. */
export function darknessOfRgb(red: number, green: number, blue: number): number {
    return 255 - (0.2126 * red + 0.7152 * green + 0.0722 * blue);
}
