import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../shared/geometry/measure';
import { Memo } from '../../shared/plan/memo';
import { makePressView } from '../../shared/view/press-view';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';

const viewOf = async (text: string, tell: (part: number) => void = () => {}) => {
    const plan = await planOf(text);
    const step = plan.steps.findIndex(({ inlay }) => inlay !== undefined);
    return makePressView(plan, step, new Memo(), tell);
};

/** Pixels of a colour in the picture, as a part of all that are not clear. */
function share(href: string, colour: string): number {
    const { data } = decode(Uint8Array.from(atob(href.slice(href.indexOf(',') + 1)), (letter) => letter.charCodeAt(0)));
    let all = 0;
    let found = 0;
    for (let at = 0; at < data.length; at += 4) {
        if (data[at + 3] === 0) continue;
        all += 1;
        const hex = [0, 1, 2].map((k) => data[at + k]!.toString(16).padStart(2, '0')).join('');
        if (`#${hex}` === colour) found += 1;
    }
    return found / all;
}

describe('both halves pressed together, as they are shown', () => {
    it('a good inlay touches nowhere and says how deep it lies', async () => {
        const parts: number[] = [];
        const view = (await viewOf(inlayRecipe(), (part) => void parts.push(part)))!;
        expect(view).toMatchObject({ good: true, stops: [] });
        expect(view.verdict).toContain('on its glue all over');
        expect(share(view.picture.href, view.touchColour)).toBe(0);
        expect(view.facts.map(({ label }) => label)).toContain('seam after sanding');
        expect(parts[0]).toBe(0);
        expect(parts.at(-1)).toBeGreaterThan(0.9);
    });
    it('a half that is not mirrored lies on the board: said, coloured, ringed and cut through', async () => {
        const view = (await viewOf(inlayRecipe({ relief: 'art flag inverse within grown 6 mm depth through air off' })))!;
        expect(view.good).toBe(false);
        expect(view.verdict).toContain('mirror image');
        expect(share(view.picture.href, view.touchColour)).toBeGreaterThan(0.1);
        expect(view.stops.length).toBeGreaterThan(0);
        expect(view.section!.top).toBeCloseTo(0.6, 1);
        expect(Math.min(...view.section!.board.filter((_, index) => index % 2 === 1))).toBeLessThan(-0.5);
    });
    it('too little clearance jams between the walls', async () => {
        const view = (await viewOf(inlayRecipe({ inlay: 'clearance 0.02 mm glue wood-glue' })))!;
        expect(view.verdict).toContain('jams');
    });
    it.each([
        ['on its glue', 'clearance 0.15 mm glue wood-glue'],
        ['jammed', 'clearance 0.02 mm glue wood-glue'],
    ])('what went in and what stands proud are the whole veneer: %s', async (_, inlay) => {
        const { facts } = (await viewOf(inlayRecipe({ inlay })))!;
        const millimetres = (label: string) => Number.parseFloat(facts.find((fact) => fact.label === label)!.value);
        expect(millimetres('goes in')).toBeGreaterThan(0.05);
        // As shown, each is rounded to a hundredth.
        expect(Math.abs(millimetres('goes in') + millimetres('stands proud') - 0.6)).toBeLessThan(0.011);
    });
    it('is given up when the one who looks on throws', async () => {
        const stop = (): never => {
            throw new Error('stopped');
        };
        await expect(viewOf(inlayRecipe(), stop)).rejects.toThrow('stopped');
    });
    it('no clearance leaves no sliver of veneer along the boundary', async () => {
        const plan = await planOf(inlayRecipe({ inlay: 'clearance 0 mm glue wood-glue' }));
        const inlay = plan.steps.find((step) => step.inlay !== undefined)!.inlay!;
        expect(inlay.reliefLaser.edge).toBeLessThan(0);
        // The drawn edges of the art overlap; nothing beyond it meets the board.
        const [clash, art] = [bounds(inlay.collides)!, bounds(inlay.pocketLaser.region)!];
        expect(clash.maxX - art.maxX).toBeLessThan(0.5);
        expect(art.minY - clash.minY).toBeLessThan(0.5);
    });
});
