import { describe, expect, it } from 'vitest';
import { printManifest, readManifest } from '../../shared/sheets/manifest';

const hash = (digit: string) => digit.repeat(64);
const of = { of: 'recipe tray', from: '../tray.kerf' };

describe('what was written into a folder', () => {
    it('reads alike in whatever order it was made, so that two runs differ by nothing', () => {
        const one = printManifest({
            ...of,
            hashes: new Map([
                ['b.svg', hash('1')],
                ['a.ngc', hash('2')],
                ['plan.json', hash('3')],
            ]),
        });
        const other = printManifest({
            ...of,
            hashes: new Map([
                ['plan.json', hash('3')],
                ['a.ngc', hash('2')],
                ['b.svg', hash('1')],
            ]),
        });
        expect(one).toBe(other);
        expect(Object.keys(JSON.parse(one).files)).toEqual(['a.ngc', 'b.svg', 'plan.json']);
    });

    it('comes back as it was', () => {
        const hashes = new Map([['art/x.svg', hash('a')]]);
        expect(readManifest(printManifest({ ...of, hashes }))).toEqual({ ...of, hashes });
    });

    it('is undefined for what somebody else wrote under its name', () => {
        const { files, ...head } = JSON.parse(printManifest({ ...of, hashes: new Map() }));
        const wrong = [
            { ...head, files: null },
            { ...head, files: 3 },
            head,
            { ...head, files, schema: 2 },
            { ...head, files, of: 1 },
        ];
        for (const each of [null, 3, [], ...wrong, { ...head, files, from: undefined }])
            expect(readManifest(JSON.stringify(each)), JSON.stringify(each)).toBeUndefined();
        expect(readManifest('{')).toBeUndefined();
    });

    it('knows nothing of what would lie elsewhere, nor of what is no hash', () => {
        const files = {
            '../x': hash('1'),
            '/etc/x': hash('1'),
            'x.svg': 'abc',
            'y.svg': 7,
            'z.svg': `${hash('1')}1`,
            'w.svg': hash('0'),
        };
        const read = readManifest(JSON.stringify({ ...JSON.parse(printManifest({ ...of, hashes: new Map() })), files }));
        expect([...read!.hashes.keys()]).toEqual(['w.svg']);
    });
});
