import { describe, expect, it } from 'vitest';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, workshop } from './harness';

const page = (inner: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">${inner}</svg>`;
/** A stout bar, and lines of 0.04 mm beside it. */
const lines = page('<path d="M2 2h10v20h-10z"/><path d="M16 2h0.04v20h-0.04z"/><path d="M20 2h0.04v20h-0.04z"/>');
/** Two bars with 0.05 mm of wood between them. */
const strip = page('<path d="M2 2h10v20h-10z"/><path d="M12.05 2h10v20h-10z"/>');
const stout = page('<path d="M2 2h10v20h-10z"/><path d="M12.3 2h10v20h-10z"/><path d="M25 2h0.3v20h-0.3z"/>');
/** A stout bar, and a line of 0.12 mm. */
const slim = page('<path d="M2 2h10v20h-10z"/><path d="M16 2h0.12v20h-0.12z"/>');
const art = { 'slim.svg': slim, 'lines.svg': lines, 'strip.svg': strip, 'stout.svg': stout };
workshop(art);

const dug = (name: string, more = 'depth 0.5 mm') =>
    recipe(
        `art ${name} "${name}.svg" blank b { of walnut-12 size 60 x 50 mm grain along width }\n engrave e on b { art ${name} ${more} air off }`,
    );

describe('finer-than-beam', () => {
    it('lines that stay shallow: how many, how narrow, where; mended by an offset', async () => {
        const text = dug('lines');
        const finding = await one(text, 'finer-than-beam');
        expect(finding.message).toMatch(
            /^2 lines are narrower than the 0\.0\d+ mm that this beam digs to half of the depth, 0\.04 mm at the narrowest \(near \d+(\.\d+)? mm, \d+(\.\d+)? mm\) in e\.$/,
        );
        expect(finding.spots).toHaveLength(2);
        await expectMended(text, finding);
    });
    it('a strip of wood that loses its top, which no offset mends', async () => {
        const finding = await one(dug('strip'), 'finer-than-beam');
        expect(finding.message).toMatch(/^1 strip of wood is narrower than the 0\.\d+ mm that keep their top, 0\.05 mm/);
        expect(finding.fixes).toEqual([]);
    });
    it('agrees with the wall of the beam: no narrower line is let pass, no wider one told', async () => {
        const { laser } = (await planOf(dug('lines'), art)).steps[0]!;
        const width = (share: number) => (laser!.finest!.slot * share).toFixed(4);
        const lineOf = (share: number) =>
            page(`<path d="M2 2h10v20h-10z"/><path d="M16 2h${width(share)}v20h-${width(share)}z"/>`);
        const { finerThanBeam } = await import('../../shared/rules/art/finer-than-beam');
        const told = async (share: number) => [
            ...finerThanBeam.examine(await planOf(dug('lines'), { ...art, 'lines.svg': lineOf(share) })),
        ];
        expect(await told(0.93)).toHaveLength(1);
        expect(await told(1.07)).toHaveLength(0);
    });
    it('where an inlay’s edges are moved, it is the burnt line that counts', async () => {
        const inlay = (name: string, clearance: string) =>
            inlayRecipe({
                head: `art ${name} "${name}.svg"`,
                pocket: `art ${name} depth 0.55 mm air off`,
                relief: `art ${name} inverse within grown 6 mm mirror depth through air off`,
                inlay: `clearance ${clearance} glue wood-glue`,
            });
        await silent(inlay('stout', '0.10 mm'), 'finer-than-beam');
        // 0.12 mm are drawn, and the wider beam's own growth is taken off both sides: what is told is what is burnt.
        const slim = await of(inlay('slim', '0.001 mm'), 'finer-than-beam');
        const [, limit, width] = /narrower than the ([\d.]+) mm that this beam digs .* half of the depth, ([\d.]+) mm at/.exec(
            slim.map(({ message }) => message).join(' '),
        )!;
        expect(Number(width)).toBeLessThan(Number(limit));
        const finding = await one(inlay('strip', '0.001 mm'), 'finer-than-beam');
        expect(finding.fixes).toEqual([]);
    });
    it('is silent for stout art, for a mere tone, and without a spot', async () => {
        await silent(dug('stout'), 'finer-than-beam');
        await silent(dug('lines', 'tone 60 %'), 'finer-than-beam');
        await silent(dug('lines').replace('spot 0.15 mm', ''), 'finer-than-beam');
        await silent(inlayRecipe(), 'finer-than-beam');
    });
});
