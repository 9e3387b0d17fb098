import { describe, expect, it } from 'vitest';
import { pressFit } from '../../shared/bench/press-fit';
import { type PressHalves, virtualPress } from '../../shared/bench/virtual-press';
import { normalCumulative } from '../../shared/burn/distributions';
import { depthOf } from '../../shared/burn/dose';
import { wallInset, wallOf } from '../../shared/burn/wall';
import { union } from '../../shared/geometry/boolean';
import type { Region } from '../../shared/geometry/region';
import { rectangle } from '../../shared/geometry/shapes';

const law = { threshold: 0.2, energy: 2, fade: 1 };
const sigma = 0.04;
const beam = { law, sigma, passes: 2 };
const pocketDose = 0.74; // 0.54 mm
const veneerDose = 0.9; // 0.7 mm through a veneer of 0.6
const thickness = 0.6;
const film = 0.06;
const seat = depthOf(law, pocketDose, 2) - film;
const pocketWall = wallOf(law, pocketDose, sigma, 2)!;
const veneerWall = wallOf(law, veneerDose, sigma, 2)!;

/** A plain square inlay whose rims stand `clearance` apart, as the plan draws them. */
function square(clearance: number, size = 8): PressHalves {
    const drawn = (by: number): Region => rectangle(-size / 2 - by, -size / 2 - by, size + 2 * by, size + 2 * by);
    const pocket = drawn(clearance / 2 - pocketWall.growth);
    const standing = drawn(-(clearance / 2 - veneerWall.growth));
    return {
        pocket: { ...beam, region: pocket, dose: pocketDose },
        veneer: { ...beam, standing, dose: veneerDose },
        thickness,
        film,
        sanded: 0,
    };
}

const radius = 10;

/** A disc, whose edge runs across the press's cells in every direction. */
function round(clearance: number): PressHalves {
    const disc = (by: number): Region => ({
        rings: [
            Float64Array.from(
                { length: 1440 },
                (_, i) => (radius + by) * (i % 2 === 0 ? Math.cos : Math.sin)((Math.PI * (i >> 1)) / 360),
            ),
        ],
    });
    const { pocket, veneer, ...rest } = square(clearance);
    return {
        ...rest,
        pocket: { ...pocket, region: disc(clearance / 2 - pocketWall.growth) },
        veneer: { ...veneer, standing: disc(-(clearance / 2 - veneerWall.growth)) },
    };
}

/** The same along one edge, from the sums alone: how far in the tightest spot of the wall lets it. */
function alongOneEdge(clearance: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (let x = -0.5; x < 0.5; x += 1e-4) {
        // Drawn edges on either side of x = 0, the pocket's inside towards negative x.
        const pocket = depthOf(law, pocketDose * normalCumulative((clearance / 2 - pocketWall.growth - x) / sigma), 2);
        const veneer = depthOf(law, veneerDose * normalCumulative((x + clearance / 2 - veneerWall.growth) / sigma), 2);
        if (veneer < thickness) least = Math.min(least, pocket + veneer);
    }
    return least;
}

