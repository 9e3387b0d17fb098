import { intersect } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import type { Bounds, Region, Ring } from '../../geometry/region';
import { rectangle } from '../../geometry/shapes';
import { type Matrix, transform } from '../../geometry/transform';
import type { Clip } from './drawing';

/** mm, for what is not cut by any page. */
export const everywhere: Bounds = { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 };

export function boxOfPlace(width: number, height: number): Bounds {
    return { minX: 0, minY: 0, maxX: width, maxY: height };
}

/** Narrows what is visible to a box of user units. */
export function clipToBox(clip: Clip, matrix: Matrix, box: Bounds): Clip {
    const region = transform(rectangle(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY), matrix);
    const around = bounds(region);
    const upright = (matrix.b === 0 && matrix.c === 0) || (matrix.a === 0 && matrix.d === 0);
    return {
        box: around === undefined ? nothing : common(clip.box, around),
        region: upright ? clip.region : clip.region === undefined ? region : intersect(clip.region, region),
    };
}

/** Narrows what is visible to a region of the page. */
export function clipToRegion(clip: Clip, region: Region): Clip {
    const around = bounds(region);
    if (around === undefined) return { box: nothing, region: undefined };
    const box = common(clip.box, around);
    // An upright rectangle is its own bounds.
    if (isBox(region, around)) return { box, region: clip.region };
    return { box, region: clip.region === undefined ? region : intersect(clip.region, region) };
}

export function isEmptyBox({ minX, minY, maxX, maxY }: Bounds): boolean {
    return !(maxX > minX && maxY > minY);
}

export function regionOfBox({ minX, minY, maxX, maxY }: Bounds): Region {
    return rectangle(minX, minY, maxX - minX, maxY - minY);
}

const nothing: Bounds = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

function common(a: Bounds, b: Bounds): Bounds {
    return {
        minX: Math.max(a.minX, b.minX),
        minY: Math.max(a.minY, b.minY),
        maxX: Math.min(a.maxX, b.maxX),
        maxY: Math.min(a.maxY, b.maxY),
    };
}

function isBox({ rings }: Region, around: Bounds): boolean {
    return rings.length === 1 && rings[0]!.length === 8 && cornersOnly(rings[0]!, around);
}

function cornersOnly(ring: Ring, { minX, minY, maxX, maxY }: Bounds): boolean {
    for (let i = 0; i < ring.length; i += 2) {
        if ((ring[i] !== minX && ring[i] !== maxX) || (ring[i + 1] !== minY && ring[i + 1] !== maxY)) return false;
    }
    return true;
}
