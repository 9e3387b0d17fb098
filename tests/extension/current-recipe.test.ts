import { beforeEach, describe, expect, it, vi } from 'vitest';
import type * as vscode from 'vscode';
import type { RecipeServer } from '../../extension/server';
import type { PlacedRecipe } from '../../shared/view/protocol';

type Hear = (event: never) => void;

const editor = vi.hoisted(() => ({
    heard: new Map<string, Hear[]>(),
    active: undefined as unknown,
    there: new Set<string>(),
}));

vi.mock('vscode', async (original) => {
    const { l10n } = await original<typeof import('../kit/vscode')>();
    const on = (name: string) => (hear: Hear) => {
        editor.heard.set(name, [...(editor.heard.get(name) ?? []), hear]);
        return { dispose: () => {} };
    };
    class Uri {
        constructor(readonly text: string) {}
        static parse = (text: string) => new Uri(text);
        get path() {
            return this.text;
        }
        get scheme() {
            return this.text.slice(0, this.text.indexOf(':'));
        }
        toString() {
            return this.text;
        }
    }
    return {
        l10n,
        Uri,
        EventEmitter: class {
            private readonly hears: Hear[] = [];
            event = (hear: Hear) => {
                this.hears.push(hear);
                return { dispose: () => {} };
            };
            fire = (event: never) => {
                for (const hear of this.hears) hear(event);
            };
            dispose() {}
        },
        commands: { executeCommand: () => {} },
        window: {
            get activeTextEditor() {
                return editor.active;
            },
            onDidChangeActiveTextEditor: on('active'),
            onDidChangeTextEditorSelection: on('selection'),
        },
        workspace: {
            textDocuments: [],
            onDidRenameFiles: on('rename'),
            onDidCloseTextDocument: on('close'),
            createFileSystemWatcher: () => ({ onDidDelete: on('delete'), dispose: () => {} }),
            fs: {
                stat: async (uri: Uri) => {
                    if (!editor.there.has(uri.text)) throw new Error('gone');
                },
            },
        },
    };
});
const { CurrentRecipe } = await import('../../extension/current-recipe');
const { Uri } = await import('vscode');

const tray = 'file:///shop/tray.kerf';
const sign = 'file:///shop/sign.kerf';
const two = [
    { name: 'tray', offset: 0, length: 100 },
    { name: 'lid', offset: 110, length: 50 },
];

function happens(name: string, event: unknown): void {
    for (const hear of editor.heard.get(name) ?? []) hear(event as never);
}

function editorAt(uri: string, offset: number) {
    return {
        document: { languageId: 'kerfbook', uri: Uri.parse(uri), offsetAt: () => offset },
        selection: { active: offset },
    };
}

/** The cursor is put there by the maker. */
function goTo(uri: string, offset: number): void {
    const textEditor = editorAt(uri, offset);
    editor.active = textEditor;
    happens('active', textEditor);
    happens('selection', { textEditor, kind: 2 });
}

function begin(kept = new Map<string, unknown>()) {
    const memory = { get: (key: string) => kept.get(key), update: async (key: string, value: unknown) => kept.set(key, value) };
    let plan: (params: { uri: string; recipes: readonly PlacedRecipe[] }) => void = () => {};
    const server = {
        onDidPlan: (hear: typeof plan) => {
            plan = hear;
            return { dispose: () => {} };
        },
        answers: true,
        ask: async (_what: unknown, { uri, recipe }: { uri: string; recipe?: string }) =>
            server.answers ? { recipe: recipe ?? uri, items: [] } : undefined,
    };
    const current = new CurrentRecipe(server as unknown as RecipeServer, memory as unknown as vscode.Memento);
    return { current, kept, server, plan: (uri: string, recipes: readonly PlacedRecipe[]) => plan({ uri, recipes }) };
}

beforeEach(() => {
    editor.heard.clear();
    editor.active = undefined;
    editor.there = new Set([tray, sign]);
});

