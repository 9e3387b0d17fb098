import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { constructs } from '../../language/vocabulary/constructs';
import { anchorOf } from '../../language/vocabulary/manual';
import type { KerfLanguageServer } from '../../language/workspace/language-server';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { art, shop } from '../kit/shop';

let kit: MemoryWorkshop;
beforeAll(async () => {
    kit = await memoryWorkshop(art);
});

/** What is said at `<|>` to a client that can open the manual, or cannot. */
async function hover(marked: string, canOpen = true): Promise<string> {
    const { client } = kit.workshop.services.shared.lsp.LanguageServer as KerfLanguageServer;
    Object.assign(client, { commands: new Set(canOpen ? ['kerfbook.openManual'] : []) });
    const document = await kit.open(marked.replace('<|>', ''));
    const said = await kit.workshop.services.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(marked.indexOf('<|>')),
    });
    return (said?.contents as MarkupContent | undefined)?.value ?? '';
}

const link = (anchor: string) => `[Manual](command:kerfbook.openManual?%5B%22${anchor}%22%5D)`;
const recipe = (body: string) => `${shop}\nrecipe tray { laser shed\n blank b { of walnut-12 size 90 x 60 mm }\n ${body}\n}`;

it('each construct has a heading of its own on the language’s page', () => {
    const seen = new Map<string, number>();
    const headings = [
        ...readFileSync(new URL('../../extension/docs/language.md', import.meta.url), 'utf8').matchAll(/^##+ (.+)$/gm),
    ];
    const ids = headings.map(([, words]) => {
        const slug = words!.toLowerCase().replaceAll(' ', '-');
        seen.set(slug, (seen.get(slug) ?? -1) + 1);
        return seen.get(slug) === 0 ? slug : `${slug}-${seen.get(slug)}`;
    });
    expect(ids).toContain('inside-lines');
    for (const { type, word } of constructs) {
        const id = anchorOf(type, word);
        expect(ids).toContain(id);
        expect(id!.replace(/-\d+$/, '')).toBe(word.replaceAll(' ', '-'));
    }
});

it('a word leads to its heading, a line to that of its block, a name to that of what it is', async () => {
    expect(await hover(recipe('engr<|>ave p on b { circle 20 mm depth 0.5 mm }'))).toContain(link('engrave'));
    expect(await hover(recipe('engrave p on b { circle 20 mm dep<|>th 0.5 mm }'))).toContain(link('engrave'));
    expect(await hover(recipe('fin<|>ish b with shellac-coat'))).toContain(link('finish-1'));
    expect(await hover(recipe('finish b wi<|>th shellac-coat'))).toContain(link('inside-lines'));
    expect(await hover(recipe('').replace('walnut-12 size', 'walnut-<|>12 size'))).toContain(link('board'));
});

it('says nothing of it to an editor that cannot open it', async () => {
    expect(await hover(recipe('engr<|>ave p on b { circle 20 mm depth 0.5 mm }'), false)).not.toContain('command:');
});
