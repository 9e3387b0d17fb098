import Flatbush from 'flatbush';
import { intersect, subtract } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import { type Bounds, emptyRegion, type Region, tangledRegion } from '../../geometry/region';
import type { ArtPart } from '../art';
import { checked, cover, layDown, type Sheet, Tangled, together } from './opaque';

/** Translucent parts with something below that are looked through; the rest count as if they lay on bare wood. */
const mostLooks = 1000;

interface Laid {
    readonly region: Region;
    readonly box: Bounds;
    /** Of the paint itself, and of it on white. */
    readonly own: number;
    readonly onWhite: number;
    readonly opacity: number;
}

/**
 * What looks darker than the threshold once all parts are laid down, the later on top; or
 * `tangledRegion`, if they cross one another too often.
 */
export function darkAt(parts: readonly ArtPart[], threshold: number): Region {
    const laid: Laid[] = [];
    for (const { region, darkness, opacity } of parts) {
        const box = bounds(region);
        if (box !== undefined) laid.push({ region, box, own: darkness / opacity, onWhite: darkness, opacity });
    }
    try {
        return darkOf(withoutNeedlessLooks(laid), threshold, { left: mostLooks });
    } catch (error) {
        if (error instanceof Tangled) return tangledRegion;
        throw error;
    }
}

/** Translucent parts that nothing lies below are as good as opaque ones of the darkness they have on white. */
function withoutNeedlessLooks(laid: readonly Laid[]): readonly Laid[] {
    if (laid.every(({ opacity }) => opacity >= 1)) return laid;
    const index = new Flatbush(laid.length);
    for (const { box } of laid) index.add(box.minX, box.minY, box.maxX, box.maxY);
    index.finish();
    return laid.map((part, at) => {
        if (part.opacity >= 1) return part;
        const { minX, minY, maxX, maxY } = part.box;
        const below = index.search(minX, minY, maxX, maxY, (other) => other < at);
        return below.length > 0 ? part : { ...part, opacity: 1, own: part.onWhite };
    });
}

/**
 * Paint of darkness d and opacity a on top of darkness x looks d·a + x·(1 − a) dark. So under it
 * the threshold t moves to (t − d·a)/(1 − a), and what lies below is asked again at that one.
 */
function darkOf(laid: readonly Laid[], threshold: number, looks: { left: number }): Region {
    if (threshold >= 1) return emptyRegion;
    let dark = emptyRegion;
    let run: Sheet[] = [];
    laid.forEach((part, at) => {
        if (part.opacity >= 1 || looks.left <= 0) {
            run.push({ region: part.region, dark: (part.opacity >= 1 ? part.own : part.onWhite) > threshold });
            return;
        }
        looks.left--;
        dark = cover(dark, layDown(run));
        run = [];
        const moved = (threshold - part.onWhite) / (1 - part.opacity);
        const below = laid.slice(0, at).filter(({ box }) => overlap(box, part.box));
        const seen = moved < 0 ? part.region : checked(intersect(darkOf(below, moved, looks), part.region));
        dark = together([checked(subtract(dark, part.region)), seen]);
    });
    return cover(dark, layDown(run));
}

function overlap(a: Bounds, b: Bounds): boolean {
    return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
