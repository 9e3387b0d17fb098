import { describe, expect, it } from 'vitest';
import type { CouponSheet } from '../../shared/burn/coupon-sheet';
import { kerfRowsOf, kerfWidth } from '../../shared/burn/kerf-width';
import { nowhere } from '../../shared/quantity/where';
import type { Coupon, Laser, Sheet } from '../../shared/recipe/stock';
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

function layOut(cuts: number, sheet = cherry, laser: Laser = shed): CouponSheet {
    const layout = layOutCoupon(sheet, laser, { rungs: 6, cuts });
    if ('problem' in layout) throw new Error(layout.problem);
    return layout;
}

describe('strips among the squares of a coupon', () => {
    const layout = layOut(5);
    const strips = layout.strips!;

    it('go from the gentlest cut to the strongest, numbered on from the squares', () => {
        expect(strips.map(({ number }) => number)).toEqual([7, 8, 9, 10, 11]);
        const energies = strips.map(({ power, speed, passes }) => (power * passes) / speed);
        expect(energies).toEqual(energies.toSorted((a, b) => a - b));
        expect(energies.at(-1)! / energies[0]!).toBeGreaterThan(2);
    });

    it('lie beside the squares and apart from each other, all on the coupon', () => {
        const many = layOut(12);
        const right = Math.max(...many.squares.map(({ x, size }) => x + size));
        for (const [i, a] of many.strips!.entries()) {
            expect(a.x).toBeGreaterThanOrEqual(right + 3);
            expect(a.x + a.length).toBeLessThanOrEqual(many.width);
            expect(a.y + a.drawn).toBeLessThanOrEqual(many.height);
            for (const b of many.strips!.slice(i + 1))
                expect(Math.max(Math.abs(a.x - b.x) - a.length, Math.abs(a.y - b.y) - a.drawn)).toBeGreaterThanOrEqual(3.999);
        }
    });

    it('are cut along their drawn lines by the machine file, last of all and with air', () => {
        const { files } = couponSheets(cherry, shed, layout);
        const text = (path: string): string => files.find((file) => file.path === path)!.text;
        const { comments, moves } = readProgram(text('coupon.ngc'));
        expect(comments.slice(-5)).toEqual(strips.map(({ number }) => expect.stringContaining(`strip ${number}: `)));
        const first = comments.findIndex((comment) => comment.includes('strip 7'));
        expect(moves.filter(({ rapid, s, comments: at }) => at > first && !rapid && s > 0).every(({ air }) => air)).toBe(true);
        const lit = moves.filter(({ rapid, s, comments: at }) => at === first + 1 && !rapid && s > 0);
        const [strip] = strips;
        // The first move leads in from the waste; the others go round the strip as it is drawn.
        const round = lit.slice(1);
        const ys = round.flatMap(({ y0, y1 }) => [y0, y1]);
        expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(strip!.drawn, 3);
        expect(text('coupon.svg')).toContain('<g id="strips"');
        expect(text('coupon.html')).toContain('drawn 6 mm wide');
        expect(text('coupon.csv')).toContain('strip 7 of 6 mm,');
    });

    it('are left out without being asked for, and refused where nothing can be cut', () => {
        expect((layOutCoupon(cherry, shed, {}) as CouponSheet).strips).toBeUndefined();
        const beam: Sheet = { ...cherry, thickness: quantity(80, 'length') };
        expect(layOutCoupon(beam, shed, { cuts: 3 })).toEqual({
            problem: 'shed can hardly cut cherry-6: no strips are laid out.',
        });
        const { thickness: _, ...unmeasured } = cherry;
        expect(layOutCoupon(unmeasured, shed, { cuts: 3 })).toHaveProperty('problem');
    });

    it('caution of flames where the strongest is slow', () => {
        const html = (sheet: CouponSheet): string =>
            couponSheets(cherry, shed, sheet).files.find(({ path }) => path === 'coupon.html')!.text;
        expect(html(layout)).toContain('A slow cut can flame');
        expect(html(layOutCoupon(cherry, shed, {}) as CouponSheet)).not.toContain('A slow cut can flame');
    });
});

describe('a kerf that was measured on strips', () => {
    it('is what the next cut with those settings is taken to be', () => {
        // Strips of a kerf of 0.24 mm on the face and 0.17 mm on the back, read to a hundredth.
        const cut = (speed: number, kerf: number, back: number) => ({
            power: quantity(45, 'power'),
            speed: quantity(speed, 'speed'),
            passes: 1,
            gives: 'through' as const,
            kerf: quantity(kerf, 'length'),
            back: quantity(back, 'length'),
            where: nowhere,
        });
        const coupon: Coupon = {
            sheet: 'cherry-6',
            laser: 'shed',
            burns: [],
            cuts: [cut(7, 0.24, 0.17), cut(5.4, 0.25, 0.18)],
            where: nowhere,
        };
        const width = kerfWidth({ spot: 0.15, threshold: 0.3 }, kerfRowsOf(coupon, shed), { power: 45, speed: 6, passes: 1 });
        expect(width.basis).toBe('measured');
        expect(width.face.value).toBeCloseTo(0.245, 2);
        expect(width.back.value).toBeCloseTo(0.175, 2);
    });
});
