import { describe, expect, it } from 'vitest';
import { readArt } from '../../server/engine/read-art';
import type { ArtSource } from '../../shared/recipe/recipe';

const source = { name: 'heron', path: { value: 'art/heron', where: {} } } as unknown as ArtSource;
const read = (bytes: Uint8Array) => readArt(source, { uri: 'file:///art/heron', version: '1', bytes });
const bytesOf = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('files of other formats are told by what they are, with what to save them as', () => {
    for (const [beginning, what, cure] of [
        ['GIF89a\x01\0', 'a GIF', 'PNG'],
        ['RIFF\x24\0\0\0WEBPVP8 ', 'a WebP', 'PNG'],
        ['BM\x46\0\0\0', 'a BMP', 'PNG'],
        ['II*\0\x08', 'a TIFF', 'PNG'],
        ['MM\0*\0', 'a TIFF', 'PNG'],
        ['\0\0\0\x18ftypheic', 'a HEIC', 'PNG'],
        ['%PDF-1.7\n', 'a PDF', 'SVG'],
        ['%!PS-Adobe-3.0 EPSF-3.0\n', 'a PostScript file', 'SVG'],
        ['  0\r\nSECTION\r\n  2\r\nHEADER\r\n', 'a DXF', 'SVG'],
        ['999\nmade by hand\n0\nSECTION\n', 'a DXF', 'SVG'],
    ] as const) {
        it(`${what}: ${JSON.stringify(beginning)}`, () => {
            const state = read(bytesOf(beginning));
            expect(state).toMatchObject({ kind: 'unreadable', message: expect.stringContaining(what) });
            expect(state).toMatchObject({ message: expect.stringContaining(`save it as ${cure}`) });
        });
    }
    it('an SVG is read', () => {
        const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><path d="M0 0h9v9z"/></svg>';
        expect(read(bytesOf(svg))).toMatchObject({ kind: 'art', art: { parts: [{}] } });
    });
});

it('a file that is too large is told with the bound', () => {
    const state = readArt(source, { uri: 'file:///art/heron', version: '1', problem: 'too-large' });
    expect(state).toMatchObject({ message: expect.stringContaining('larger than the 32 MB') });
});