describe('the current recipe', () => {
    it('is the one that the cursor is in, also of two in a file', () => {
        editor.active = editorAt(tray, 120);
        const { current, plan } = begin();
        plan(tray, two);
        expect([current.uri, current.recipe]).toEqual([tray, 'lid']);
        goTo(tray, 50);
        expect(current.recipe).toBe('tray');
    });

    it('stays between recipes, and in files that hold none', () => {
        const { current, plan } = begin();
        plan(tray, two);
        plan('file:///shop/stock.kerf', []);
        goTo(tray, 120);
        goTo(tray, 105);
        expect(current.recipe).toBe('lid');
        goTo('file:///shop/stock.kerf', 3);
        expect([current.uri, current.recipe]).toEqual([tray, 'lid']);
    });

    it('does not follow the editor when it brings a text back', () => {
        const { current, plan } = begin();
        plan(tray, two);
        goTo(tray, 120);
        happens('selection', { textEditor: editorAt(tray, 0), kind: undefined });
        expect(current.recipe).toBe('lid');
    });

    it('stays where it is while it is pinned, over a restart too, and follows again once the pin is out', () => {
        const { current, plan, kept } = begin();
        plan(tray, two);
        goTo(tray, 120);
        current.pin(true);
        goTo(sign, 0);
        expect(current.recipe).toBe('lid');
        const again = begin(kept);
        again.plan(sign, [{ name: 'sign', offset: 0, length: 10 }]);
        expect([again.current.uri, again.current.recipe, again.current.isPinned]).toEqual([tray, 'lid', true]);
        again.current.pin(false);
        expect(again.current.uri).toBe(sign);
    });

    it('goes with its file', () => {
        const { current, plan } = begin();
        plan(tray, two);
        goTo(tray, 120);
        const moved = 'file:///shop/kitchen/tray.kerf';
        happens('rename', { files: [{ oldUri: Uri.parse('file:///shop'), newUri: Uri.parse('file:///shop/kitchen') }] });
        expect([current.uri, current.recipe]).toEqual([moved, 'lid']);
    });

    it('is none any more when its file is gone', async () => {
        vi.useFakeTimers();
        const { current, plan } = begin();
        plan(tray, two);
        goTo(tray, 120);
        editor.active = undefined;
        happens('delete', Uri.parse(tray));
        await vi.advanceTimersByTimeAsync(500);
        expect(current.uri).toBe(tray); // only written anew
        editor.there.delete(tray);
        happens('delete', Uri.parse(tray));
        await vi.advanceTimersByTimeAsync(500);
        expect(current.uri).toBeUndefined();
        vi.useRealTimers();
    });

    it('that was renamed in its text is the one that the cursor is in', () => {
        const { current, plan } = begin();
        plan(tray, two);
        goTo(tray, 120);
        plan(tray, [two[0]!, { ...two[1]!, name: 'cover' }]);
        expect(current.recipe).toBe('cover');
    });

    it('stays while its text is broken', () => {
        const { current, plan } = begin();
        plan(tray, two);
        goTo(tray, 120);
        plan(tray, []);
        expect(current.recipe).toBe('lid');
    });

    it('asks for its steps again where the server had none to give', async () => {
        const { current, plan, server } = begin();
        server.answers = false;
        plan(tray, two);
        goTo(tray, 120);
        expect(await current.steps()).toBeUndefined();
        server.answers = true;
        expect((await current.steps())?.recipe).toBe('lid');
    });

    it('is what commands are about when no text is in front, and another text in front goes before', () => {
        const { current, plan } = begin();
        plan(tray, two);
        goTo(tray, 120);
        editor.active = undefined;
        expect(String(current.fileFor())).toBe(tray);
        expect(String(current.fileFor(Uri.parse('webview-panel:bench')))).toBe(tray);
        expect(String(current.fileFor(Uri.parse(sign)))).toBe(sign);
    });

    it('knows which recipes are gone', async () => {
        const { current, plan } = begin();
        plan(tray, two);
        expect(await current.isThere({ uri: tray, recipe: 'lid' })).toBe(true);
        expect(await current.isThere({ uri: tray, recipe: 'box' })).toBe(false);
        expect(await current.isThere({ uri: 'file:///shop/gone.kerf', recipe: 'box' })).toBe(false);
    });
});
