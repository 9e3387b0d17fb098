import { AstUtils, GrammarAST } from 'langium';
import { expect, test } from 'vitest';
import { languagePage } from '../kit/language-page';
import { sampleUses, unusedRows } from '../kit/sample-uses';
import { services } from '../language/services';

const uses = await sampleUses();

test('extension/docs/language.md says what the vocabulary says (else: npm run words)', async () => {
    await expect(languagePage(uses)).toMatchFileSnapshot('../../extension/docs/language.md');
});

test('every row says what holds where it is left out', () => {
    const tables = languagePage(uses)
        .split('\n\n')
        .filter((part) => part.startsWith('| '));
    let rows = 0;
    for (const table of tables) {
        const [head, , ...lines] = table
            .trim()
            .split('\n')
            .map((line) => line.split(/(?<!\\)\|/).map((cell) => cell.trim()));
        const column = head!.indexOf('if left out');
        if (column < 0) continue;
        rows += lines.length;
        expect(lines.filter((cells) => cells[column] === '').map((cells) => cells.join(' '))).toEqual([]);
    }
    expect(rows).toBeGreaterThan(200);
});

test('no word of the grammar is missing', () => {
    const said = new Set(
        [...languagePage(uses).matchAll(/`([^`\n]+)`|^### (.+)$/gm)].flatMap(([, code = '', word = '']) =>
            `${code} ${word}`.split(/[\s,]+/),
        ),
    );
    const words = AstUtils.streamAllContents(services.Grammar)
        .filter(GrammarAST.isKeyword)
        .map(({ value }) => value)
        .filter((value) => /\p{L}/u.test(value))
        .toArray();
    expect(words.length).toBeGreaterThan(140);
    expect([...new Set(words)].filter((word) => !said.has(word))).toEqual([]);
});

/**
 * What no sample happens to need: words of before this was asked for. A new word does not come here: it waits until a sample needs it.
 */
const withoutSample = new Set([
    'wood',
    'beam',
    'abrasive',
    'allow',
    'FluidPrice … powder',
    'WholeBlank … blank',
    'Scan … at',
    'Setpoint … set',
    'Setpoint … gives',
    ...Object.entries({
        Beam: 'wavelength, foil, caution',
        Wood: 'density, radial, tangential, pores, bleed, colour, char, caution',
        Abrasive: 'particle',
        Board: 'made of, treated with, bought',
        Veneer: 'made of, treated with, bought',
        Lot: 'moisture',
        Laser: 'set, overtravel, aperture, quality, zero',
        Resin: 'recoat, deepest pour, narrowest slot, density, powder, caution, food',
        Sealer: 'spread, density, caution, food',
        Glue: 'film, clamp, cure, spread, density, caution, food, weather',
        Coat: 'cure, spread, density, rags, caution, food, weather',
        Art: 'height, threshold',
        Engrave: 'air, power, speed, offset',
        Cut: 'mirror, air, offset',
        Check: 'width',
    }).flatMap(([block, words]) => words.split(', ').map((word) => `${block}: ${word}`)),
]);

test('every new word names the sample that needs it', () => {
    expect(unusedRows(uses).filter((row) => !withoutSample.has(row))).toEqual([]);
});
