import { describe, expect, it } from 'vitest';
import { showMass } from '../../shared/quantity/show';
import { workFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { fillRecipe } from '../kit/shop';
import { expectMended, one, silent, words, workshop } from './harness';

/** A blot with long hairs of 0.25 mm, so far from one to the next. */
const hairs = (apart: number) => `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M2 2h10v6h-10z"/>${Array.from({ length: 8 }, (_, i) => `<path d="M14 ${2 + i * apart}h24v0.25h-24z"/>`).join('')}</svg>`;
workshop({ 'hairs.svg': hairs(3), 'close.svg': hairs(0.4), 'ribs.svg': hairs(0.46) });

const made = (count: number, text = fillRecipe()) => text.replace('make 2', `make ${count}`);
const resin = (line: string, text = fillRecipe()) =>
    text.replace('resin tide-blue { kind slow-epoxy', `resin tide-blue { kind slow-epoxy ${line}`);

describe('deep-pour', () => {
    const deep = fillRecipe({ pocket: 'art flag depth 3 mm air off' });
    it('waits for the cure where no recoat window is known', async () => {
        const text = deep
            .replace('with tide-blue', 'with quick')
            .replace('recipe coaster', 'resin quick { cure 2 h  deepest pour 2 mm }\nrecipe coaster');
        const finding = await one(text, 'deep-pour');
        expect(finding.message).toContain('pour 2 layers of 1.5 mm, each after the cure of the one before, 2 h.');
        expect(await expectMended(text, finding)).toMatch(/fill hollow with quick\s+wait 2 h\s+fill hollow with quick/);
    });
    it('says how many layers', async () => {
        const finding = await one(resin('deepest pour 1.2 mm', deep), 'deep-pour');
        expect(finding.message).toContain('pour 3 layers of 1 mm, each 4 h to 10 h after the one before.');
        await expectMended(resin('deepest pour 1.2 mm', deep), finding);
    });
    it('is silent when it may be poured at once, and when it is poured in layers', async () => {
        await silent(deep, 'deep-pour');
        const layers = resin('deepest pour 1.5 mm', deep).replace('wait 24 h', 'wait 24 h fill hollow with tide-blue wait 24 h');
        await silent(layers, 'deep-pour');
    });
});

describe('short-pot-life', () => {
    it('more pieces than one cup lasts for', async () => {
        const finding = await one(made(20, resin('pot life 40 min')), 'short-pot-life');
        expect(finding).toMatchObject({ severity: 'info' });
        // 40 min less 8 for mixing, 4 for each piece.
        expect(finding.message).toContain('for 20 pieces mix 3 cups, each for 8');
    });
    it('is a hint by the built-in pot life, for which no source was read', async () =>
        expect(await one(made(20), 'short-pot-life')).toMatchObject({
            severity: 'hint',
            message: expect.stringContaining('Not checked'),
        }));
    it('not even one piece', async () => {
        const finding = await one(resin('pot life 5 min'), 'short-pot-life');
        expect(finding.severity).toBe('warning');
        expect(finding.related).toHaveLength(1);
    });
    it('is silent for a run that one cup does', async () => silent(made(8), 'short-pot-life'));
});

describe('small-mix', () => {
    it('a thimbleful', async () => {
        const finding = await one(made(1, resin('mix 2 : 1 by volume')), 'small-mix');
        expect(finding.severity).toBe('hint');
        expect(finding.message).toContain('mix at least 1.5 ml');
    });
    it('is silent for a cup, and for a resin that is not mixed', async () => {
        await silent(made(30, resin('mix 2 : 1 by volume')), 'small-mix');
        await silent(made(1), 'small-mix');
    });
});

describe('pigment-overload', () => {
    it('a hint above ten per cent, a warning above half', async () => {
        expect((await one(resin('pigment 20 %'), 'pigment-overload')).severity).toBe('hint');
        expect((await one(resin('pigment 60 %'), 'pigment-overload')).severity).toBe('warning');
    });
    it('is silent at an ordinary load', async () => silent(resin('pigment 6 %'), 'pigment-overload'));
});

describe('narrow-slots', () => {
    const art = 'art flag "flag.svg"';
    const fine = fillRecipe().replace(art, 'art flag "hairs.svg"');
    it('hairs narrower than the resin flows into', async () => {
        const finding = await one(fine, 'narrow-slots');
        expect(finding.message).toMatch(
            /^8 places in hollow are narrower than the 0.4 mm that tide-blue flows into, 0.25 mm at the narrowest/,
        );
        expect(finding.spots).toHaveLength(8);
        expect(words(fine, finding)).toBe('fill');
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Give hollow an offset of 0.09 mm, which widens all its lines']);
        const after = await expectMended(fine, finding);
        expect(after).toContain('offset 0.09 mm');
    });
    it('an offset that is there is made larger, in its own unit', async () => {
        const text = fine.replace('depth 1.2 mm', 'depth 1.2 mm offset 1 thou');
        const finding = await one(text, 'narrow-slots');
        expect(finding.fixes[0]!.title).toMatch(/^Give hollow an offset of 3\.5 thou/);
        await expectMended(text, finding);
    });
    it('no offset is offered that runs lines together, leaves hardly a rib, or goes off the blank', async () => {
        for (const art of ['close.svg', 'ribs.svg']) {
            expect((await one(fine.replace('hairs.svg', art), 'narrow-slots')).fixes, art).toEqual([]);
        }
        const edge = fine.replace('size 100 x 100 mm', 'size 36.1 x 100 mm');
        expect((await one(edge, 'narrow-slots')).fixes).toEqual([]);
    });
    it('is silent for wide lines, and for a thin resin', async () => {
        await silent(fillRecipe(), 'narrow-slots');
        await silent(resin('narrowest slot 0.2 mm', fine), 'narrow-slots');
    });
});

describe('recoat-window', () => {
    const deep = fillRecipe({ pocket: 'art flag depth 3 mm air off' });
    const layers = (between: string) =>
        resin('recoat 4 .. 10 h', deep).replace('wait 24 h', `${between} fill hollow with tide-blue wait 24 h`);
    it('too soon, with a wait that mends it', async () => {
        const finding = await one(layers('wait 1 h'), 'recoat-window');
        expect(finding.message).toContain('after 4 h; this one follows after 1 h');
        expect(finding.fixes).toHaveLength(1);
    });
    it('too late, unless it was sanded dull', async () => {
        expect((await one(layers('wait 24 h'), 'recoat-window')).message).toContain('until 10 h');
        await silent(layers('wait 24 h sand disc { take 0.02 mm grits 180 }'), 'recoat-window');
    });
    it('is silent inside the window, for one layer, and where no window is known', async () => {
        await silent(layers('wait 6 h'), 'recoat-window');
        await silent(resin('recoat 4 .. 10 h', deep), 'recoat-window');
    });
});

describe('metal powder', () => {
    it('may be three parts to one of mixed resin, as for casting, and no more', async () => {
        const finding = await one(resin('powder 80 %'), 'pigment-overload');
        expect(finding.severity).toBe('warning');
        expect(finding.message).toBe(
            'tide-blue is 80 % metal powder, of the whole by mass; more than 75 % may keep it from curing.',
        );
        for (const load of ['43 %', '60 %', '75 %']) {
            await silent(resin(`powder ${load}`), 'pigment-overload');
            await silent(resin(`powder ${load}`), 'unlikely-magnitude');
        }
    });
    it('is weighed out as that share of the whole', async () => {
        const plan = await planOf(resin('mix 2 : 1 by volume  powder 43 %'));
        const step = plan.steps.find(({ fill }) => fill !== undefined)!;
        const { powder, mass } = step.fill!.mix;
        expect(powder! / mass!).toBeCloseTo(0.43 / 0.57, 9);
        expect(workFacts(step)).toContainEqual({
            label: 'metal powder',
            value: `${showMass(powder!)}, 43 % of the whole`,
        });
    });
});

describe('beyond-sheet', () => {
    const sized = (sheet: string) => fillRecipe().replace('board ash-10 {', `board ash-10 { sheet ${sheet}`);
    it('a blank that no sheet holds, at its size', async () => {
        const finding = await one(sized('1000 x 90 mm'), 'beyond-sheet');
        expect(finding.message).toContain('100 mm x 100 mm with its grain along the width, does not fit');
        expect(finding.related).toHaveLength(1);
    });
    it('is silent where it fits, and where the sheet has no size', async () => {
        await silent(sized('1000 x 100 mm'), 'beyond-sheet');
        await silent(fillRecipe(), 'beyond-sheet');
    });
});
