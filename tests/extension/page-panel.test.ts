import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type * as vscode from 'vscode';
import type { AskedPage } from '../../extension/review/asked-page';
import type { RecipeServer } from '../../extension/server';
import { requests } from '../../shared/view/requests';

interface Watcher {
    readonly pattern: { readonly base: string; readonly pattern: string };
    readonly heard: (() => void)[];
    disposed: boolean;
}

const editor = vi.hoisted(() => ({ watchers: [] as Watcher[], isTrusted: true, written: 0 }));

vi.mock('vscode', async (original) => ({
    ...(await original<typeof import('../kit/vscode')>()),
    Uri: { parse: (uri: string) => uri },
    RelativePattern: class {
        constructor(
            readonly base: string,
            readonly pattern: string,
        ) {}
    },
    CancellationTokenSource: class {
        token = {};
        cancel() {}
        dispose() {}
    },
    workspace: {
        get isTrusted() {
            return editor.isTrusted;
        },
        fs: { stat: async () => ({ mtime: editor.written, size: 1 }) },
        onDidGrantWorkspaceTrust: () => ({ dispose: () => {} }),
        createFileSystemWatcher: (pattern: Watcher['pattern']) => {
            const watcher: Watcher = { pattern, heard: [], disposed: false };
            const on = (hear: () => void) => {
                watcher.heard.push(hear);
                return { dispose: () => {} };
            };
            editor.watchers.push(watcher);
            return { onDidCreate: on, onDidChange: on, onDidDelete: on, dispose: () => (watcher.disposed = true) };
        },
    },
}));
const { PagePanel } = await import('../../extension/review/page-panel');

const places = [
    { folder: 'file:///shop/.git', pattern: '{HEAD,packed-refs}' },
    { folder: 'file:///shop/.git/refs', pattern: '**' },
];

/** A panel over a server that answers each question with its number. */
function panelOf(
    kind: AskedPage['kind'] = 'compare',
    answers: { places: unknown; now: string } | { problem: string } = { places, now: 'a' },
) {
    let turn: () => void = () => {};
    const panel = {
        webview: {} as { html?: string },
        title: '',
        visible: true,
        onDidChangeViewState: (hear: () => void) => {
            turn = hear;
            return { dispose: () => {} };
        },
    };
    const asked: string[] = [];
    const text: { broken?: string; problem?: string; final?: true } = {};
    const stands: { now?: string } = {};
    const server = {
        onDidPlan: () => ({ dispose: () => {} }),
        ask: async ({ method: what }: { readonly method: string }) => {
            asked.push(what);
            if (what === requests.revisionPlaces.method) return { ...answers, ...stands };
            return { title: 'tray', body: `<p>${asked.length}</p>`, ...text };
        },
    };
    const page = new PagePanel(
        panel as unknown as vscode.WebviewPanel,
        { kind, uri: 'file:///shop/tray.kerf', start: '2026-12-01T08:00' },
        server as unknown as RecipeServer,
        () => {},
    );
    return {
        page,
        text,
        stands,
        html: () => panel.webview.html ?? '',
        comparisons: () => asked.filter((what) => what === requests.compare.method).length,
        lookups: () => asked.filter((what) => what === requests.revisionPlaces.method).length,
        turn: (visible: boolean) => {
            panel.visible = visible;
            turn();
        },
    };
}

const happens = (index: number): void => {
    for (const hear of editor.watchers[index]!.heard) hear();
};
const later = () => vi.advanceTimersByTimeAsync(2000);

describe('a page that cannot be shown', () => {
    it('is offered again only where that may help', async () => {
        const { page, text, html } = panelOf('variants');
        text.problem = 'No recipe here is based on another.';
        await page.refresh();
        expect(html()).toContain('No recipe here');
        expect(html()).toContain('Try again');
        text.problem = 'There is no git in a browser.';
        text.final = true;
        await page.refresh();
        expect(html()).toContain('no git in a browser');
        expect(html()).not.toContain('Try again');
    });
});

