import { describe, expect, it } from 'vitest';
import { expectMarked } from './marked';

const board = 'board oak { wood white-oak  thickness 10 mm  moisture 8 % }';

describe('what the text alone says', () => {
    it('an unknown name, with a suggestion and a fix', async () => {
        const findings = await expectMarked(`
board oak { wood white-oaks  thickness 10 mm  moisture 8 % }
                 ^^^^^^^^^^ unknown-name: white-oak`);
        expect(findings[0]?.fixes[0]?.changes[0]).toMatchObject({ do: 'replace', text: 'white-oak' });
    });
    it('a wrong kind of unit, at the unit', () =>
        expectMarked(`
board oak { wood white-oak  thickness 10 s  moisture 8 % }
                                         ^ wrong-unit: a length`));
    it('a missing unit, with fixes', async () => {
        const findings = await expectMarked(`
board oak { wood white-oak  thickness 10  moisture 8 % }
                                      ^^ missing-unit: needs a unit`);
        expect(findings[0]?.fixes[0]).toMatchObject({ title: '10 mm' });
    });
    it('a good board has nothing to say', () => expectMarked(board));
});
