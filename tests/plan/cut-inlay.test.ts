import { describe, expect, it } from 'vitest';
import { cutEdge } from '../../shared/bench/half-edge';
import { virtualPress } from '../../shared/bench/virtual-press';
import { area, bounds } from '../../shared/geometry/measure';
import { rectangle } from '../../shared/geometry/shapes';
import { volumes } from '../../shared/piece/face';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { planPress } from '../../shared/plan/plan-press';
import { stepFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const laser = 'power 95 % speed 8 mm/s passes 2';

interface Parts {
    readonly opening?: string;
    readonly part?: string;
    readonly inlay?: string;
    readonly blank?: string;
    readonly pocket?: string;
}

/** A part of 10 mm ash let into ash of the same thickness, both with a kerf of 0.4 mm. */
const recipe = ({ opening = '', part = '', inlay = 'clearance 0.3 mm', blank = 'ash-10', pocket }: Parts = {}): string =>
    `${shop} recipe r { laser shed art flag "flag.svg"
    blank tile { of ash-10 size 90 x 80 mm } blank stuff { of ${blank} size 60 x 50 mm }
    ${pocket ?? `cut berth on tile { art flag ${laser} kerf 0.4 mm ${opening} }`}
    cut boat on stuff { art flag ${laser} kerf 0.4 mm ${part} }
    inlay boat into berth { ${inlay} glue wood-glue }
    wait 24 h sand tile { flush then 0.1 mm grits 120, 180 } }`;

const inlayOf = (plan: Plan) => plan.steps.find(({ inlay }) => inlay !== undefined)!;
const made = async (parts: Parts) => inlayOf(await planOf(recipe(parts))).inlay!;
const leanOf = ({ kerf }: { readonly kerf?: { face: { value: number }; back: { value: number } } }): number =>
    (kerf!.face.value - kerf!.back.value) / 2;

describe('a part that is cut out and let in', () => {
    it('is turned over where one of both is mirrored, and lies face up otherwise', async () => {
        const inlay = 'clearance 0.1 mm';
        const [up, over, both] = [
            await made({ inlay }),
            await made({ inlay, part: 'mirror' }),
            await made({ inlay, part: 'mirror', opening: 'mirror' }),
        ];
        expect([up, over, both].map(({ turnedOver }) => turnedOver)).toEqual([false, true, false]);
        for (const { collides, fits, pocketLaser } of [up, over, both]) {
            expect(area(collides)).toBe(0);
            expect(area(fits) / area(pocketLaser.region)).toBeGreaterThan(0.95);
        }
    });
    it('is smaller, and its opening larger, by half the clearance each', async () => {
        const { reliefLaser, pocketLaser, gap } = await made({ inlay: 'clearance 0.3 mm' });
        const [part, opening] = [bounds(reliefLaser.region)!, bounds(pocketLaser.region)!];
        expect(opening.maxY - opening.minY - (part.maxY - part.minY)).toBeCloseTo(2 * 0.3, 3);
        expect(gap).toBeCloseTo(0.3, 9);
        expect(area(reliefLaser.cutLine!.parts)).toBeCloseTo(area(reliefLaser.region), 6);
        expect(area(pocketLaser.cutLine!.openings)).toBeCloseTo(area(pocketLaser.region), 6);
    });
    it('gets half a kerf more of room where the beam follows the drawn line itself, and less from an offset of its own', async () => {
        expect((await made({ part: 'without kerf' })).gap).toBeCloseTo(0.3 + 0.4 / 2, 9);
        expect((await made({ part: 'without kerf', opening: 'without kerf' })).gap).toBeCloseTo(0.3 + 0.4, 9);
        expect((await made({ part: 'offset 0.1 mm' })).gap).toBeCloseTo(0.2, 9);
        expect((await made({ opening: 'offset 0.1 mm' })).gap).toBeCloseTo(0.4, 9);
    });
    // Two wedges of one angle slide face to face: at every height the gap is c - lean * h / T. Back first, the widest place of the
    // part meets the walls where it is: c - lean - lean * h / T. (Similar triangles, own derivation.)
    it.each([
        ['turned over', 'mirror', 1],
        ['face up', '', 2],
    ])('needs the lean of its walls as clearance: %s', async (_, part, leans) => {
        const lean = leanOf((await made({ part })).reliefLaser);
        expect(lean).toBeGreaterThan(0.04);
        expect((await made({ part })).fit!.leastClearance).toBeCloseTo(leans * lean, 4);
        const tight = (leans - 0.4) * lean;
        const jammed = await made({ part, inlay: `clearance ${tight.toFixed(6)} mm` });
        expect(jammed.fit).toMatchObject({ bottoms: false });
        // c = (leans - 0.4) lean, so that 0.6 of a lean's way is left over 10 mm of depth.
        expect(jammed.fit!.insertion).toBeCloseTo(10 * 0.6, 2);
        const plan = await planOf(recipe({ part, inlay: `clearance ${tight.toFixed(6)} mm` }));
        const pressed = planPress(plan, inlayOf(plan).step.index, new Memo())!;
        // Walls this steep: 0.6 mm of height are 0.0034 mm beside, an eighth of a cell of the press.
        expect(Math.abs(pressed.insertion - jammed.fit!.insertion)).toBeLessThan(0.6);
    });
    it('lies level with the face where it is thinner than the board, and says on what', async () => {
        const plan = await planOf(
            recipe({ part: '', blank: 'walnut-12' })
                .replace('blank stuff { of walnut-12', 'blank stuff { of thin')
                .replace('recipe r {', 'board thin { wood white-ash thickness 6 mm } recipe r {'),
        );
        const { inlay } = inlayOf(plan);
        expect(inlay!.fit!.insertion).toBeCloseTo(6, 6);
        expect(inlay!.stack!.proud.likely.value).toBeCloseTo(0, 9);
        const side = stepFacts(inlayOf(plan)).find(({ label }) => label === 'which side up')!.value;
        expect(side).toContain('face up');
        expect(side).toContain('4 mm of packing');
    });
    it('fills its opening: the wood that fell out is replaced, prism for prism', async () => {
        const plan = await planOf(recipe());
        const { index } = inlayOf(plan).step;
        const tile = (moment: number) => plan.faces[moment]!.find(({ blank }) => blank === 'tile')!;
        const [before, after] = [volumes(tile(index)), volumes(tile(index + 1))];
        const prism = area(inlayOf(plan).inlay!.fits) * 10;
        expect((after.get('wood ash-10') ?? 0) - (before.get('wood ash-10') ?? 0)).toBeCloseTo(prism, 3);
        const open = area(tile(index).body.region) - (90 * 80 - area(plan.steps[0]!.laser!.region));
        expect(Math.abs(open)).toBeLessThan(0.05);
    });
    it('stands as high over an engraved pocket as veneer and glue say', async () => {
        const { stack, fit, film, veneer } = await made({
            pocket: 'engrave berth on tile { art flag depth 0.55 mm air off }',
            part: 'mirror',
            blank: 'maple-06',
        });
        expect(veneer!.value).toBeCloseTo(0.6, 9);
        expect(fit!.bottoms).toBe(true);
        expect(stack!.proud.likely.value).toBeCloseTo(0.6 - (0.55 - film.value), 6);
    });
    it('takes glue for the edge of an opening', async () => {
        const plan = await planOf(recipe());
        const { perimeter } = inlayOf(plan).inlay!.pocketLaser;
        const glue = plan.supplies.find(({ kind }) => kind === 'glue')!;
        const pocket = await planOf(
            recipe({ pocket: 'engrave berth on tile { art flag depth 0.55 mm air off }', part: 'mirror' }),
        );
        const spread = pocket.supplies.find(({ kind }) => kind === 'glue')!.amount / inlayOf(pocket).inlay!.pocketLaser.area;
        expect(glue.amount).toBeCloseTo(spread * perimeter * 10, 6);
        expect(glue.note).toBe('along the edge');
    });
});

describe('a clearance ladder in the coupon of a part that is let in', () => {
    const withLadder = (fits: string) =>
        planOf(
            recipe({ part: 'mirror' }).replace(
                'recipe r {',
                `coupon ash-10 on shed { cut 95 % at 8 mm/s x 2 gives through kerf 0.4 mm ${fits} } recipe r {`,
            ),
        );
    const fitOf = async (fits: string) => inlayOf(await withLadder(fits)).inlay!;

    it('makes the fit tighter by what plugs lacked of the kerf, each half by half of it', async () => {
        const without = await fitOf('');
        const { face, back } = without.reliefLaser.kerf!;
        const middle = (face.value + back.value) / 2;
        const found = await fitOf(`fits ${(middle - 0.06).toFixed(6)} mm`);
        expect(found.reliefLaser.fits).toBeCloseTo(middle - 0.06, 5);
        expect(found.pocketLaser.fits).toBeCloseTo(middle - 0.06, 5);
        // A part drawn c smaller all round goes in where kerf and ladder agree; 0.06 mm less of the plugs takes 0.06 mm more of c.
        expect(found.fit!.leastClearance - without.fit!.leastClearance).toBeCloseTo(0.06, 4);
        expect(found.fit!.seam).toBeCloseTo(without.fit!.seam - 0.06, 4);
    });
    it('is said beside the kerf', async () => {
        const kerfLine = async (fits: string) =>
            stepFacts((await withLadder(fits)).steps[1]!).find(({ label }) => label === 'kerf')!.value;
        expect(await kerfLine('')).not.toContain('ladder');
        expect(await kerfLine('fits 0.20 mm')).toMatch(/by the clearance ladder an edge is 0\.\d+ mm tighter than that$/);
    });
});

describe('a press of cut edges', () => {
    const [side, clearance, lean, thickness] = [30, 0.2, 0.1, 6];
    const sigma = 0.04;
    const press = (faceUp: boolean, part = thickness) =>
        virtualPress({
            pocket: {
                ...cutEdge({ thickness, lean, tight: 0, faceUp: false }, sigma),
                region: rectangle(-clearance, -clearance, side + 2 * clearance, side + 2 * clearance),
            },
            veneer: { ...cutEdge({ thickness: part, lean, tight: 0, faceUp }, sigma), standing: rectangle(0, 0, side, side) },
            thickness: part,
            film: 0,
            sanded: 0,
        })!;
    it('leaves a hollow under a thinner part as large as the prism over what the part covers', () => {
        const { gapVolume, insertion, bottoms } = press(true, 4);
        expect(bottoms).toBe(true);
        expect(insertion).toBeCloseTo(4, 2);
        // Back down: 30 mm and twice the lean wide.
        expect(gapVolume / ((side + 2 * lean) ** 2 * (thickness - 4))).toBeCloseTo(1, 2);
    });
    it('leaves open on the face what lies between the mouth and the upper side of the part', () => {
        const mouth = (side + 2 * clearance) ** 2;
        const seamOf = (open: number): number => (side + 2 * clearance - Math.sqrt(mouth - open)) / 2;
        // Turned over its back is up, which is larger by the lean all round; face up it is as drawn. To half a cell of the press.
        expect(Math.abs(seamOf(press(false).open) - (clearance - lean))).toBeLessThan(0.015);
        expect(Math.abs(seamOf(press(true).open) - clearance)).toBeLessThan(0.015);
    });
});
