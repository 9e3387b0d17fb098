import { AstUtils, GrammarAST } from 'langium';
import { expect, test } from 'vitest';
import { languagePage } from '../kit/language-page';
import { services } from '../language/services';

test('extension/docs/language.md says what the vocabulary says (else: npm run words)', async () => {
    await expect(languagePage()).toMatchFileSnapshot('../../extension/docs/language.md');
});

test('every row says what holds where it is left out', () => {
    const tables = languagePage()
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
        [...languagePage().matchAll(/`([^`\n]+)`|^### (.+)$/gm)].flatMap(([, code = '', word = '']) =>
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
