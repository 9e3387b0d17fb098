import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutPiece, sheetYield } from '../../shared/bench/sheet-yield';

const blank = (width: number, height: number, count: number, grain?: 'width' | 'height'): CutPiece => ({
    name: `${width}x${height}`,
    width,
    height,
    count,
    ...(grain === undefined ? {} : { grain }),
});

describe('blanks out of sheets', () => {
    it('counts what a saw makes of a board', () => {
        const yielded = sheetYield({ width: 1200, height: 210 }, [blank(300, 200, 4, 'width')], 3)!;
        // Three with two cuts of 3 mm between them take 906 mm; a fourth would need 1209.
        expect(yielded.layout.map((sheet) => sheet.length)).toEqual([3, 1]);
        expect(yielded.sheets).toBe(2);
        expect(yielded.used).toBeCloseTo((4 * 300 * 200) / (2 * 1200 * 210), 9);
    });
    it('loses a row to the width of the cut', () => {
        const six = [blank(152.4, 101.6, 8, 'width')];
        expect(sheetYield({ width: 609.6, height: 203.2 }, six, 0)!.sheets).toBe(1);
        expect(sheetYield({ width: 609.6, height: 203.2 }, six, 3)!.sheets).toBe(3);
    });
    it('keeps the grain along the sheet, though turned pieces would fit more often', () => {
        const sheet = { width: 1000, height: 100 };
        expect(sheetYield(sheet, [blank(100, 200, 5, 'height')], 0)!.layout[0]![0]).toMatchObject({ width: 200, height: 100 });
        expect(sheetYield(sheet, [blank(100, 200, 5, 'width')], 0)).toMatchObject({ sheets: 0, tooLarge: ['100x200'] });
        expect(sheetYield(sheet, [blank(100, 200, 5)], 0)!.sheets).toBe(1);
    });
    it('turns a blank without grain beside one that has some', () => {
        const both = [blank(900, 100, 1, 'width'), blank(100, 200, 5)];
        const { sheets, layout, tooLarge } = sheetYield({ width: 1000, height: 100 }, both, 0)!;
        expect([sheets, tooLarge]).toEqual([2, []]);
        expect(layout.flat().filter(({ name }) => name === '100x200')).toEqual(
            Array.from({ length: 5 }, () => expect.objectContaining({ width: 200, height: 100 })),
        );
    });
    it('scales a long run up instead of laying out every piece', () => {
        const yielded = sheetYield({ width: 1200, height: 210 }, [blank(300, 200, 30_000, 'width')], 3)!;
        expect(yielded).toMatchObject({ scaled: true, sheets: 10_000 });
        expect(yielded.layout.flat().length).toBeLessThanOrEqual(61);
    });
    it('has no answer for a sheet without a size, and leaves out what is no blank', () => {
        expect(sheetYield({ width: Number.NaN, height: 100 }, [], 3)).toBeUndefined();
        expect(sheetYield({ width: 1e308, height: 100 }, [], 3)).toBeUndefined();
        expect(sheetYield({ width: 100, height: 100 }, [blank(-5, 1e308, 3), blank(Number.NaN, 5, 1)], 3)!.sheets).toBe(0);
    });
    it('lays pieces inside the sheet, a cut apart, and all of them', () => {
        const piece = fc.record({
            width: fc.integer({ min: 20, max: 300 }),
            height: fc.integer({ min: 20, max: 180 }),
            count: fc.integer({ min: 1, max: 8 }),
        });
        fc.assert(
            fc.property(fc.array(piece, { minLength: 1, maxLength: 4 }), fc.integer({ min: 0, max: 5 }), (pieces, cut) => {
                const kinds = pieces.map(
                    ({ width, height, count }, i): CutPiece => ({ ...blank(width, height, count, 'width'), name: `${i}` }),
                );
                const { layout, tooLarge } = sheetYield({ width: 600, height: 400 }, kinds, cut)!;
                expect(tooLarge).toEqual([]);
                for (const [i, kind] of kinds.entries()) {
                    expect(layout.flat().filter((laid) => laid.name === `${i}`)).toHaveLength(kind.count);
                }
                for (const sheet of layout) {
                    for (const [i, a] of sheet.entries()) {
                        expect(a.x >= 0 && a.y >= 0 && a.x + a.width <= 600 + 1e-9 && a.y + a.height <= 400 + 1e-9).toBe(true);
                        for (const b of sheet.slice(i + 1)) {
                            const apart = Math.max(
                                b.x - a.x - a.width,
                                a.x - b.x - b.width,
                                b.y - a.y - a.height,
                                a.y - b.y - b.height,
                            );
                            expect(apart).toBeGreaterThanOrEqual(cut - 1e-9);
                        }
                    }
                }
            }),
            { numRuns: 60 },
        );
    });
});
