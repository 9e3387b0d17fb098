import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { CheckAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import { LanguageClient } from '../kit/language-client';
import { flag, shop } from '../kit/shop';

const home = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-folders-')));
const uriOf = (name: string): string => pathToFileURL(path.join(home, name)).toString();
const recipe =
    'use "../two/shop.kerf"\nrecipe plate { revision 1  laser shed  art flag "../two/flag.svg"  blank b { of ash-10  size 50 x 50 mm  grain along width }\n engrave e on b { art flag  tone 50 %  air off } }\n';
let client: LanguageClient;

beforeAll(async () => {
    for (const name of ['one', 'two']) mkdirSync(path.join(home, name));
    writeFileSync(path.join(home, 'one/plate.kerf'), recipe);
    writeFileSync(path.join(home, 'two/shop.kerf'), shop);
    writeFileSync(path.join(home, 'two/flag.svg'), flag);
    ({ client } = await LanguageClient.start(path.join(home, 'one'), uriOf('one')));
});
afterAll(() => {
    client.stop();
    rmSync(home, { recursive: true, force: true });
});

const folders = (change: { added?: string[]; removed?: string[] }) =>
    client.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
        event: {
            added: (change.added ?? []).map((name) => ({ uri: uriOf(name), name })),
            removed: (change.removed ?? []).map((name) => ({ uri: uriOf(name), name })),
        },
    });

it('a folder that is added is read with its art, and one that is taken out is not any more', async () => {
    await client.open(uriOf('one/plate.kerf'), recipe);
    const wrong = (name: string) => (all: { code?: unknown }[]) => all.some(({ code }) => code === name);
    await client.diagnostics(uriOf('one/plate.kerf'), wrong('art-missing'));
    await folders({ added: ['two'] });
    await client.diagnostics(uriOf('two/shop.kerf'), () => true);
    await client.change(uriOf('one/plate.kerf'), 2, `${recipe}\n`);
    await client.diagnostics(uriOf('one/plate.kerf'), (all) => !wrong('art-missing')(all) && !wrong('unknown-name')(all));
    const two = await client.connection.sendRequest<CheckAnswer>(requests.check.method, { folder: uriOf('two') });
    expect(two).toMatchObject({ failed: false, files: [{ path: 'shop.kerf', recipes: [], errors: 0 }] });
    await folders({ removed: ['two'] });
    await client.change(uriOf('one/plate.kerf'), 3, recipe);
    await client.diagnostics(uriOf('one/plate.kerf'), wrong('unknown-name'));
});

it('a check says what the command line says, of the files as they stand in the editor', async () => {
    const text = 'recipe half { blank b { size 5 x 5 } }\n';
    await client.open(uriOf('one/half.kerf'), text);
    await client.diagnostics(uriOf('one/half.kerf'), (all) => all.length > 0);
    const answer = await client.connection.sendRequest<CheckAnswer>(requests.check.method, { folder: uriOf('one') });
    expect(answer.report).toMatch(/^half\.kerf:1:\d+: error: .* \[missing-unit\]$/m);
    expect(answer.report).toMatch(/\n\d+ files: \d+ errors?, /);
    expect(answer.failed).toBe(true);
});
