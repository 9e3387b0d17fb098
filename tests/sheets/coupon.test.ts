import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import type { CouponOptions, CouponSheet } from '../../shared/burn/coupon-sheet';
import { nowhere } from '../../shared/quantity/where';
import type { Laser, Sheet } from '../../shared/recipe/stock';
import { couponSheets, layOutCoupon } from '../../shared/sheets/coupon-sheets';
import { woodOf as builtWood, quantity, shed } from '../burn/stock';
import { readProgram } from '../toolpath/rs274-reader';

const board: Sheet = {
    name: 'walnut-12',
    where: nowhere,
    kind: 'board',
    wood: builtWood(600e-6),
    thickness: quantity(12, 'length', 0.3),
};

function layOut(options: CouponOptions = {}, sheet: Sheet = board, laser: Laser = shed): CouponSheet {
    const layout = layOutCoupon(sheet, laser, options);
    if ('problem' in layout) throw new Error(layout.problem);
    return layout;
}

function problem(options: CouponOptions = {}, sheet: Sheet = board, laser: Laser = shed): string {
    const layout = layOutCoupon(sheet, laser, options);
    return 'problem' in layout ? layout.problem : '';
}

function files(layout: CouponSheet, sheet: Sheet = board, laser: Laser = shed): Record<string, string> {
    const sheets = couponSheets(sheet, laser, layout);
    expect(sheets.problems).toEqual([]);
    return Object.fromEntries(sheets.files.map((file) => [file.path, file.text]));
}

interface Element {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
}

function elements(svg: string): Element[] {
    const found: Element[] = [];
    const parser = new SaxesParser();
    parser.on('opentag', ({ name, attributes }) => found.push({ name, attributes: attributes as Record<string, string> }));
    parser.on('error', (error) => {
        throw error;
    });
    parser.write(svg).close();
    return found;
}

describe('a coupon of a laser with little overtravel', () => {
    const short = { ...shed, overtravel: quantity(3, 'length') };
    const reached = Math.sqrt(2 * shed.acceleration!.value * 3);
    it('is burnt no faster than the head gets over it', () => {
        expect(Math.max(...layOut({}, board, short).squares.map(({ speed }) => speed))).toBeLessThanOrEqual(reached);
        expect(Math.max(...layOut().squares.map(({ speed }) => speed))).toBeGreaterThan(reached);
    });
    it('says so where faster is asked for', () => {
        const problem = layOutCoupon(board, short, { speeds: [400, 100] });
        expect(problem).toEqual({
            problem: '400 mm/s needs more overtravel than shed has: 189 mm/s is the most that its head reaches over it.',
        });
    });
});

describe('the drawing of a coupon', () => {
    const layout = layOut({ powers: [0.2, 0.4], speeds: [300, 100], pitch: 0.1, passes: 1 });
    const all = elements(files(layout)['coupon.svg']!);

    it('has its real size in millimetres', () => {
        const { width, height, viewBox } = all[0]!.attributes;
        expect([width, height]).toEqual([`${layout.width}mm`, `${layout.height}mm`]);
        expect(viewBox).toBe(`0 0 ${layout.width} ${layout.height}`);
    });
    it('has each square where the machine file burns it', () => {
        const rects = all.filter(({ name }) => name === 'rect').map(({ attributes }) => attributes);
        expect(rects.map(({ x, y, width }) => [Number(x), Number(y), Number(width)])).toEqual(
            layout.squares.map((square) => [square.x, square.y, square.size]),
        );
        const burnt = readProgram(files(layout)['coupon.ngc']!).moves.filter((move) => !move.rapid && move.s > 0);
        for (const { x, y } of rects) {
            const inside = burnt.filter(
                (move) =>
                    Math.min(move.x0, move.x1) > Number(x) - 0.01 &&
                    Math.max(move.x0, move.x1) < Number(x) + 8.01 &&
                    layout.height - move.y0 > Number(y) &&
                    layout.height - move.y0 < Number(y) + 8,
            );
            expect(inside).toHaveLength(80);
        }
    });
    it('has numbers as strokes, not as text', () => {
        expect(all.some(({ name }) => name === 'text')).toBe(false);
        const numbers = all.find(({ attributes }) => attributes.id === 'numbers')!.attributes;
        expect(numbers.fill).toBe('none');
        expect(numbers.d!.match(/M/g)).toHaveLength(layout.labels.length);
    });
});

