/**
 * A closed ring as x0, y0, x1, y1, … in millimetres, y pointing down, without repeating the first
 * point at the end. Flat typed arrays, since art of a million points has to pass between threads.
 */
export type Ring = Float64Array;

/**
 * A part of the plane. Always normalised when it leaves this room: rings do not cross themselves
 * or each other; outer rings have positive signed area (shoelace on x, y as they are), holes
 * negative. So the area is the plain sum of the rings' signed areas.
 */
export interface Region {
    readonly rings: readonly Ring[];
}

export const emptyRegion: Region = { rings: [] };

/**
 * The answer where shapes cross so often that working it out would take minutes: empty, and known
 * by being this very object. Who reads art from outside asks for it and says so.
 */
export const tangledRegion: Region = { rings: [] };

/** Axis-parallel bounds in millimetres. */
export interface Bounds {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
}
