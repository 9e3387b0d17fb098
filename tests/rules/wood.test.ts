import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { one, recipe, silent, words, workshop } from './harness';

const large = `<svg xmlns="http://www.w3.org/2000/svg" width="150mm" height="120mm" viewBox="0 0 150 120"><path d="M5 5h140v90l-60 20h-80z"/></svg>`;
workshop({ 'large.svg': large });

const blanks = (grain: string, of = 'maple-06') =>
    `blank tray { of walnut-12 size 300 x 200 mm grain along width } blank bird { of ${of} size 200 x 160 mm grain along ${grain} backing foil }`;
const wide = (grain: string) =>
    inlayRecipe({
        head: 'art large "large.svg"',
        blanks: blanks(grain),
        pocket: 'art large depth 0.55 mm air off',
        relief: 'art large inverse within grown 6 mm mirror depth through air off',
    });

describe('movement-across-inlay', () => {
    it('crossed grain over a wide inlay', async () => {
        const finding = await one(wide('height'), 'movement-across-inlay');
        // 140 mm x 0.00353 x about 4.75 per cent of moisture, against walnut along its grain.
        expect(finding.message).toMatch(
            /move 2\.3\d? mm against each other across the width of the inlay \(1.7 %\): their grains cross; pieces of at most \d+ mm move too little to matter\.$/,
        );
        expect(finding.related).toHaveLength(2);
    });
    it('is silent with the grain along, for small crossed parts, and where no grain is written', async () => {
        await silent(wide('width'), 'movement-across-inlay');
        const small = inlayRecipe({
            blanks: blanks('height'),
            pocket: 'circle 12 mm depth 0.55 mm air off',
            relief: 'circle 12 mm mirror depth through air off',
        });
        await silent(small, 'movement-across-inlay');
        await silent(wide('height').replace(' grain along height', ''), 'movement-across-inlay');
    });
});

describe('moisture-mismatch', () => {
    const wet = (moisture: string) =>
        inlayRecipe().replace('thickness 0.6 mm +- 0.02 mm  moisture 8 %', `thickness 0.6 mm +- 0.02 mm  moisture ${moisture}`);
    it('a veneer four per cent wetter than the board', async () => {
        const finding = await one(wet('12 %'), 'moisture-mismatch');
        expect(finding.message).toContain('walnut-12 has 8 % of moisture and maple-06 12 %');
    });
    it('is silent for a difference that does not matter, and where one is not known', async () => {
        await silent(wet('10 %'), 'moisture-mismatch');
        await silent(inlayRecipe().replace('+- 0.02 mm  moisture 8 %', '+- 0.02 mm'), 'moisture-mismatch');
    });
});

describe('low-contrast', () => {
    it('walnut in walnut', async () => {
        const text = inlayRecipe({ blanks: blanks('width', 'walnut-06') }).replace(
            'recipe tray',
            'veneer walnut-06 { wood black-walnut thickness 0.6 mm moisture 8 % }\nrecipe tray',
        );
        const finding = await one(text, 'low-contrast');
        expect(finding.message).toBe(
            'black-walnut differs from black-walnut by 0, give or take 5 where a colour is by eye; below 8 it hardly shows. Choose another wood or colour, or look at it on an offcut first.',
        );
    });
    it('a resin of the wood’s colour', async () => {
        const text = fillRecipe({ wood: 'walnut-12' }).replace('colour #1f6f8b', 'colour #6f4c38 opacity 100 %');
        expect((await one(text, 'low-contrast')).message).toContain('tide-blue differs from black-walnut');
    });
    it('a tone so faint that it hardly shows', async () => {
        const text = recipe('blank b { of walnut-12 size 100 x 80 mm }\n engrave e on b { art flag tone 15 % air off }');
        const finding = await one(text, 'low-contrast');
        expect(words(text, finding)).toBe('15 %');
    });
    it('is silent for maple in walnut, blue in ash, and a strong tone', async () => {
        await silent(inlayRecipe(), 'low-contrast');
        await silent(fillRecipe(), 'low-contrast');
        await silent(
            recipe('blank b { of walnut-12 size 100 x 80 mm }\n engrave e on b { art flag tone 80 % air off }'),
            'low-contrast',
        );
    });
});
