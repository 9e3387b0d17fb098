import { expect } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { cursorIn, eachText } from './cases';

/** What is told at `<|>`: each line of `=== says` stands in it, none of `=== says not`; `=== nothing` where nothing is told. */
eachText('hovers', async ({ text: marked, expected, kit, name }) => {
    const { text, offset } = cursorIn(marked);
    const document = await kit.open(text, name);
    const told = await kit.workshop.services.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset),
    });
    const said = (told?.contents as MarkupContent | undefined)?.value ?? '';
    expect(expected).not.toEqual([]);
    for (const { kind, of, lines } of expected) {
        if (kind === 'nothing') expect(said).toBe('');
        else if (of === 'not') for (const line of lines) expect(said).not.toContain(line);
        else for (const line of lines) expect(said).toContain(line);
    }
});
