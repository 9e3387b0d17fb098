import { describe, it } from 'vitest';
import { inlayRecipe } from '../kit/shop';
import { silent, workshop } from './harness';

workshop();

/** What stands right beside a fault and is none. */
describe('rules that keep still', () => {
    it('veneer-proud: a veneer that stands proud by what sanding takes', () =>
        silent(inlayRecipe({ pocket: 'art flag depth 0.55 mm air off' }), 'veneer-proud'));
    it('not-inverse: a half that burns everything around its shape', () => silent(inlayRecipe(), 'not-inverse'));
    it('no-backing: loose pieces with foil or tape behind them', async () => {
        const blanks = (backing: string) =>
            `blank tray { of walnut-12 size 200 x 150 mm grain along width } blank bird { of maple-06 size 80 x 70 mm grain along width ${backing} }`;
        await silent(inlayRecipe({ blanks: blanks('backing foil') }), 'no-backing');
        await silent(inlayRecipe({ blanks: blanks('backing tape') }), 'no-backing');
    });
    it('allow-silences-nothing: an allow that does silence something', () =>
        silent(
            inlayRecipe({
                pocket: 'art diamond depth 0.55 mm air off',
                relief: 'art diamond inverse within grown 6 mm depth through air off allow not-mirrored because "a diamond"',
            }),
            'allow-silences-nothing',
        ));
    it('tangled-art: art of ordinary corners', () => silent(inlayRecipe(), 'tangled-art'));
});
