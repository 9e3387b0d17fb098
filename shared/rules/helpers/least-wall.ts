import type { Sheet } from '../../recipe/stock';

/** Width of a wall as a part of the depth beside it, and the least of all, mm: common practice, no source. */
const partOfDepth = 0.6;
const thinnest = 0.3;
/** Towards a rim or a hole nothing holds the wall from the other side. */
const freeStanding = 1.5;
/** Wood that splits along its rings or crumbles wants more. */
const weaker = { diffuse: 1, 'semi-ring': 1.15, ring: 1.25, softwood: 1.5 } as const;

/** The least wall beside a pocket that stays standing while it is filled, pressed or handled, mm: common practice, no source. */
export function leastWall(depth: number, sheet: Sheet | undefined, beside: 'pocket' | 'rim'): number {
    const wood = weaker[sheet?.wood?.pores ?? 'diffuse'];
    return Math.max(thinnest, partOfDepth * depth) * wood * (beside === 'rim' ? freeStanding : 1);
}

/** Closer than this there is no wall, mm: the width of what chars anyway. */
export const noWall = 0.05;
