import { expect } from 'vitest';
import { cursorIn, eachText } from './cases';

/**
 * What is proposed at `<|>`. `=== has` and `=== has not` list labels, a line each; `=== first` those at the top, in order; `=== only` all
 * there are.
 */
eachText('completions', async ({ text: marked, expected, kit, name }) => {
    const { text, offset } = cursorIn(marked);
    const document = await kit.open(text, name);
    const list = await kit.workshop.services.lsp.CompletionProvider!.getCompletion(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset),
    });
    const labels = (list?.items ?? [])
        .sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1))
        .map(({ label }) => label);
    expect(expected).not.toEqual([]);
    for (const { kind, of, lines } of expected) {
        if (kind === 'only') expect(labels).toEqual(lines);
        else if (kind === 'first') expect(labels.slice(0, lines.length)).toEqual(lines);
        else if (of === 'not') expect(labels.filter((label) => lines.includes(label))).toEqual([]);
        else expect(labels).toEqual(expect.arrayContaining([...lines]));
    }
});
