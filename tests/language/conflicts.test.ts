import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import { open, services } from './services';

const recipe = (middle: string): string => `board walnut-12 { wood black-walnut  thickness 12 mm }
laser shed { beam co2  power 45 W  spot 0.15 mm }
recipe tray {
  laser shed
${middle}  engrave pocket on tray { circle 80 mm  depth 0.5 mm  air off }
}
`;
const first = '  blank tray { of walnut-12  size 300 x 200 mm  grain along width }\n';
const second = '  blank tray { of walnut-12  size 310 x 200 mm  grain along width }\n  wait 2 h\n';
const merged = (a: string, b: string, base?: string): string =>
    `<<<<<<< HEAD\n${a}${base === undefined ? '' : `||||||| 1a2b3c4\n${base}`}=======\n${b}>>>>>>> taller\n`;

async function mended(text: string): Promise<string[]> {
    const document = await open(text);
    const found = textFindings(document, services);
    expect(found.map(({ rule }) => rule)).toEqual(['syntax']);
    return found[0]!.fixes.map(({ changes: [change] }) => {
        if (change?.do !== 'replace') throw new Error('No replacement.');
        const { offset, length } = change.where;
        return text.slice(0, offset) + change.text + text.slice(offset + length);
    });
}

describe('what git could not merge', () => {
    it.each([
        ['two sides', recipe(merged(first, second))],
        ['two sides and their base', recipe(merged(first, second, '  blank tray {\n'))],
        ['Windows lines', recipe(merged(first, second)).replaceAll('\n', '\r\n')],
    ])('%s: one finding, and three ways to settle it', async (_, text) => {
        const eol = (wanted: string): string => (text.includes('\r\n') ? wanted.replaceAll('\n', '\r\n') : wanted);
        expect(await mended(text)).toEqual([recipe(first), recipe(second), recipe(first + second)].map(eol));
    });

    it('says nothing of what stands inside, be it broken or a block that goes on behind it', async () => {
        await mended(recipe(merged('  blnk tray of walnut {{\n', '  blank tray { of nothing }\n')));
        await mended(
            `${recipe(first)}${merged('run tray 2026-03-01 {\n  pocket depth 1 mm\n', 'run tray 2026-03-02 {\n  pocket depth 2 mm\n')}}\n`,
        );
        await mended(`${merged('board a { thickness 3 furlongs }\n', '')}${recipe(first)}`);
    });

    it('is not planned as if one side held: the recipe is known to be incomplete, and the others are whole', async () => {
        const [tray, dish] = lowerFile(await open(`${recipe(merged(first, second))}recipe dish { make 2 }\n`), services);
        expect(tray).toMatchObject({ incomplete: [expect.objectContaining({ uri: expect.any(String) })], blanks: [] });
        expect(dish).not.toHaveProperty('incomplete');
    });

    it('is not laid out anew before it is settled: a marker begins its line', async () => {
        const document = await open(recipe(merged(first, `    ${second}`)));
        const formatter = services.lsp.Formatter!;
        const options = { tabSize: 2, insertSpaces: true };
        const textDocument = { uri: document.uri.toString() };
        expect(await formatter.formatDocument(document, { options, textDocument })).toEqual([]);
    });

    it('is told for each place', async () => {
        const document = await open(`${merged('', 'board a { }\n')}${recipe(first)}${merged('// a\n', '// b\n')}`);
        expect(textFindings(document, services).filter(({ rule }) => rule === 'syntax')).toHaveLength(2);
    });
});
