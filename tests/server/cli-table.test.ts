import { describe, expect, it } from 'vitest';
import { repository, shopFiles } from './shop-files';

const variants = `use "coaster.kerf"
recipe deep based on coaster { engrave hollow { depth 0.7 mm } }
recipe small based on coaster { blank disc { size 80 x 80 mm } }
`;
const files = { ...shopFiles, 'variants.kerf': variants };

const folder = () => repository(files);

describe('kerfbook table', () => {
    it('the family of a file, its base out of the file that it uses', async () => {
        const { code, out } = await folder().kerfbook(['table', 'variants.kerf']);
        expect(out).toMatch(/^ +coaster +deep +small$/m);
        expect(out).toMatch(/^ {2}depth +0\.5 mm +0\.7 mm +0\.5 mm$/m);
        expect(out).toMatch(/^ {2}size +100 x 100 mm +100 x 100 mm +80 x 80 mm$/m);
        expect(out).not.toMatch(/^ {2}coats /m);
        expect(code).toBe(0);
    });

    it('below a base, any recipes by name, with all rows, in every format', async () => {
        const shop = folder();
        expect((await shop.kerfbook(['table', '--base', 'coaster', '--all'])).out).toMatch(/^ {2}coats +2 +2 +2$/m);
        const { out } = await shop.kerfbook(['table', '--recipes', 'plate,deep', '--format', 'json']);
        expect(JSON.parse(out)).toMatchObject({ schema: 1, columns: [{ recipe: 'plate' }, { recipe: 'deep', base: 'coaster' }] });
        expect((await shop.kerfbook(['table', '--format', 'markdown'])).out).toContain('| depth | 0.5 mm | 0.7 mm | 0.5 mm |');
        expect((await shop.kerfbook(['table', '--format', 'csv'])).out).toContain(
            'Engrave hollow,depth,written,0.5 mm,0.7 mm,0.5 mm\r\n',
        );
        expect((await shop.kerfbook(['table', '--format', 'html'])).out).toMatch(/^<!doctype html>[\s\S]*<td>0\.7 mm<\/td>/);
    });

    it.each([
        [['table', '--format', 'pdf'], '--format is one of'],
        [['table', 'coaster.kerf'], 'No recipe in these files is based on another'],
        [['table', '--base', 'nobody'], 'There is no recipe nobody.'],
        [['table', '--base', 'plate'], 'Nothing in these files is based on plate.'],
        [['table', '--recipes', 'deep'], 'Name at least two recipes'],
        [['table', '--recipes', 'deep,nobody'], 'There is no recipe nobody.'],
        [['table', '--base', 'coaster', '--recipes', 'a,b'], 'not both'],
    ])('%j is refused', async (args, message) => {
        const { code, out, err } = await folder().kerfbook(args);
        expect(err).toContain(message);
        expect(out).toBe('');
        expect(code).toBe(2);
    });

    it('several families: asks which', async () => {
        const two = {
            ...files,
            'plates.kerf': 'use "plate.kerf"\nrecipe big based on plate { blank plate { size 150 x 150 mm } }\n',
        };
        const { code, err } = await repository(two).kerfbook(['table']);
        expect(err).toContain('Say which with --base: coaster, plate.');
        expect(code).toBe(2);
    });
});
