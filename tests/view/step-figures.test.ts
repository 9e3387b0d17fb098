import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeStepFigures } from '../../shared/view/make-step-figures';
import type { StepFigures } from '../../shared/view/step-figures';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe, shop } from '../kit/shop';

/** Figures of the step whose text begins with these words. */
async function figures(text: string, begins: string): Promise<StepFigures | undefined> {
    const all = makeStepFigures(await planOf(text));
    return all.find(({ whole }) => text.slice(whole.offset).startsWith(begins));
}

const engraving = (body: string, stock = shop, of = 'walnut-12'): string =>
    `${stock}\nrecipe thing {\n laser shed\n art flag "flag.svg"\n blank b { of ${of} size 100 x 80 mm grain along width }\n engrave e on b { art flag ${body} air off }\n}\n`;
const labels = async (text: string, begins = 'engrave e'): Promise<string[]> =>
    ((await figures(text, begins))?.hints ?? []).map(({ at, label }) => `${at}: ${label}`);

describe('what a plan adds to the text', () => {
    it('of an engraving: its time, how sure the depth is, and its settings', async () => {
        const [time, depth, settings] = await labels(engraving('depth 0.5 mm'));
        expect(time).toMatch(/^head: \d+ min \d+ s$/);
        expect(depth).toMatch(/^wish: ± 0\.1\d mm$/);
        expect(settings).toMatch(/^wish: 80 % at \d+ mm\/s, pitch 0\.1 mm, \d passes$/);
    });
    it('says of how sure the depth is what it means, and of a guess that it is for any piece', async () => {
        const tooltip = async (of: string) =>
            (await figures(engraving('depth 0.5 mm', shop, of), 'engrave e'))?.hints[1]?.tooltip;
        expect(await tooltip('walnut-12')).toMatch(
            /^depth: 0\.5 mm ± 0\.1\d mm \(95 %, the next piece of this stock, boards taken to differ by 8 % as is usual\)$/m,
        );
        const deep = (await figures(engraving('depth 1.4 mm', shop, 'walnut-12'), 'engrave e'))?.hints[1]?.tooltip;
        expect(deep).toMatch(/is usual, no square deeper than 0\.67 mm or of more than 2 passes: burn one\)$/m);
        expect(await tooltip('ash-10')).toMatch(/^depth: 0\.5 mm \(.*\) \(95 %, the next piece of this stock\)$/m);
    });
    it('only what is not written', async () => {
        expect((await labels(engraving('depth 0.5 mm passes 3 power 60 %'))).at(-1)).toMatch(
            /^wish: at \d+ mm\/s, pitch 0\.1 mm$/,
        );
        const held = await labels(engraving('depth 0.67 mm power 80 % speed 300 mm/s passes 2 pitch 0.1 mm'));
        expect(held).toHaveLength(2);
        expect(held[1]).toMatch(/^wish: ± /);
    });
    it('the depth itself where it is not the one that is written', async () => {
        expect(await labels(engraving('power 80 % speed 300 mm/s'))).toContainEqual(
            expect.stringMatching(/^head: 0\.34 mm ± .* deep$/),
        );
        expect(await labels(engraving('depth 3 mm speed 600 mm/s passes 1'))).toContainEqual(
            expect.stringMatching(/^wish: gives 0\.\d+ mm/),
        );
    });
    it('in the unit that is written', async () => {
        expect((await labels(engraving('depth 1/32 in')))[1]).toMatch(/^wish: ± 0\.0\d\d? in$/);
    });
    it('marks a guess, and tells it as a range', async () => {
        const [, depth, settings] = await labels(engraving('depth 0.5 mm', shop, 'ash-10'));
        expect(depth).toMatch(/^wish: 0\.2\d? mm to [\d.]+ mm$/);
        expect(settings).toMatch(/^wish: a guess: 80 % at /);
        expect((await figures(engraving('depth 0.5 mm', shop, 'ash-10'), 'engrave e'))?.guess).toBe(true);
    });
    it('of a tone and of a cut their settings, without a depth', async () => {
        expect((await labels(engraving('tone 80 %'))).slice(1)).toEqual([
            'wish: a guess: no square judged by tone',
            expect.stringMatching(/^wish: \d+ % at \d+ mm\/s, pitch 0.1 mm, 1 pass$/),
        ]);
        const cut = engraving('depth 0.2 mm').replace('engrave e', 'cut rim on b { circle 60 mm air on }\n engrave e');
        expect((await labels(cut, 'cut rim')).slice(1)).toEqual([
            expect.stringMatching(/^head: not 97\.5 % sure: [\d.]+ mm of 12\.3 mm$/),
            expect.stringMatching(/^head: a guess: 100 % at [\d.]+ mm\/s, \d+ pass(es)?$/),
        ]);
    });
    it('of a tone how sure it is, where squares were judged by it', async () => {
        const judged =
            'burn 6 % at 600 mm/s gives tone 25 % burn 10 % at 600 mm/s gives tone 55 % burn 14 % at 600 mm/s gives tone 85 %';
        const text = engraving('tone 60 %').replace('pitch 0.10 mm', `pitch 0.10 mm ${judged}`);
        const [figures] = makeStepFigures(await planOf(text));
        const at = figures!.hints.filter((hint) => hint.at === 'wish').map(({ label }) => label);
        expect(at[0]).toMatch(/^\d\d % to \d\d %$/);
        const [low, high] = at[0]!.match(/\d+/g)!.map(Number);
        expect(low).toBeLessThan(60);
        expect(high).toBeGreaterThan(60);
    });
    it('a tone that was judged is no guess, though no depth was measured', async () => {
        const judged =
            'coupon ash-10 on shed { pitch 0.10 mm burn 8 % at 600 mm/s gives tone 40 % burn 14 % at 600 mm/s gives tone 80 % }';
        const text = engraving('tone 60 %', `${shop}\n${judged}`, 'ash-10');
        expect(await labels(text)).not.toContainEqual(expect.stringContaining('a guess'));
        expect(await labels(engraving('tone 60 %', shop, 'ash-10'))).toContainEqual(expect.stringContaining('a guess'));
    });
    it('of a fill its volume for one piece, of an inlay how proud and how much is left', async () => {
        expect(await labels(fillRecipe(), 'fill')).toEqual([expect.stringMatching(/^head: [\d.]+ ml a piece$/)]);
        expect(await labels(fillRecipe().replace('make 2', 'make 1'), 'fill')).toEqual([
            expect.stringMatching(/^head: [\d.]+ ml$/),
        ]);
        expect(await labels(inlayRecipe(), 'inlay')).toEqual([
            expect.stringMatching(/^head: proud 0\.1\d? mm ± 0\.\d+ mm, left 0\.\d+ mm ± 0\.\d+ mm$/),
        ]);
    });
    it('nothing of what could not be worked out', async () => {
        expect(await labels(engraving('depth 0.5 mm').replace('art flag depth', 'depth'))).toEqual([]);
    });
});

