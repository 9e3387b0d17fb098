import { describe, expect, it } from 'vitest';
import { centreOf } from '../../shared/art/shape/arc';
import { chordAngle } from '../../shared/geometry/shapes';

const degrees = 180 / Math.PI;

/**
 * W3C, Scalable Vector Graphics (SVG) 1.1 (Second Edition), appendix F.6 "Elliptical arc
 * implementation notes": from end points to the centre by F.6.5.1 to F.6.5.6, radii that are too
 * small by F.6.6.2. The numbers are worked out from those formulae elsewhere.
 */
describe('arc from end points to centre', () => {
    const cases = [
        { from: [0, 0], r: [5, 5], flags: [0, 1], to: [5, 5], centre: [0, 5], start: -90, sweep: 90 },
        { from: [0, 0], r: [5, 5], flags: [1, 0], to: [5, 5], centre: [0, 5], start: -90, sweep: -270 },
        {
            from: [10, 20],
            r: [30, 15],
            flags: [0, 1],
            to: [50, 30],
            centre: [21.055728, 33.944272],
            start: -111.624634,
            sweep: 96.37937,
        },
        // Radii of 1 cannot reach over 10: they grow to 5.
        { from: [0, 0], r: [1, 1], flags: [0, 1], to: [10, 0], centre: [5, 0], start: 180, sweep: 180, grown: [5, 5] },
        // The pie of section 8.3.8: M300,200 h-150 a150,150 0 1,0 150,-150 z (section and numbers from memory).
        { from: [150, 200], r: [150, 150], flags: [1, 0], to: [300, 50], centre: [300, 200], start: 180, sweep: -270 },
    ] as const;
    for (const { from, r, flags, to, centre, start, sweep, ...rest } of cases) {
        it(`(${from}) to (${to}) with radii ${r} and flags ${flags}`, () => {
            const arc = centreOf(from[0], from[1], r[0], r[1], 0, flags[0] !== 0, flags[1] !== 0, to[0], to[1])!;
            expect(arc.cx).toBeCloseTo(centre[0], 5);
            expect(arc.cy).toBeCloseTo(centre[1], 5);
            expect(Math.cos(arc.start)).toBeCloseTo(Math.cos(start / degrees), 6);
            expect(Math.sin(arc.start)).toBeCloseTo(Math.sin(start / degrees), 6);
            expect(arc.sweep * degrees).toBeCloseTo(sweep, 5);
            const grown = 'grown' in rest ? rest.grown : r;
            expect(arc.rx).toBeCloseTo(grown[0], 9);
            expect(arc.ry).toBeCloseTo(grown[1], 9);
        });
    }

    it('is a straight line where a radius is zero, and nothing where there is no distance (F.6.2)', () => {
        expect(centreOf(0, 0, 0, 5, 0, false, true, 5, 5)).toBeUndefined();
        expect(centreOf(3, 3, 5, 5, 0, true, true, 3, 3)).toBeUndefined();
    });
});

/** The sagitta of a chord: r(1 − cos(Δθ/2)), so Δθ = 2 arccos(1 − tolerance/r). Textbook geometry. */
describe('chords of a circle within a tolerance', () => {
    for (const [radius, tolerance, turn, chords] of [
        [10, 0.05, 360, 32],
        [10, 0.01, 90, 18],
        [25, 0.02, 360, 79],
    ] as const) {
        it(`${turn} degrees of radius ${radius} within ${tolerance} take ${chords}`, () => {
            expect(Math.ceil(turn / degrees / chordAngle(radius, tolerance))).toBe(chords);
        });
    }
});
