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

/**
 * Median grain in um of the P grits: FEPA 43-1 / ISO 6344 (exact figures from memory; a rounded list,
 * seen, agrees). The built-in stock holds the same; a test keeps them together.
 */
export const fepaGrains: ReadonlyMap<number, number> = new Map([
    [40, 425],
    [50, 336],
    [60, 269],
    [80, 201],
    [100, 162],
    [120, 125],
    [150, 100],
    [180, 82],
    [220, 68],
    [240, 58.5],
    [280, 52.2],
    [320, 46.2],
    [360, 40.5],
    [400, 35],
    [500, 30.2],
    [600, 25.8],
    [800, 21.8],
    [1000, 18.3],
    [1200, 15.3],
]);
