import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, of, one, silent, words, workshop } from './harness';

workshop();

const pocket = (depth: string) => inlayRecipe({ pocket: `art flag depth ${depth} air off` });

describe('depth-promise', () => {
    it('a tolerance closer than the coupon keeps: the interval is told, and a promise that holds', async () => {
        const text = pocket('0.55 mm +- 0.001 mm');
        const finding = await one(text, 'depth-promise');
        expect(words(text, finding)).toBe('0.55 mm +- 0.001 mm');
        expect(finding.message).toMatch(
            /^pocket is promised 0\.55 mm ± 0\.001 mm deep; it comes to .* \(95 %, the next piece of this stock, boards taken to differ by 8 % as is usual\)\. Burn a square with 80 % at 499 mm\/s in 3 passes: that narrows ± 0\.16 mm to about ± 0\.12 mm\.$/,
        );
        await expectMended(text, finding);
    });
    it('a range is a promise, too', async () => {
        const text = pocket('0.549 .. 0.551 mm');
        await expectMended(text, await one(text, 'depth-promise'));
    });
    it('is silent where the promise can be kept, and where none is given', async () => {
        await silent(pocket('0.55 mm +- 0.3 mm'), 'depth-promise');
        await silent(pocket('0.55 mm'), 'depth-promise');
    });
});

describe('a wait written as a range', () => {
    it('has passed to its shorter end where something has to dry', async () => {
        const text = fillRecipe({ between: 'seal disc with shellac wait 20 min .. 3 h' });
        const finding = await one(text, 'fill-before-dry');
        expect(finding.message).toMatch(/^shellac needs 1 h to dry; tide-blue goes on it after 20 min/);
        await silent(fillRecipe({ between: 'seal disc with shellac wait 1 .. 3 h' }), 'fill-before-dry');
    });
    it('has passed to its longer end where a layer has to follow in time', async () => {
        const layers = (wait: string) => fillRecipe({ fill: `wait ${wait} fill hollow with tide-blue` });
        await silent(layers('5 .. 8 h'), 'recoat-window');
        expect((await of(layers('5 .. 40 h'), 'recoat-window'))[0]?.message).toMatch(/bonds by itself until .* after 1 d 16 h/);
        expect((await of(layers('1 .. 8 h'), 'recoat-window'))[0]?.message).toMatch(/carries the next layer after/);
    });
});