describe('what can be pinned', () => {
    const pins = async (text: string, begins = 'engrave e'): Promise<readonly string[]> =>
        (await figures(text, begins))?.pins ?? [];

    it('is what is solved and not written', async () => {
        expect(await pins(engraving('depth 0.5 mm passes 3'))).toEqual([
            'power 80 %',
            expect.stringMatching(/^speed \d+ mm\/s$/),
            'pitch 0.1 mm',
        ]);
        expect(await pins(engraving('depth 0.67 mm power 80 % speed 300 mm/s passes 2 pitch 0.1 mm'))).toEqual([]);
    });
    it('is nothing that does not do what is asked for', async () => {
        expect(await pins(engraving('depth 3 mm speed 600 mm/s passes 1'))).toEqual([]);
    });
    it('solved again it gives the same depth, whatever the machine', async () => {
        await fc.assert(
            fc.asyncProperty(
                fc.double({ min: 0.05, max: 1.5, noNaN: true }),
                fc.double({ min: 12, max: 130, noNaN: true }),
                fc.double({ min: 0.06, max: 0.13, noNaN: true }),
                async (depth, watts, pitch) => {
                    const stock = shop
                        .replace('power 45 W', `power ${watts.toFixed(3)} W least power 3.1 W`)
                        .replace('pitch 0.10 mm', `pitch ${(pitch / 25.4).toFixed(7)} in`);
                    const text = engraving(`depth ${depth.toFixed(3)} mm`, stock);
                    const before = (await planOf(text)).steps[0]!.laser!.settings!;
                    const statements = await pins(text);
                    if (!before.reached) return expect(statements).toEqual([]);
                    expect(statements).toHaveLength(4);
                    const pinned = text.replace(' air off', ` ${statements.join(' ')} air off`);
                    const after = (await planOf(pinned)).steps[0]!.laser!.settings!;
                    expect(after.reached).toBe(true);
                    expect(Math.abs(after.gives.value - before.gives.value)).toBeLessThan(1e-3);
                    expect(await pins(pinned)).toEqual([]);
                },
            ),
            { numRuns: 12, seed: 11 },
        );
    });
});

