/**
 * Average grain in um of the grades that carry a bare number: CAMI, ANSI B74.18 (from memory; a
 * finishing trade's chart, seen, agrees to two microns). The P grades of FEPA 43-1 are built-in stock.
 */
export const camiGrains: ReadonlyMap<number, number> = new Map([
    [80, 190],
    [100, 140],
    [120, 115],
    [150, 92],
    [180, 82],
    [220, 68],
    [240, 53],
    [280, 44],
    [320, 36],
    [360, 28],
    [400, 23],
    [500, 20],
    [600, 16],
]);

/** The CAMI number whose grain comes nearest, by ratio; undefined when none is within a quarter. @param grain mm */
export function nearestCami(grain: number): number | undefined {
    let best: number | undefined;
    let least = Math.log(1.25);
    for (const [grade, size] of camiGrains) {
        const off = Math.abs(Math.log((grain * 1000) / size));
        if (!(off <= least)) continue;
        least = off;
        best = grade;
    }
    return best;
}