describe('virtual press of a square', () => {
    for (const clearance of [0.02, 0.04, 0.06]) {
        it(`stops where the wall's own sums say, with ${clearance} mm of clearance`, () => {
            const pressed = virtualPress(square(clearance))!;
            expect(pressed.coarse).toBe(false);
            // What is crushed lets it go a little further than the very tightest point.
            expect(Math.abs(pressed.insertion - Math.min(seat, alongOneEdge(clearance)))).toBeLessThan(0.05);
        });
    }
    it('bottoms out on the film with enough clearance, jams without, and more goes deeper than less', () => {
        const depths = [0, 0.03, 0.06, 0.1, 0.2].map((clearance) => virtualPress(square(clearance))!);
        for (const [i, pressed] of depths.slice(1).entries())
            expect(pressed.insertion).toBeGreaterThanOrEqual(depths[i]!.insertion);
        expect(depths[0]!.bottoms).toBe(false);
        expect(depths[0]!.stops.length).toBeGreaterThan(10);
        expect(depths.at(-1)).toMatchObject({ bottoms: true, stops: [] });
        expect(depths.at(-1)!.insertion).toBeCloseTo(seat, 9);
    });
    it('agrees with the fit along one edge: when it reaches the floor, how far it goes before, and the seam that stays', () => {
        const walls = {
            pocket: (depth: number) => wallInset(pocketWall.profile, depth),
            veneer: (depth: number) => wallInset(veneerWall.profile, depth),
        };
        const sanded = 0.1;
        const along = (clearance: number) => pressFit(clearance, { seat, thickness, sanded }, walls);
        const { leastClearance } = along(1);
        for (const part of [0.4, 0.6, 0.8, 1.1, 1.5, 2]) {
            const clearance = leastClearance * part;
            const pressed = virtualPress({ ...round(clearance), sanded })!;
            const fit = along(clearance);
            expect(pressed.bottoms, `${part}`).toBe(fit.bottoms);
            expect(Math.abs(pressed.insertion - fit.insertion), `${part}`).toBeLessThan(0.03);
            if (fit.bottoms) expect(Math.abs(pressed.open / (2 * Math.PI * radius) - fit.seam), `${part}`).toBeLessThan(0.001);
        }
    });
    it('leaves the film as the gap in the middle, and as the volume', () => {
        const pressed = virtualPress(square(0.2))!;
        const { columns, rows } = pressed.cells;
        const middle = pressed.gap[Math.floor(rows / 2) * columns + Math.floor(columns / 2)]!;
        expect(middle).toBeCloseTo(film, 3);
        expect(pressed.gapVolume).toBeGreaterThan(8 * 8 * film * 0.9);
        expect(pressed.gapVolume).toBeLessThan(8 * 8 * film * 1.3);
    });
});

describe('what the fit along one edge does not see', () => {
    it('a slot too narrow for the beam is shallower, and stops the piece', () => {
        // A hair of 0.09 mm across: the pocket's dose does not reach its full depth there.
        const halves = square(0.2);
        const hair = rectangle(3.9, -0.045, 3, 0.09);
        const pocket = union([halves.pocket.region, hair]);
        const standing = union([halves.veneer.standing, rectangle(3.5, -0.2, 3.2, 0.4)]);
        const pressed = virtualPress({
            ...halves,
            pocket: { ...halves.pocket, region: pocket },
            veneer: { ...halves.veneer, standing },
        })!;
        expect(pressed.bottoms).toBe(false);
        expect(pressed.stops[0]!.x).toBeGreaterThan(3.9);
    });
    it('halves that differ do not go in at all', () => {
        const halves = square(0.2);
        const moved = { ...halves, pocket: { ...halves.pocket, region: rectangle(0, -4, 8, 8) } };
        expect(virtualPress(moved)!.insertion).toBeLessThan(0.01);
    });
});

describe('bad figures', () => {
    const halves = square(0.1);
    it('have no answer, and none takes long', () => {
        for (const odd of [
            { ...halves, thickness: Number.NaN },
            { ...halves, veneer: { ...halves.veneer, standing: { rings: [] } } },
            { ...halves, film: -1 },
            { ...halves, pocket: { ...halves.pocket, sigma: 0 } },
            { ...halves, veneer: { ...halves.veneer, dose: 1e308 } },
            { ...halves, veneer: { ...halves.veneer, standing: rectangle(-1e6, -1e6, 2e6, 2e6) } },
        ]) {
            expect(virtualPress(odd)).toBeUndefined();
        }
    });
    it('an empty pocket lets nothing in', () => {
        expect(virtualPress({ ...halves, pocket: { ...halves.pocket, region: { rings: [] } } })!.insertion).toBe(0);
    });
    it('a large piece is coarser, not endless', () => {
        const pressed = virtualPress(square(0.1, 60))!;
        expect(pressed.gap.length).toBeLessThanOrEqual(260_000);
    });
});
