import { describe, expect, it } from 'vitest';
import { pressFit as fitOf } from '../../shared/bench/press-fit';
import { subtract } from '../../shared/geometry/boolean';
import { area } from '../../shared/geometry/measure';
import type { Region } from '../../shared/geometry/region';

const degrees = Math.PI / 180;

/** Walls that lean alike all the way down. */
function pressFit(clearance: number, seat: number, { pocket, veneer }: { pocket: number; veneer: number }, sanded = 0) {
    const leaning = (lean: number) => (depth: number) => depth * Math.tan(lean);
    return fitOf(clearance, { seat, sanded }, { pocket: leaning(pocket), veneer: leaning(veneer) });
}

/** Cross-sections, y down from the face: the board around a pocket 20 mm wide at its mouth, and the veneer pushed in by h, narrow face down. */
function pocket(lean: number, depth: number): Region {
    const inset = depth * Math.tan(lean);
    return enlarged([-10, -9, 10, -9, 10, 0, 10 - inset, depth, -10 + inset, depth, -10, 0]);
}

/** A hundred times as large, so that the polygon grid of 0.1 um is far below what is looked for. */
function enlarged(points: number[]): Region {
    return { rings: [Float64Array.from(points, (value) => value * 100)] };
}

/** Only as much of the veneer as has gone in: what stands above the face is free of the board. */
function veneer(lean: number, clearance: number, h: number): Region {
    const narrow = 10 - clearance;
    const wide = narrow + h * Math.tan(lean);
    return enlarged([-wide, 0, wide, 0, narrow, h, -narrow, h]);
}

/** How far the veneer goes in before it meets a wall or the floor, by trying: an independent answer. */
function tried(clearance: number, seat: number, leans: { pocket: number; veneer: number }): number {
    const hole = pocket(leans.pocket, seat);
    // Touching walls overlap by what the polygon grid rounds.
    const fits = (h: number): boolean => area(subtract(veneer(leans.veneer, clearance, h), hole)) < 0.02;
    if (fits(seat)) return seat;
    let low = 0;
    let high = seat;
    for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2;
        if (fits(middle)) low = middle;
        else high = middle;
    }
    return low;
}

describe('press fit against two trapezia', () => {
    for (const [clearance, seat, pocketLean, veneerLean] of [
        [0.1, 0.5, 6, 6],
        [0.03, 0.5, 6, 6],
        [0.03, 0.5, 9, 3],
        [0.03, 0.5, 3, 9],
        [0.2, 2, 8, 8],
        [0, 0.5, 0, 0],
    ] as const) {
        it(`clearance ${clearance}, seat ${seat}, leans ${pocketLean} and ${veneerLean} deg`, () => {
            const leans = { pocket: pocketLean * degrees, veneer: veneerLean * degrees };
            expect(Math.abs(pressFit(clearance, seat, leans).insertion - tried(clearance, seat, leans))).toBeLessThan(0.005);
        });
    }
    it('the seam is the gap between the two outlines at the face', () => {
        const lean = 7 * degrees;
        const { insertion, seam, bottoms } = pressFit(0.12, 0.5, { pocket: lean, veneer: lean });
        const halfWidthAtFace = 10 - 0.12 + insertion * Math.tan(lean);
        expect(bottoms).toBe(true);
        expect(seam).toBeCloseTo(10 - halfWidthAtFace, 12);
    });
});

describe('press fit by its formula', () => {
    it('is seen at the level that sanding comes down to', () => {
        const leans = { pocket: 9 * degrees, veneer: 4 * degrees };
        const [fresh, sanded] = [pressFit(0.12, 0.5, leans), pressFit(0.12, 0.5, leans, 0.2)];
        // At 0.2 mm below the face the pocket has closed in by more than the veneer has.
        const wall = 10 - 0.2 * Math.tan(leans.pocket);
        const veneerThere = 10 - 0.12 + (0.5 - 0.2) * Math.tan(leans.veneer);
        expect(sanded.seam).toBeCloseTo(wall - veneerThere, 12);
        expect(sanded.seam).toBeLessThan(fresh.seam);
        expect(0.12 - sanded.closing).toBeCloseTo(sanded.seam, 12);
        expect(pressFit(0.12, 0.5, leans, 3).seam).toBeCloseTo(pressFit(0.12, 0.5, leans, 0.5).seam, 12);
    });
    it('bottoms out with just the least clearance and jams with a hair less', () => {
        const leans = { pocket: 0.1, veneer: 0.1 };
        const least = pressFit(1, 0.5, leans).leastClearance;
        expect(least).toBeCloseTo(0.5 * Math.tan(0.1), 12);
        expect(pressFit(least, 0.5, leans).bottoms).toBe(true);
        expect(pressFit(least - 1e-6, 0.5, leans).bottoms).toBe(false);
        expect(pressFit(least / 2, 0.5, leans).insertion).toBeCloseTo(0.25, 9);
    });
    it('upright walls never jam and keep their gap', () => {
        expect(pressFit(0.05, 3, { pocket: 0, veneer: 0 })).toEqual({
            insertion: 3,
            bottoms: true,
            seam: 0.05,
            closing: 0,
            leastClearance: 0,
        });
    });
    it('figures that are none come out as none', () => {
        expect(pressFit(-1, -1, { pocket: 0, veneer: 0 })).toEqual({
            insertion: 0,
            bottoms: true,
            seam: 0,
            closing: 0,
            leastClearance: 0,
        });
    });
});
