/**
 * Veneer in fractions of an inch, and what a glue leaves in the joint. Thicknesses and films are computed; 0.5 to 0.6 mm for sliced
 * veneer was seen in an industry's product declaration, and 1/50 in as the least of a door's face in a quality standard's copy.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { slower } from '../../shared/rules/inlay/open-time';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';

describe('veneer as it is sold', () => {
    it.each([
        ['1/50', 0.508],
        ['1/42', 0.6048],
        ['1/40', 0.635],
        ['1/36', 0.7056],
        ['1/28', 0.9071],
    ])('%s in', async (written, mm) => {
        const plan = await planOf(inlayRecipe().replace('thickness 0.6 mm +- 0.02 mm', `thickness ${written} in +- 0.03 mm`));
        const leaf = plan.blanks.find(({ name }) => name === 'bird')?.thickness;
        expect(leaf?.value).toBeCloseTo(mm, 4);
        expect(leaf!.value - leaf!.low).toBeCloseTo(0.03, 9);
    });
});

const glues = readFileSync(new URL('../../language/stock/glues.kerf', import.meta.url), 'utf8');
const figures = (glue: string, key: string): number[] =>
    [...(new RegExp(`^glue ${glue} \\{[^}]*?^  ${key} (.*)`, 'm').exec(glues)?.[1] ?? '').matchAll(/[\d.]+/g)]
        .map(Number)
        .filter((n) => n > 0);

describe('what a glue leaves in the joint', () => {
    /** mm of film from a spread in g/m2, a part of it solid, and the density of that in g/cm3. */
    const film = (spread: number, solids: number, density: number): number => (spread * solids) / density / 1000;

    // No outside witness: film, spread, solids and density are of the same stock and the same memory, and only have to agree.
    it('the built-in film is that of the middle of its spread, and its tolerance that of the ends', () => {
        const [least, most] = figures('wood-glue', 'spread');
        const [thick, tolerance] = figures('wood-glue', 'film');
        expect(thick).toBeCloseTo(film((least! + most!) / 2, 0.5, 1.2), 2);
        expect(thick! - tolerance!).toBeLessThanOrEqual(film(least!, 0.5, 1.2));
        expect(thick! + tolerance!).toBeGreaterThanOrEqual(film(most!, 0.5, 1.2));
    });
    it('2 g of instant glue make 132 bonds of a square inch at one mil (Pizzi and Mittal, seen): 23.5 g/m2', () => {
        const squareInch = 25.4 ** 2 / 1e6;
        expect(2 / (132 * squareInch)).toBeCloseTo(figures('cyanoacrylate', 'spread')[0]!, 1);
        // At 1 mil that is 0.925 g/cm3; the glue itself is denser, the rest is lost.
        const density = 2 / (132 * squareInch) / 25.4;
        expect(density).toBeCloseTo(0.925, 3);
        expect(density).toBeLessThan(figures('cyanoacrylate', 'density')[0]!);
    });
    it('the slower glue that a rule offers stays open as long as the built-in stock says', () => {
        expect(figures(slower.name, 'open')[0]! * 60).toBe(slower.open);
    });
    it('a good joint is 0.03 to 0.15 mm thick (from memory)', () => {
        for (const glue of ['wood-glue', 'cyanoacrylate', 'epoxy-glue']) {
            const [first] = figures(glue, 'film');
            expect(first, glue).toBeGreaterThanOrEqual(0.03);
            expect(first, glue).toBeLessThanOrEqual(0.15);
        }
    });
});
