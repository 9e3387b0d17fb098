import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { LanguageClient } from '../kit/language-client';
import { shop } from '../kit/shop';

it('what is found in a routine of another file is shown there, until no recipe brings it about', async () => {
    const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-routine-')));
    const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).toString();
    const stock = `${shop}routine oiled for piece { sand piece { take 0.05 mm  grits 60, 240 } }\n`;
    const recipe = (name: string) =>
        `use "stock.kerf"\nrecipe ${name} { blank tray { of walnut-12  size 90 x 60 mm }\nfollow oiled on tray }\n`;
    for (const [name, text] of Object.entries({ 'stock.kerf': stock, 'a.kerf': recipe('a'), 'b.kerf': recipe('b') })) {
        writeFileSync(path.join(folder, name), text);
    }
    const { client } = await LanguageClient.start(folder, pathToFileURL(folder).toString());
    try {
        for (const name of ['a.kerf', 'b.kerf']) await client.open(uriOf(name), recipe(name[0]!));
        const jumps = (all: readonly Diagnostic[]) => all.filter(({ code }) => code === 'grit-jump');
        const said = await client.diagnostics(uriOf('stock.kerf'), (all) => jumps(all)[0]?.relatedInformation?.length === 2);
        expect(jumps(said)).toHaveLength(1);
        for (const name of ['a.kerf', 'b.kerf']) {
            await client.change(uriOf(name), 2, recipe(name[0]!).replace('follow oiled on tray', 'sand tray { grits 120 }'));
        }
        expect(await client.diagnostics(uriOf('stock.kerf'), (all) => jumps(all).length === 0)).toEqual([]);
    } finally {
        client.stop();
        rmSync(folder, { recursive: true, force: true });
    }
});
