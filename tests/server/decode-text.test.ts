import { describe, expect, it } from 'vitest';
import { decodeText } from '../../server/engine/decode-text';
import { memoryWorkshop } from '../kit/memory-workshop';
import { recipe } from '../rules/harness';

const declared = (encoding: string, content: string) => `<?xml version="1.0" encoding="${encoding}"?><svg id="${content}"/>`;
/** One byte a character. */
const narrow = (text: string) => Uint8Array.from(text, (character) => character.charCodeAt(0));
const wide = (text: string, big: boolean) =>
    Uint8Array.from([...text].flatMap((character) => (big ? [0, character.charCodeAt(0)] : [character.charCodeAt(0), 0])));
const read = (bytes: Uint8Array) => decodeText(bytes) as { text: string };

describe('the text of a drawing', () => {
    it('is in the encoding that it names', () => {
        expect(read(narrow(declared('ISO-8859-1', 'H\u00e9ron'))).text).toContain('H\u00e9ron');
        expect(read(narrow(declared('windows-1252', '\u0080'))).text).toContain('€');
        expect(read(narrow(declared('windows-1251', '\u00d6'))).text).toContain('Ц');
        expect(read(narrow(declared('koi8-r', '\u00c1'))).text).toContain('а');
    });
    it('is UTF-8 where nothing is said, and what its first bytes say before all else', () => {
        expect(read(new TextEncoder().encode('<svg id="Héron"/>')).text).toContain('Héron');
        expect(read(new TextEncoder().encode(declared('UTF-16', 'Héron'))).text).toContain('Héron');
        expect(read(wide(declared('UTF-16', 'é'), false)).text).toContain('é');
        expect(read(wide(declared('ISO-8859-1', 'é'), true)).text).toContain('é');
    });
    it('in an encoding nobody knows is a finding that says so', async () => {
        expect(decodeText(narrow(declared('ebcdic-cp-us', 'x')))).toEqual({ problem: expect.stringContaining('ebcdic-cp-us') });
        const kit = await memoryWorkshop({ 'flag.svg': narrow(declared('x-heron', '')), 'diamond.svg': '<svg/>' });
        const text = recipe('blank tray { of walnut-12 size 90 x 60 mm } engrave face on tray { art flag tone 80 % air off }');
        const told = (await kit.findings(text)).filter(({ rule }) => rule === 'art-missing').map(({ message }) => message);
        expect(told.join()).toContain('x-heron');
    });
});