describe('a comparison follows what git comes to know', () => {
    beforeEach(() => {
        vi.useFakeTimers();
        editor.watchers = [];
        editor.isTrusted = true;
    });
    afterEach(() => vi.useRealTimers());

    it('it is made anew once, a short while after the last of the changes that a commit makes', async () => {
        const { comparisons } = panelOf();
        await later();
        expect(editor.watchers.map(({ pattern }) => [pattern.base, pattern.pattern])).toEqual(
            places.map(({ folder, pattern }) => [folder, pattern]),
        );
        expect(comparisons()).toBe(1);
        happens(1);
        await vi.advanceTimersByTimeAsync(100);
        happens(0);
        expect(comparisons()).toBe(1);
        await later();
        expect(comparisons()).toBe(2);
        await later();
        expect(comparisons()).toBe(2);
    });

    it('a commit that nobody watched yet is seen once the watchers stand, and once only', async () => {
        const { comparisons, stands } = panelOf();
        await vi.advanceTimersByTimeAsync(500);
        stands.now = 'b';
        expect(comparisons()).toBe(1);
        await later();
        expect(comparisons()).toBe(2);
        await vi.advanceTimersByTimeAsync(20_000);
        expect(comparisons()).toBe(2);
    });

    it('a commit that the editor lost is seen in git’s own logbook, and one that it saw is not seen twice', async () => {
        const { comparisons, turn } = panelOf();
        await vi.advanceTimersByTimeAsync(20_000);
        editor.written += 1;
        await vi.advanceTimersByTimeAsync(20_000);
        expect(comparisons()).toBe(2);
        editor.written += 1;
        happens(0);
        await vi.advanceTimersByTimeAsync(20_000);
        expect(comparisons()).toBe(3);
        turn(false);
        editor.written += 1;
        await vi.advanceTimersByTimeAsync(20_000);
        expect(comparisons()).toBe(3);
        turn(true);
        await vi.advanceTimersByTimeAsync(20_000);
        expect(comparisons()).toBe(4);
    });

    it('hidden it waits until somebody looks', async () => {
        const { comparisons, turn } = panelOf();
        await later();
        turn(false);
        happens(0);
        await later();
        expect(comparisons()).toBe(1);
        turn(true);
        await later();
        expect(comparisons()).toBe(2);
    });

    it('nothing is watched when it has been closed, not even where the answer comes late', async () => {
        const { page } = panelOf();
        await later();
        page.dispose();
        expect(editor.watchers.map(({ disposed }) => disposed)).toEqual([true, true]);
        editor.watchers = [];
        panelOf().page.dispose();
        await later();
        expect(editor.watchers).toEqual([]);
    });

    it('pages that rest on no revision watch nothing, nor does one in a window that is not trusted', async () => {
        const { lookups } = panelOf('variants');
        editor.isTrusted = false;
        const wary = panelOf();
        await later();
        expect(lookups() + wary.lookups()).toBe(0);
        expect(editor.watchers).toEqual([]);
        // It is not asked for either: it may have come back by itself, without a command that asks for trust.
        expect(wary.comparisons()).toBe(0);
        expect(wary.html()).toContain('This workspace is not trusted');
    });

    it('where there is no repository yet, it looks again whenever it is made anew, and no more once there is one', async () => {
        const { page, lookups } = panelOf('compare', { problem: 'tray.kerf does not lie in a git repository.' });
        await later();
        await page.refresh();
        await later();
        expect(lookups()).toBe(2);
        const found = panelOf();
        await vi.advanceTimersByTimeAsync(20_000);
        const looked = found.lookups();
        await found.page.refresh();
        await vi.advanceTimersByTimeAsync(20_000);
        expect(found.lookups()).toBe(looked);
    });
});

describe('while a text is broken', () => {
    it('the page of the whole text stays, with a word about it, until the text can be read again', async () => {
        const { page, text, html } = panelOf('variants');
        await page.refresh();
        const whole = /<p>\d+<\/p>/.exec(html())![0];
        text.broken = 'A } is missing & wanted.';
        await page.refresh();
        expect(html()).toContain(`The text cannot be read as a whole at present: A } is missing &#38; wanted.</p>${whole}`);
        delete text.broken;
        await page.refresh();
        expect(html()).not.toContain(whole);
        expect(html()).not.toContain('cannot be read');
    });

    it('a page that is opened then shows what can be read', async () => {
        const { page, text, html } = panelOf('variants');
        text.broken = 'A } is missing.';
        await page.ask({ kind: 'variants', uri: 'file:///shop/tray.kerf' });
        expect(html()).toMatch(/cannot be read as a whole at present: A } is missing\.<\/p><p>\d+<\/p>/);
    });
});
