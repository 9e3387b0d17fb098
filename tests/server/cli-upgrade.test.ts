import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { repository } from './shop-files';

describe('kerfbook upgrade', () => {
    it('says what it would rewrite, rewrites it, and has nothing left to do', async () => {
        const shop = repository();
        const file = path.join(shop.folder, 'old.kerf');
        const later = path.join(shop.folder, 'later.kerf');
        writeFileSync(
            file,
            'recipe old {\r\n  revision 3 // kept\r\n  blank b { of oak  backing none }\r\n  engrave e on b { mirror on  air off }\r\n}\r\nrun old 2026-10-10 { revision 3 }\r\n',
        );
        writeFileSync(later, 'edition 2031\nrecipe later { revision 3 }\n');
        const dry = await shop.kerfbook(['upgrade', 'old.kerf', 'later.kerf', '--dry-run']);
        expect(dry).toMatchObject({ code: 0, err: '' });
        expect(dry.out).toContain('old.kerf:2: revision → issue');
        expect(dry.out).toContain('old.kerf:3: backing none → without backing');
        expect(dry.out).toContain('later.kerf: written for a later edition, left alone');
        expect(dry.out).toContain('Would rewrite 1 file.');
        expect(readFileSync(file, 'utf8')).toContain('revision 3');
        expect((await shop.kerfbook(['upgrade', 'old.kerf', 'later.kerf'])).out).toContain('Rewrote 1 file.');
        expect(readFileSync(file, 'utf8')).toBe(
            'recipe old {\r\n  issue 3 // kept\r\n  blank b { of oak  without backing }\r\n  engrave e on b { mirror  without air }\r\n}\r\nrun old 2026-10-10 { issue 3 }\r\n',
        );
        expect(readFileSync(later, 'utf8')).toContain('revision 3');
        expect((await shop.kerfbook(['upgrade', 'old.kerf'])).out).toContain('Nothing to rewrite.');
    });
});
