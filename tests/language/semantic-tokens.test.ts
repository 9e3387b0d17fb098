import { readdirSync, readFileSync } from 'node:fs';
import { SemanticTokensDecoder } from 'langium/lsp';
import { expect, it } from 'vitest';
import { open, services } from './services';

const samples = readdirSync('samples').filter((name) => name.endsWith('.kerf'));

it.each(samples)('no two names are coloured in the same place in %s', async (name) => {
    const document = await open(readFileSync(`samples/${name}`, 'utf8'), `file:///shop/${name}`);
    const provider = services.lsp.SemanticTokenProvider!;
    const tokens = await provider.semanticHighlight(document, { textDocument: { uri: document.uri.toString() } });
    const found = SemanticTokensDecoder.decode(tokens as never, provider.tokenTypes, document);
    for (const [index, { offset, text }] of found.entries()) {
        const before = found[index - 1];
        expect(before === undefined || before.offset + before.text.length <= offset, `${text} after ${before?.text}`).toBe(true);
    }
});

it('two files that are asked for at once keep their colours apart', async () => {
    const documents = await Promise.all(
        ['heron-tray', 'tide-coaster'].map((name) =>
            open(readFileSync(`samples/${name}.kerf`, 'utf8'), `file:///shop/${name}-once.kerf`),
        ),
    );
    const provider = services.lsp.SemanticTokenProvider!;
    const ask = async (index: number): Promise<readonly number[]> => {
        const document = documents[index]!;
        return (await provider.semanticHighlight(document, { textDocument: { uri: document.uri.toString() } })).data;
    };
    const alone = [await ask(0), await ask(1)];
    expect(await Promise.all([ask(0), ask(1), ask(0)])).toEqual([alone[0], alone[1], alone[0]]);
});
