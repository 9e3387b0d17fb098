import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Art, ArtPart } from '../../shared/art/art';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area, contains } from '../../shared/geometry/measure';
import { rectangle } from '../../shared/geometry/shapes';

const read = (content: string) => readSvg(`<svg width="100mm" height="100mm" viewBox="0 0 100 100">${content}</svg>`);

describe('what burns', () => {
    const tray = read(
        '<g id="tray" class="wood"><rect id="a" width="40" height="40"/><rect id="b" class="hole x" x="10" y="10" width="20" height="20" fill="#fff"/></g><rect class="x" x="50" width="10" height="10" fill="#666"/>',
    );
    for (const [picks, expected] of [
        [[], 1600 - 400 + 100],
        [['#tray'], 1200],
        [['#a'], 1600],
        [['#b'], 0],
        [['.x'], 100],
        [['#a', '.hole'], 1200],
        [['.wood', '.x'], 1300],
        [['#nobody'], 0],
        [['a'], 0],
    ] as const) {
        it(`picking ${picks.join(' ') || 'nothing'} gives ${expected} mm2`, () =>
            expect(area(painted(tray, picks))).toBeCloseTo(expected, 6));
    }

    it('leaves out of what is picked, or of all, what stands behind `but`', () => {
        expect(area(painted(tray, ['.wood', '.x'], 0.5, ['.hole']))).toBeCloseTo(1700, 6);
        expect(area(painted(tray, [], 0.5, ['#tray']))).toBeCloseTo(100, 6);
    });
    it('is what is darker than the threshold', () => {
        const greys = read('<rect width="10" height="10" fill="#808080"/><rect x="20" width="10" height="10" fill="#404040"/>');
        expect([0.4, 0.5, 0.7, 0.8].map((threshold) => Math.round(area(painted(greys, [], threshold))))).toEqual([
            200, 100, 100, 0,
        ]);
    });

    it('paints thousands of parts in a time that does not grow with their square', () => {
        const parts: ArtPart[] = Array.from({ length: 4000 }, (_, i) =>
            part((i * 7919) % 90, (i * 104_729) % 90, 10, 10, i % 2, 1),
        );
        const started = performance.now();
        const region = painted({ ...tray, parts }, []);
        expect(area(region)).toBeGreaterThan(100);
        expect(performance.now() - started).toBeLessThan(20_000);
    });

    it('a heap of the same part is that part', () => {
        const parts: ArtPart[] = Array.from({ length: 3000 }, () => part(10, 10, 30, 20, 1, 1));
        expect(area(painted({ ...tray, parts }, []))).toBeCloseTo(600, 9);
    });
});

function part(x: number, y: number, width: number, height: number, darkness: number, opacity: number): ArtPart {
    return {
        ids: [],
        classes: [],
        darkness: darkness * opacity,
        opacity,
        colour: '#000000',
        region: rectangle(x, y, width, height),
        open: false,
    };
}

/** Light through a stack of paints, one after the other: the definition of "over" (T. Porter and T. Duff, 1984). */
function darknessAt(parts: readonly ArtPart[], x: number, y: number): number {
    let darkness = 0;
    for (const { region, darkness: onWhite, opacity } of parts) {
        // Exactly between two of the 255 steps of a screen the upper one is taken (compose/nodes.ts).
        const seen = opacity === 0.5 ? 128 / 255 : opacity;
        if (contains(region, x, y)) darkness = (onWhite / opacity) * seen + darkness * (1 - seen);
    }
    return darkness;
}

describe('paint that shows through', () => {
    const side = fc.integer({ min: 0, max: 9 });
    const anyPart = fc
        .tuple(side, side, side, side, fc.constantFrom(0, 0.3, 0.6, 1), fc.constantFrom(0.25, 0.5, 0.8, 1))
        .map(([x, y, width, height, darkness, opacity]) => part(x, y, width + 1, height + 1, darkness, opacity));

    /** Half strength in the middle of it: 0.7094 as a sum of 0.5, and 0.7105 of 128 in 255. */
    const tie = [
        [0.3, 1],
        [0, 0.25],
        [1, 0.5],
        [1, 0.25],
    ].map(([darkness, opacity]) => part(0, 0, 1, 1, darkness!, opacity!));

    it('burns where the stack looks dark, at every place', () => {
        fc.assert(
            fc.property(fc.array(anyPart, { maxLength: 9 }), fc.constantFrom(0.2, 0.47, 0.71), (parts, threshold) => {
                const art: Art = { kind: 'vector', page: { width: 20, height: 20 }, physical: true, parts, problems: [] };
                const region = painted(art, [], threshold);
                for (let x = 0.5; x < 20; x++) {
                    for (let y = 0.5; y < 20; y++) {
                        expect(contains(region, x, y)).toBe(darknessAt(parts, x, y) > threshold);
                    }
                }
            }),
            { numRuns: 60, examples: [[tie, 0.71]] },
        );
    });
});
