import { describe, expect, it } from 'vitest';
import { readSvg } from '../../shared/art/read-svg';
import { bounds } from '../../shared/geometry/measure';

const draw = (root: string, content = '<rect width="50%" height="50%"/>') =>
    `<svg xmlns="http://www.w3.org/2000/svg" ${root}>${content}</svg>`;

describe('the page in millimetres', () => {
    for (const [root, wish, width, height, physical] of [
        ['width="140mm" height="70mm"', {}, 140, 70, true],
        ['width="10cm" height="1in"', {}, 100, 25.4, true],
        ['width="140mm" viewBox="0 0 20 10"', {}, 140, 70, true],
        ['height="70mm" viewBox="0 0 20 10"', {}, 140, 70, true],
        ['width="96" height="48"', {}, 25.4, 12.7, false],
        ['viewBox="0 0 96 48"', {}, 25.4, 12.7, false],
        ['width="100%" height="100%" viewBox="0 0 96 48"', {}, 25.4, 12.7, false],
        ['width="96" height="48"', { width: 100 }, 100, 50, false],
        ['width="96" height="48"', { height: 100 }, 200, 100, false],
        ['width="140mm" height="70mm"', { width: 70, height: 70 }, 70, 70, true],
        ['width="140mm" height="70mm"', { width: -1 }, 140, 70, true],
        ['width="140mm" height="70mm"', { width: Number.NaN, height: Number.POSITIVE_INFINITY }, 140, 70, true],
    ] as const) {
        it(`${root}, wished ${JSON.stringify(wish)}: ${width} x ${height}`, () => {
            const art = readSvg(draw(root), wish);
            expect(art.page.width).toBeCloseTo(width, 9);
            expect(art.page.height).toBeCloseTo(height, 9);
            expect(art.physical).toBe(physical);
            const wished = Object.values(wish).some((side) => side !== undefined);
            expect(art.problems.map(({ kind }) => kind)).toEqual(physical || wished ? [] : ['unsized']);
        });
    }

    it('without size and viewBox reaches as far as what is drawn', () => {
        const art = readSvg(draw('', '<rect x="10" y="20" width="86" height="28"/>'));
        expect(art.page.width).toBeCloseTo(25.4, 9);
        expect(art.page.height).toBeCloseTo(12.7, 9);
    });

    it('with both sides wished for is fitted in without being distorted, or as the file says', () => {
        const square = '<rect width="10" height="10"/>';
        const middle = bounds(readSvg(draw('viewBox="0 0 10 10"', square), { width: 40, height: 20 }).parts[0]!.region)!;
        expect([middle.minX, middle.maxX, middle.minY, middle.maxY]).toEqual([10, 30, 0, 20]);
        const stretched = bounds(
            readSvg(draw('viewBox="0 0 10 10" preserveAspectRatio="none"', square), { width: 40, height: 20 }).parts[0]!.region,
        )!;
        expect([stretched.minX, stretched.maxX, stretched.minY, stretched.maxY]).toEqual([0, 40, 0, 20]);
    });

    it('cuts what reaches over its edge', () => {
        const art = readSvg(
            draw('width="10mm" height="10mm" viewBox="0 0 10 10"', '<rect x="-1e300" y="5" width="1e301" height="1e301"/>'),
        );
        expect(bounds(art.parts[0]!.region)).toEqual({ minX: 0, minY: 5, maxX: 10, maxY: 10 });
    });

    it('may not be larger than anything that could be burnt, nor nothing', () => {
        expect(readSvg(draw('width="1e9mm" height="10mm"')).problems.map(({ kind }) => kind)).toEqual(['too-large']);
        for (const root of ['width="0" height="10"', 'width="-5" height="10"', 'width="1e-320" height="1"']) {
            expect(readSvg(draw(root)).page.width).toBe(0);
        }
    });
});

describe('strokes that do not scale', () => {
    it('are as wide as px of the page, whatever the transform', () => {
        const line =
            '<path d="M0 2h10" stroke="#000" stroke-width="2" vector-effect="non-scaling-stroke" transform="scale(1 3)"/>';
        const art = readSvg(draw('width="96" height="96" viewBox="0 0 10 10"', line));
        const box = bounds(art.parts[0]!.region)!;
        expect(box.maxY - box.minY).toBeCloseTo((2 * 25.4) / 96, 3);
    });
});
