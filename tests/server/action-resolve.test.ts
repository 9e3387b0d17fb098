import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, expect, it } from 'vitest';
import type { CodeAction, Diagnostic } from 'vscode-languageserver';
import { LanguageClient, type Says } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const uri = pathToFileURL(`${samples}/heron-tray-faulty.kerf`).toString();
const text = readFileSync(fileURLToPath(uri), 'utf8');
const resolving: Says = { textDocument: { codeAction: { dataSupport: true, resolveSupport: { properties: ['edit'] } } } };

let clients: LanguageClient[] = [];
afterEach(() => {
    for (const client of clients) client.stop();
    clients = [];
});

async function opened(says: Says = {}): Promise<{ client: LanguageClient; diagnostics: readonly Diagnostic[] }> {
    const { client } = await LanguageClient.start(samples, pathToFileURL(samples).toString(), says);
    clients.push(client);
    await client.open(uri, text);
    return { client, diagnostics: await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'not-mirrored')) };
}

function actionsOf(client: LanguageClient, diagnostics: readonly Diagnostic[]): Promise<CodeAction[]> {
    const lines = text.split('\n');
    return client.connection.sendRequest('textDocument/codeAction', {
        textDocument: { uri },
        range: { start: { line: 0, character: 0 }, end: { line: lines.length - 1, character: 0 } },
        context: { diagnostics },
    });
}

const weightOf = (actions: readonly CodeAction[]) => JSON.stringify(actions).length;

it('actions come without their edits to who asks for them one by one, and then they are the same', async () => {
    const plain = await opened();
    const late = await opened(resolving);
    const whole = await actionsOf(plain.client, plain.diagnostics);
    const light = await actionsOf(late.client, late.diagnostics);
    expect(light.map(({ title }) => title)).toEqual(whole.map(({ title }) => title));
    expect(light.length).toBeGreaterThan(40);
    expect(light.every(({ edit, data }) => edit === undefined && typeof data === 'number')).toBe(true);
    const resolved = await Promise.all(
        light.map((action) => late.client.connection.sendRequest<CodeAction>('codeAction/resolve', action)),
    );
    expect(resolved.map(({ edit }) => edit)).toEqual(whole.map(({ edit }) => edit));
    // 54 actions: 55 kB with edits and all that findings carry, 18 kB now.
    expect(weightOf(light)).toBeLessThan(20_000);
});

it('an action of a text that has changed since is refused, not guessed', async () => {
    const { client, diagnostics } = await opened(resolving);
    const [action] = await actionsOf(client, diagnostics);
    await client.change(uri, 2, `// one line more\n${text}`);
    await expect(client.connection.sendRequest('codeAction/resolve', action)).rejects.toThrow('The text has changed since');
    await expect(client.connection.sendRequest('codeAction/resolve', { ...action, data: 10_000 })).rejects.toThrow('has changed');
});

it('what is whole already, or of another server, goes back as it came', async () => {
    const { client } = await opened(resolving);
    const other = { title: 'Of another server', data: { id: 3 } };
    expect(await client.connection.sendRequest('codeAction/resolve', other)).toEqual(other);
});
