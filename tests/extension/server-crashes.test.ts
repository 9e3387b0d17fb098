import { expect, test, vi } from 'vitest';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { ServerCrashes } from '../../extension/server-crashes';
import { requests } from '../../shared/view/requests';

const said = vi.hoisted(() => ({ messages: [] as string[][], choose: (_choice: string) => {} }));

vi.mock('vscode', async (original) => ({
    ...(await original<typeof import('../kit/vscode')>()),
    CancellationTokenSource: class {
        token = {};
    },
    CancellationError: class extends Error {},
    EventEmitter: class {
        private readonly heard: (() => void)[] = [];
        event = (hear: () => void) => this.heard.push(hear);
        fire = () => this.heard.forEach((hear) => void hear());
        dispose() {}
    },
    workspace: { createFileSystemWatcher: () => ({}) },
    window: {
        showErrorMessage: (...words: string[]) => {
            said.messages.push(words);
            return new Promise<string>((resolve) => {
                said.choose = resolve;
            });
        },
    },
}));
vi.mock('vscode-languageclient', () => ({
    CloseAction: { DoNotRestart: 1, Restart: 2 },
    ErrorAction: { Continue: 1, Shutdown: 2 },
    ProgressType: class {},
}));
const { RecipeServer } = await import('../../extension/server');

test('a server that dies now and then is started anew, and one that dies again and again is not until somebody says so', () => {
    const crashes = new ServerCrashes();
    const died = (...seconds: number[]) => seconds.map((second) => crashes.isWorthRestarting(1000 * second));
    expect(died(0, 60, 120, 180, 300, 360)).toEqual([true, true, true, true, true, true]);
    expect(died(361, 362, 363)).toEqual([true, true, false]);
    crashes.forget();
    expect(died(364, 365, 366, 367, 368)).toEqual([true, true, true, true, false]);
});

test('a server that was killed often stays down, says so once, is not started by asking, and comes up again when it is told to', async () => {
    let options: LanguageClientOptions | undefined;
    let starts = 0;
    const server = new RecipeServer((given) => {
        options = given;
        return {
            onNotification: () => {},
            onRequest: () => {},
            isRunning: () => false,
            start: async () => void starts++,
            stop: async () => {},
            sendRequest: async () => 'answer',
            warn: () => {},
        } as unknown as BaseLanguageClient;
    });
    const heard: boolean[] = [];
    server.onDidChangeDown(() => heard.push(server.isDown));
    const actions = [];
    for (let time = 0; time < 5; time++) actions.push(await options!.errorHandler!.closed());
    expect(actions.map(({ action }) => action)).toEqual([2, 2, 2, 2, 1]);
    expect(actions.every(({ handled }) => handled)).toBe(true);
    expect(said.messages).toHaveLength(1);
    expect(said.messages[0]!.slice(1)).toEqual(['Restart', 'Show Output']);
    expect(await server.attempt(requests.bench, { uri: 'file:///heron-tray.kerf' })).toEqual({ failed: said.messages[0]![0] });
    expect(starts).toBe(0);
    said.choose('Restart');
    await vi.waitFor(() => expect(starts).toBe(1));
    expect(heard).toEqual([true, false]);
    expect(await server.attempt(requests.bench, { uri: 'file:///heron-tray.kerf' })).toEqual({ answer: 'answer' });
    expect((await options!.errorHandler!.closed()).action).toBe(2);
});