describe('a recipe that moves to another laser', () => {
    const sample = (name: string): string => readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');
    const heron = { 'art/heron.svg': sample('art/heron.svg') };
    const tray = sample('heron-tray.kerf').replace('use "workshop.kerf"', sample('workshop.kerf'));
    const moved = tray.replace('laser shed\n\n  art', 'laser loft\n\n  art');
    const lasersOf = async (text: string) => (await planOf(text, heron)).steps.flatMap(({ laser }) => laser ?? []);

    it('is solved again within the other machine’s limits', async () => {
        const [before, after] = [await lasersOf(tray), await lasersOf(moved)];
        expect(after).toHaveLength(before.length);
        for (const [index, { settings, machine }] of after.entries()) {
            const was = before[index]!;
            expect(was.settings!.guess).toBe(false);
            expect(settings!.guess).toBe(true); // no coupon of these has been burnt in the loft
            expect(settings!.power).toBeLessThanOrEqual(10);
            expect(settings!.power).toBeGreaterThanOrEqual(0.5);
            expect(settings!.speed).toBeLessThanOrEqual(200);
            expect(settings!.speed).not.toBe(was.settings!.speed);
            expect(settings!.pitch).toBeLessThan(was.settings!.pitch); // a finer spot
            expect(settings!.passes).toBe(3); // as it is written
            expect(machine).toBeGreaterThan(was.machine); // a quarter of the power
        }
    });
    it('stands on the other laser’s coupon as soon as there is one', async () => {
        const rows = [60, 80, 100].flatMap((power) => [120, 60].map((speed) => [power, speed] as const));
        const coupon = rows.map(
            ([power, speed]) => `burn ${power} % at ${speed} mm/s gives ${((power / 10 / speed / 0.08 - 0.3) / 4).toFixed(2)} mm`,
        );
        const text = moved.replace(
            'recipe heron-tray',
            `coupon walnut-12 on loft { pitch 0.08 mm ${coupon.join(' ')} }\nrecipe heron-tray`,
        );
        const [pocket, relief] = await lasersOf(text);
        expect(pocket!.settings).toMatchObject({ guess: false, reached: true, pitch: 0.08 });
        expect(relief!.settings!.guess).toBe(true);
    });
    it('keeps what is pinned, and says what is wrong with it', async () => {
        const pinned = moved.replace('depth 0.54 mm', 'depth 0.54 mm power 36 W speed 461 mm/s');
        const [pocket] = await lasersOf(pinned);
        expect(pocket!.settings!.power).toBe(36);
        expect(pocket!.settings!.limits).toContain('power-over');
    });
});
