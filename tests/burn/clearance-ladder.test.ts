import { describe, expect, it } from 'vitest';
import { ladderFit } from '../../shared/burn/clearance-ladder';
import type { CouponSheet } from '../../shared/burn/coupon-sheet';
import { kerfRowsOf, kerfWidth } from '../../shared/burn/kerf-width';
import { nowhere } from '../../shared/quantity/where';
import type { Coupon, CutTest, Laser, Sheet } from '../../shared/recipe/stock';
import { couponSheets, layOutCoupon } from '../../shared/sheets/coupon-sheets';
import { readProgram } from '../toolpath/rs274-reader';
import { woodOf as builtWood, quantity, shed } from './stock';

const cherry: Sheet = {
    name: 'cherry-6',
    where: nowhere,
    kind: 'board',
    wood: builtWood(580e-6),
    thickness: quantity(6, 'length', 0.1),
};

const cut = (speed: number, gives: CutTest['gives'], more: Partial<CutTest> = {}): CutTest => ({
    power: quantity(45, 'power'),
    speed: quantity(speed, 'speed'),
    passes: 1,
    gives,
    where: nowhere,
    ...more,
});

/** Comes through at 7 mm/s; a kerf of 0.24 mm on the face and 0.16 mm on the back. */
const measured: Coupon = {
    sheet: 'cherry-6',
    laser: 'shed',
    burns: [],
    cuts: [
        cut(11, 'skin'),
        cut(9, 'skin'),
        cut(7, 'through', { kerf: quantity(0.24, 'length'), back: quantity(0.16, 'length') }),
        cut(5, 'through', { kerf: quantity(0.25, 'length'), back: quantity(0.17, 'length') }),
    ],
    where: nowhere,
};

function layOut(options: Parameters<typeof layOutCoupon>[2], sheet = cherry, laser: Laser = shed): CouponSheet {
    const layout = layOutCoupon(sheet, laser, { rungs: 4, ...options });
    if ('problem' in layout) throw new Error(layout.problem);
    return layout;
}

