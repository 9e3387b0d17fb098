import Flatbush from 'flatbush';
import { subtract, union } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import { emptyRegion, type Region, tangledRegion } from '../../geometry/region';

/** A region that hides what lies below it, with what it is told from others by, such as its darkness. */
export interface Sheet {
    readonly region: Region;
    readonly key: number;
}

/** What a run of sheets shows of each key: regions that do not overlap. */
export type Layer = ReadonlyMap<number, Region>;

/** Fewer regions than this are no burden however they lie. */
const fewRegions = 32;
const manyOverlaps = 32;

/** Thrown where regions are too tangled to be combined, and caught where the whole answer is given. */
export class Tangled extends Error {}

/**
 * Lays the sheets from `from` to before `to` down, the later on top. Halving the run keeps the
 * work near linear, where one sheet after the other would cost its square.
 */
export function layDown(sheets: readonly Sheet[], from = 0, to = sheets.length): Layer {
    if (to - from <= 0) return new Map();
    const run = sheets.slice(from, to);
    const { key } = run[0]!;
    if (run.every((sheet) => sheet.key === key)) return new Map([[key, together(run.map(({ region }) => region))]]);
    const middle = (from + to) >> 1;
    const below = layDown(sheets, from, middle);
    const above = layDown(sheets, middle, to);
    const shown = new Map<number, Region>();
    for (const each of new Set([...below.keys(), ...above.keys()])) {
        const over = above.get(each) ?? emptyRegion;
        const under = below.get(each);
        const others = [...above].flatMap(([other, { rings }]) => (other === each ? [] : rings));
        shown.set(each, under === undefined ? over : together([checked(subtract(under, { rings: others })), over]));
    }
    return shown;
}

/** The union; where many regions lie on top of one another in halves, which by themselves come down to little. */
export function together(regions: readonly Region[]): Region {
    if (regions.length <= 2 || !isHeaped(regions)) {
        const whole = union(regions);
        if (whole !== tangledRegion) return whole;
        if (regions.length <= 2) throw new Tangled();
    }
    const middle = regions.length >> 1;
    return together([together(regions.slice(0, middle)), together(regions.slice(middle))]);
}

/** Whether their boxes overlap so often that all of them at once would be slow. */
function isHeaped(regions: readonly Region[]): boolean {
    if (regions.length < fewRegions) return false;
    const boxes = regions.map(bounds).filter((box) => box !== undefined);
    const index = new Flatbush(Math.max(1, boxes.length));
    for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
    if (boxes.length === 0) return false;
    index.finish();
    let left = manyOverlaps * boxes.length;
    for (const { minX, minY, maxX, maxY } of boxes) {
        if (left <= 0) return true;
        index.search(minX, minY, maxX, maxY, () => --left < 0);
    }
    return left <= 0;
}

export function checked(region: Region): Region {
    if (region === tangledRegion) throw new Tangled();
    return region;
}
