import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { one, recipe, silent, words, workshop } from './harness';

workshop();

describe('foil-and-fibre', () => {
    const withBeam = (beam: string) => inlayRecipe().replace('beam co2', `beam ${beam}`);
    it('foil under a fibre source cannot be allowed', async () => {
        const text = withBeam('fibre').replace(
            'engrave relief on bird {',
            'engrave relief on bird { allow foil-and-fibre because "it will do"',
        );
        const finding = await one(text, 'foil-and-fibre');
        expect(finding).toMatchObject({ severity: 'error', firm: true });
        expect(words(text, finding)).toBe('bird');
    });
    it('goes by the wavelength where one is written', async () => {
        expect((await one(withBeam('co2 1.06 um'), 'foil-and-fibre')).message).toContain('1.06 µm');
    });
    it('is silent for CO2 and blue diode, and without foil', async () => {
        await silent(inlayRecipe(), 'foil-and-fibre');
        await silent(withBeam('blue-diode'), 'foil-and-fibre');
        await silent(fillRecipe().replace('beam co2', 'beam fibre'), 'foil-and-fibre');
    });
});

describe('never-burn', () => {
    const sheet = (name: string) =>
        recipe(
            `blank b { of ${name} size 100 x 80 mm }\n engrave e on b { art flag tone 50 % air off }`,
            `board ${name} { wood white-ash thickness 3 mm }`,
        );
    it('chlorine, by the sheet’s name', async () => {
        const text = sheet('white-pvc-3');
        const finding = await one(text, 'never-burn');
        expect(finding).toMatchObject({
            severity: 'error',
            message: 'white-pvc-3 must not be burnt: pvc gives off hydrogen chloride. Take another material.',
        });
        expect(words(text, finding)).toBe('b');
    });
    it('treated wood, and boards bound with glue', async () => {
        expect(await one(sheet('pine-treated'), 'never-burn')).toMatchObject({ severity: 'error' });
        expect(await one(sheet('mdf-6'), 'never-burn')).toMatchObject({ severity: 'warning' });
    });
    it('glue can be allowed with a data sheet, poison cannot', async () => {
        const allowed = (name: string) => sheet(name).replace('tone 50 %', 'tone 50 % allow never-burn because "data sheet 12"');
        await silent(allowed('mdf-6'), 'never-burn');
        expect(await one(allowed('white-pvc-3'), 'never-burn')).toMatchObject({ severity: 'error', firm: true });
        expect(await one(allowed('pine-treated'), 'never-burn')).toMatchObject({ severity: 'error', firm: true });
    });
    it('goes by whole words, and by what is burnt', async () => {
        await silent(sheet('absolute-ash'), 'never-burn');
        await silent(sheet('constructor'), 'never-burn');
        await silent(
            recipe(
                'blank b { of mdf-6 size 100 x 80 mm }\n sand b { take 0.1 mm grits 120 }',
                'board mdf-6 { wood white-ash thickness 6 mm }',
            ),
            'never-burn',
        );
    });
});
