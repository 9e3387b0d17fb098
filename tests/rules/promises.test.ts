import { describe, expect, it } from 'vitest';
import { fillRecipe } from '../kit/shop';
import { expectMended, one, recipe, silent, words, workshop } from './harness';

workshop();

const pocket = (depth: string) =>
    recipe(`blank b { of ash-10 size 100 x 80 mm grain along width }\n engrave e on b { art flag depth ${depth} air off }`);

describe('depth-promise', () => {
    it('a tolerance closer than the coupon keeps: the interval is told, and a promise that holds', async () => {
        const text = pocket('1.2 mm +- 0.001 mm');
        const finding = await one(text, 'depth-promise');
        expect(words(text, finding)).toBe('1.2 mm +- 0.001 mm');
        expect(finding.message).toMatch(/promised between 1\.199 mm and 1\.201 mm deep; it comes to /);
        await expectMended(text, finding);
    });
    it('a range is a promise, too', async () => {
        const text = pocket('1.199 .. 1.201 mm');
        await expectMended(text, await one(text, 'depth-promise'));
    });
    it('is silent where the promise can be kept, and where none is given', async () => {
        await silent(pocket('1.2 mm +- 0.6 mm'), 'depth-promise');
        await silent(pocket('1.2 mm'), 'depth-promise');
    });
});

describe('a wait written as a range', () => {
    it('has passed to its shorter end where something has to dry', async () => {
        const text = fillRecipe({ between: 'seal disc with shellac wait 20 min .. 3 h'.replace('20 min ..', '0.3 ..') });
        const finding = await one(text, 'fill-before-dry');
        expect(finding.message).toMatch(/^shellac needs 1 h to dry; tide-blue goes on it after /);
        await silent(fillRecipe({ between: 'seal disc with shellac wait 1 .. 3 h' }), 'fill-before-dry');
    });
});