describe('a clearance ladder among the parts of a coupon', () => {
    const layout = layOut({ cuts: 3, fits: 7, measured });
    const { settings, opening, plugs } = layout.ladder!;

    it('steps evenly over what the kerf may be in the middle of the sheet, numbered on', () => {
        expect(plugs.map(({ number }) => number)).toEqual([8, 9, 10, 11, 12, 13, 14]);
        const steps = plugs.slice(1).map(({ larger }, i) => larger - plugs[i]!.larger);
        for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 9);
        expect(steps[0]).toBeLessThan(0.05);
        // (0.24 + 0.16) / 2 and (0.25 + 0.17) / 2 at two speeds.
        expect(plugs[0]!.larger).toBeLessThan(0.17);
        expect(plugs.at(-1)!.larger).toBeGreaterThan(0.24);
        for (const { length, width, larger } of plugs) {
            expect((length - opening.length) / 2).toBeCloseTo(larger, 9);
            expect((width - opening.width) / 2).toBeCloseTo(larger, 9);
        }
    });

    it('is cut with what surely parts the sheet by the cuts that were tried', () => {
        const energy = ({ power, passes, speed }: typeof settings) => (power * passes) / speed;
        expect(energy(settings)).toBeGreaterThan(45 / 9);
        const harder = { ...measured, cuts: [cut(3, 'skin'), cut(2.5, 'skin'), cut(2, 'through'), cut(1.6, 'through')] };
        expect(energy(layOut({ fits: 7, measured: harder }).ladder!.settings)).toBeGreaterThan(45 / 5);
    });

    it('lies beside squares and strips and apart from each other, all on the coupon', () => {
        const strips = layout.strips!.map(({ x, y, length, drawn }) => ({ x, y, length, width: drawn }));
        const parts = [...strips, opening, ...plugs];
        const right = Math.max(...layout.squares.map(({ x, size }) => x + size));
        for (const [i, a] of parts.entries()) {
            expect(a.x).toBeGreaterThanOrEqual(right + 3);
            expect(a.x + a.length).toBeLessThanOrEqual(layout.width);
            expect(a.y + a.width).toBeLessThanOrEqual(layout.height);
            for (const b of parts.slice(i + 1)) {
                const apart = Math.max(a.x - b.x - b.length, b.x - a.x - a.length, a.y - b.y - b.width, b.y - a.y - a.width);
                expect(apart).toBeGreaterThanOrEqual(3.3);
            }
        }
    });

    it('is cut along its drawn lines, the opening from its inside and first', () => {
        const { files } = couponSheets(cherry, shed, layout);
        const text = (path: string): string => files.find((file) => file.path === path)!.text;
        const { comments, moves } = readProgram(text('coupon.ngc'));
        const first = comments.findIndex((comment) => comment.includes('opening for the plugs'));
        expect(comments.slice(first + 1)).toEqual(plugs.map(({ number }) => expect.stringContaining(`plug ${number}: `)));
        const lit = (at: number) => moves.filter(({ rapid, s, comments: seen }) => seen === at + 1 && !rapid && s > 0);
        const sizeOf = (at: number) => {
            const round = lit(at).slice(1);
            const [xs, ys] = [round.flatMap(({ x0, x1 }) => [x0, x1]), round.flatMap(({ y0, y1 }) => [y0, y1])];
            return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
        };
        expect(sizeOf(first)).toEqual([expect.closeTo(opening.length, 3), expect.closeTo(opening.width, 3)]);
        for (const [i, { length, width }] of plugs.entries())
            expect(sizeOf(first + 1 + i)).toEqual([expect.closeTo(length, 3), expect.closeTo(width, 3)]);
        const [lead, ...edges] = lit(first);
        const inside = edges.flatMap(({ x0, y0 }) => [x0, y0]);
        const [xs, ys] = [inside.filter((_, i) => i % 2 === 0), inside.filter((_, i) => i % 2 === 1)];
        expect(lead!.x0).toBeGreaterThan(Math.min(...xs) - 1e-6);
        expect(lead!.x0).toBeLessThan(Math.max(...xs) + 1e-6);
        expect(lead!.y0).toBeGreaterThan(Math.min(...ys) - 1e-6);
        expect(lead!.y0).toBeLessThan(Math.max(...ys) + 1e-6);
        expect(moves.filter(({ rapid, s, comments: at }) => at > first && !rapid && s > 0).every(({ air }) => air)).toBe(true);
        expect(text('coupon.svg')).toContain('<g id="ladder"');
        expect(text('coupon.html')).toContain('goes in?');
        expect(text('coupon.csv')).toContain(`plug 8 ${plugs[0]!.larger} mm larger,`);
    });

    it('is refused where nothing is surely cut', () => {
        const beam: Sheet = { ...cherry, thickness: quantity(80, 'length') };
        expect(layOutCoupon(beam, shed, { fits: 5 })).toEqual({
            problem: expect.stringContaining('shed does not surely cut cherry-6: no plugs are laid out. Try cuts first'),
        });
        const { thickness: _, ...unmeasured } = cherry;
        expect(layOutCoupon(unmeasured, shed, { fits: 5 })).toHaveProperty('problem');
    });
});

describe('what a clearance ladder found', () => {
    const beam = { spot: 0.15, threshold: 0.3 };
    const kerfAt = (speed: number) => kerfWidth(beam, kerfRowsOf(measured, shed), { power: 45, speed, passes: 1 });
    const middle = (speed: number) => (kerfAt(speed).face.value + kerfAt(speed).back.value) / 2;
    const withFit = (fits: number, speed = 7, gives: CutTest['gives'] = 'through'): Coupon => ({
        ...measured,
        cuts: [...measured.cuts!, cut(speed, gives, { fits: quantity(fits, 'length') })],
    });

    it('holds at its own settings, and moves with the kerf to others', () => {
        expect(ladderFit(withFit(0.18), shed, beam, kerfAt(7))).toBeCloseTo(0.18, 9);
        const slow = ladderFit(withFit(0.18), shed, beam, kerfAt(4))!;
        expect(slow - 0.18).toBeCloseTo(middle(4) - middle(7), 9);
        expect(slow).toBeGreaterThan(0.181);
    });

    it('says nothing without one, nor of cuts that left a skin', () => {
        expect(ladderFit(measured, shed, beam, kerfAt(7))).toBeUndefined();
        expect(ladderFit(withFit(0.18, 7, 'skin'), shed, beam, kerfAt(7))).toBeUndefined();
    });
});
