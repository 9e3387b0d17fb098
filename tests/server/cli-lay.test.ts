import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readMarks } from '../../server/cli/lay';
import { repository, shopFiles } from './shop-files';

const tag = `use "stock/shop.kerf"
recipe tag "Tag" { issue 1 laser shed
  blank tag { of walnut-12 size 100 x 80 mm grain along width }
  engrave crosses on tag { circle 3 mm at 10, 40 mm circle 3 mm at 90, 40 mm depth 0.3 mm air off }
  do "lay it back" for 2 min { taken off found by marks of crosses }
  engrave note on tag { rectangle 20 x 10 mm depth 0.3 mm air off } }
`;

describe('kerfbook lay', () => {
    it('writes the files for this piece beside those of the recipe, and says what is left', async () => {
        const shop = repository({ ...shopFiles, 'tag.kerf': tag });
        const { code, out, err } = await shop.kerfbook(['lay', 'tag.kerf', '--set-up', '2', '--marks', '10.3,40.1 90.3,40.2']);
        expect(err).toBe('');
        expect(code).toBe(0);
        expect(out).toMatch(
            /laid\.json {2}\(set-up 2, tag: turned by 0\.072° anticlockwise about X 0 Y 0, moved by X .* the marks are up to .* off after that\)/,
        );
        const below = path.join(shop.folder, 'made', 'tag', 'laid-2');
        expect(readFileSync(path.join(below, 'setup-2-tag.ngc'), 'utf8')).toContain('moved and turned for the one piece');
        expect(existsSync(path.join(shop.folder, 'made', 'tag', 'plan.json'))).toBe(false);
    });

    it('writes nothing where the marks cannot be meant, until it is said twice', async () => {
        const shop = repository({ ...shopFiles, 'tag.kerf': tag });
        const args = ['lay', 'tag.kerf', '--set-up', '2', '--marks', '10.3,40.1 93.3,40.2'];
        const refused = await shop.kerfbook(args);
        expect(refused).toMatchObject({ code: 1, out: '' });
        expect(refused.err).toContain('or say it twice with --anyway');
        expect(existsSync(path.join(shop.folder, 'made'))).toBe(false);
        expect(await shop.kerfbook([...args, '--anyway'])).toMatchObject({ code: 0 });
    });

    it('reads places as X and Y in mm, and says what it cannot read', () => {
        expect(readMarks('10.2,-40 - +.5,3.')).toEqual([{ x: 10.2, y: -40 }, null, { x: 0.5, y: 3 }]);
        for (const wrong of ['', '1,2', '1,2 3', '1,2 3,4,5', '1,2 a,b', '1,2 Infinity,3', '1,2 1e9,3'])
            expect(() => readMarks(wrong), wrong).toThrow();
    });
});