describe('the tables of a coupon', () => {
    const layout = layOut({ powers: [0.2, 0.4], speeds: [300, 100], pitch: 0.1 });
    it('have a row for each square with a depth to fill in', () => {
        const rows = files(layout)['coupon.csv']!.trim().split('\r\n');
        expect(rows).toHaveLength(1 + layout.squares.length);
        expect(rows[0]).toMatch(/measured mm$/);
        expect(rows[1]).toMatch(/^1,20,9,300,0.1,1,.*,$/);
        expect(rows.at(-1)).toMatch(/^6,20,9,100,0.1,3,.*,$/);
    });
    it('are printed with the cautions: number, settings, and a box with the guess in grey', () => {
        const page = files(layout)['coupon.html']!;
        expect(page).toContain('never leave the laser running alone');
        const rows = [...page.matchAll(/<tr><th scope="row">(\d+)<\/th>(.*?)<td class="measured">(.*?)<\/td><\/tr>/g)];
        expect(rows.map(([, number]) => Number(number))).toEqual(layout.squares.map(({ number }) => number));
        expect(
            rows.map(([, , settings]) =>
                settings!
                    .replaceAll(/<\/?td>/g, ' ')
                    .replaceAll(/ +/g, ' ')
                    .trim(),
            ),
        ).toEqual(['20 % 300 mm/s', '40 % 300 mm/s', '20 % 100 mm/s', '40 % 100 mm/s', '40 % 300 mm/s × 3', '20 % 100 mm/s × 3']);
        expect(rows.map(([, , , guess]) => Number(guess))).toEqual(
            layout.squares.map(({ expected }) => Number(expected!.value.toFixed(2))),
        );
    });
    it('hold names as text', () => {
        const named = { ...board, name: 'w<b>"&' };
        const page = files(layOut({}, named), named)['coupon.html']!;
        expect(page).not.toContain('<b>');
        expect(page).toContain('w&#60;b&#62;');
    });
});

describe('the machine file of a coupon', () => {
    it('keeps to the laser’s own overtravel', () => {
        const laser = { ...shed, overtravel: quantity(9, 'length') };
        const layout = layOut({ powers: [0.5], speeds: [300] }, board, laser);
        const furthest = (machine: Laser) =>
            Math.max(...readProgram(files(layout, board, machine)['coupon.ngc']!).moves.map((move) => move.x1));
        // Where it says none, 300 mm/s want 300² / (2 · 6000) = 7.5 mm to get going.
        expect(furthest(laser) - furthest(shed)).toBeCloseTo(9 - 7.5, 3);
    });
});

describe('what a coupon may ask for', () => {
    it('is no deeper than a veneer is thick, all passes counted', () => {
        const veneer: Sheet = { ...board, kind: 'veneer', thickness: quantity(0.6, 'length', 0.05) };
        const deepest = (layout: CouponSheet) => Math.max(...layout.squares.map((square) => square.expected!.value));
        expect(deepest(layOut({}, veneer))).toBeLessThan(0.55);
        expect(deepest(layOut({}, veneer))).toBeGreaterThan(0.45);
        expect(deepest(layOut())).toBeGreaterThan(1.15);
    });
    it('is within the machine', () => {
        const weak = { ...shed, leastPower: quantity(0.3, 'ratio') };
        expect(problem({ powers: [1.2] })).toBe('120 % is more than shed has.');
        expect(problem({ powers: [0.2] }, board, weak)).toBe('20 % is less than shed can hold (30 %).');
        expect(Math.min(...layOut({}, board, weak).squares.map((square) => square.powerRatio))).toBeGreaterThanOrEqual(0.3);
        expect(problem({ speeds: [900] })).toBe('900 mm/s is faster than shed moves (600 mm/s).');
        const { power: _, ...unknown } = shed;
        expect(problem({}, board, unknown)).toBe('The power of shed is not known.');
        const size = { width: quantity(30, 'length'), height: quantity(30, 'length'), where: nowhere };
        expect(problem({}, board, { ...shed, field: size })).toContain('more than the field of shed');
    });
    it('is nothing that must not be burnt', () => {
        expect(problem({}, { ...board, name: 'pvc-3' })).toContain('hydrogen chloride');
    });
    it.each([Number.NaN, 0, -1, 1e308, Number.POSITIVE_INFINITY])('is a number a machine can have: %d', (odd) => {
        expect(problem({ pitch: odd })).not.toBe('');
        expect(problem({ powers: [odd] })).not.toBe('');
        expect(problem({ speeds: [odd] })).not.toBe('');
    });
});
