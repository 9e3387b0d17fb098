import type { Sheet } from '../../recipe/stock';

/** Width of a wall as a part of the depth beside it, and the least of all, mm. @commonPractice */
const partOfDepth = 0.6;
const thinnest = 0.3;
/** Towards a rim or a hole nothing holds the wall from the other side. */
const freeStanding = 1.5;
/** Wood that splits along its rings or crumbles wants more. */
const weaker = { diffuse: 1, 'semi-ring': 1.15, ring: 1.25, softwood: 1.5 } as const;

/** The least wall beside a pocket that stays standing while it is filled, pressed or handled, mm. @commonPractice */
export function leastWall(depth: number, sheet: Sheet | undefined, beside: 'pocket' | 'rim'): number {
    const wood = weaker[sheet?.wood?.pores ?? 'diffuse'];
    return Math.max(thinnest, partOfDepth * depth) * wood * (beside === 'rim' ? freeStanding : 1);
}

/** Width of a bridge between two cuts as a part of the board's thickness, and the least of all, mm. @commonPractice */
const partOfThickness = 0.2;
const thinnestBridge = 0.8;

/** The least wood between two cuts that go through, such as a hole and an outline, mm. @commonPractice */
export function leastBridge(thickness: number, sheet: Sheet | undefined): number {
    return Math.max(thinnestBridge, partOfThickness * thickness) * weaker[sheet?.wood?.pores ?? 'diffuse'];
}

/** Closer than this there is no wall, mm: the width of what chars anyway. */
export const noWall = 0.05;
