import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { CurrentRecipe } from '../../extension/current-recipe';
import type { RecipeServer } from '../../extension/server';
import { requests } from '../../shared/view/requests';

/** What the maker was told and what was shown, in order; and what the maker answers to a message. */
const editor = vi.hoisted(() => ({
    errors: [] as string[],
    questions: [] as string[],
    shown: [] as string[],
    answer: undefined as string | undefined,
    commands: new Map<string, (...args: unknown[]) => Promise<void>>(),
}));

vi.mock('vscode', async (original) => {
    const { l10n } = await original<typeof import('../kit/vscode')>();
    class Uri {
        constructor(private readonly uri: string) {}
        static parse = (uri: string) => new Uri(uri);
        toString = () => this.uri;
        get path() {
            return new URL(this.uri).pathname;
        }
        get scheme() {
            return this.uri.split(':')[0];
        }
    }
    const pathOf = (uri: unknown) => fileURLToPath(String(uri));
    const offer = async (words: string, ...buttons: unknown[]) => {
        editor.questions.push(words);
        return buttons.includes(editor.answer) ? editor.answer : buttons.includes('Write') ? 'Write' : undefined;
    };
    return {
        l10n,
        Uri,
        Disposable: { from: () => ({}) },
        ProgressLocation: {},
        WorkspaceEdit: class {
            readonly deleted: unknown[] = [];
            deleteFile(uri: unknown) {
                this.deleted.push(uri);
            }
        },
        commands: {
            registerCommand: (name: string, run: (...args: unknown[]) => Promise<void>) => void editor.commands.set(name, run),
        },
        window: {
            showErrorMessage: async (words: string) => void editor.errors.push(words),
            showWarningMessage: offer,
            showInformationMessage: offer,
            showInputBox: async () => '',
            showTextDocument: async (uri: unknown) => void editor.shown.push(path.basename(pathOf(uri))),
            withProgress: (_how: unknown, work: (progress: unknown, token: unknown) => unknown) => work({}, {}),
        },
        workspace: {
            isTrusted: true,
            textDocuments: [],
            getConfiguration: () => ({ get: () => 'ownFile' }),
            getWorkspaceFolder: () => ({}),
            asRelativePath: (uri: unknown) => path.basename(pathOf(uri)),
            fs: { stat: async (uri: unknown) => void readFileSync(pathOf(uri)) },
            openTextDocument: async (uri: unknown) => ({ isDirty: false, getText: () => readFileSync(pathOf(uri), 'utf8') }),
            applyEdit: async (edit: { deleted: unknown[] }) => {
                for (const uri of edit.deleted) rmSync(pathOf(uri));
                return true;
            },
        },
    };
});
const { finishRun } = await import('../../extension/checklist/finish-run');
const { jobOf, TickBook } = await import('../../extension/checklist/ticks');
const { WrittenRuns } = await import('../../extension/checklist/written-runs');
const { offerWriting } = await import('../../extension/write/write-files');

const text = 'run quick 2026-11-28 { }\n';
const checklist = {
    recipe: 'quick',
    title: 'Quick plate',
    revision: 1,
    items: [
        { id: 'engrave pocket', label: 'Engrave pocket' },
        { id: 'wait 4 s', label: 'Wait 4 s' },
    ],
};
const inTheWay = 'runs cannot be written: runs is a file, and a folder is needed there. Move or rename it.';

let folder: string;
beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-told-'));
    writeFileSync(path.join(folder, 'quick.kerf'), 'recipe quick { }\n');
    Object.assign(editor, { errors: [], questions: [], shown: [], answer: undefined });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();

describe('a run at the bench, finished with one step ticked', () => {
    /** The ids that are ticked afterwards. */
    async function finish(answer: object | (() => object) | undefined, uri = uriOf('quick.kerf')): Promise<string[]> {
        const kept = new Map<string, unknown>();
        const memory = {
            get: <T>(key: string) => kept.get(key) as T,
            update: async (key: string, value: unknown) => void kept.set(key, value),
        };
        const book = new TickBook(memory);
        const job = jobOf(uri, 'quick');
        book.tick(job, checklist.items[0]!, 1);
        const asked: unknown[] = [];
        const ask = async (what: unknown) => {
            asked.push(what);
            return typeof answer === 'function' ? answer() : answer;
        };
        let redrawn = 0;
        await finishRun(
            { ask } as unknown as RecipeServer,
            book,
            new WrittenRuns(book),
            uri,
            checklist as never,
            () => redrawn++,
        );
        expect(asked.every((what) => what === requests.writeRun)).toBe(true);
        const ticked = Object.keys(book.of(job));
        // The list shows what the book says: drawn once when the ticks go, once more when they come back.
        if (editor.errors.length === 0) expect(redrawn).toBe(ticked.length === 0 ? 1 : 2);
        else expect(redrawn).toBe(0);
        return ticked;
    }

    /** As the server writes it. */
    const written = () => {
        writeFileSync(path.join(folder, 'run.kerf'), text);
        return { uri: uriOf('run.kerf'), text };
    };

    it('asks about the open steps, loses its ticks, and says where it was written', async () => {
        expect(await finish(written)).toEqual([]);
        expect(editor.questions[0]).toBe('1 of 2 steps of Quick plate is not ticked. Write the run all the same?');
        expect(editor.questions[1]).toMatch(/^Run of Quick plate written to run\.kerf\./);
        expect(existsSync(path.join(folder, 'run.kerf'))).toBe(true);
    });

    it('is shown in the text', async () => {
        editor.answer = 'Show';
        expect(await finish(written)).toEqual([]);
        expect(editor.shown).toEqual(['run.kerf']);
    });

    it('is taken back, and its ticks come back', async () => {
        editor.answer = 'Take Back';
        expect(await finish(written)).toEqual(['engrave pocket']);
        expect(existsSync(path.join(folder, 'run.kerf'))).toBe(false);
    });

    it('is not taken back where somebody has added to it', async () => {
        editor.answer = 'Take Back';
        const more = () => {
            const answer = written();
            writeFileSync(path.join(folder, 'run.kerf'), `${text}// Thin.\n`);
            return answer;
        };
        expect(await finish(more)).toEqual([]);
        expect(editor.questions.at(-1)).toBe('The run was changed since. Delete its file by hand if it is not wanted.');
        expect(existsSync(path.join(folder, 'run.kerf'))).toBe(true);
    });

    it('keeps every tick where it cannot be written', async () => {
        expect(await finish({ problem: inTheWay })).toEqual(['engrave pocket']);
        expect(editor.errors).toEqual([`${inTheWay} Every tick is kept.`]);
        editor.errors = [];
        expect(await finish(undefined)).toEqual(['engrave pocket']);
        expect(editor.errors).toEqual(['The run could not be written. Every tick is kept.']);
    });

    it('keeps every tick where the recipe’s file is gone, and says what to do', async () => {
        rmSync(path.join(folder, 'quick.kerf'));
        expect(await finish(written)).toEqual(['engrave pocket']);
        expect(editor.errors).toEqual([
            'quick.kerf is no longer there, so the run could not be written. Save it again first. Every tick is kept.',
        ]);
        expect(existsSync(path.join(folder, 'run.kerf'))).toBe(false);
    });
});

it('files for the machine that cannot be written are told once', async () => {
    const problem = 'made/quick cannot be written: made is a file, and a folder is needed there. Move or rename it.';
    const ask = async () => ({ written: 0, folder: uriOf('made'), problems: [problem] });
    const current = { fileFor: (place: unknown) => place, namesIn: () => ['quick'] };
    offerWriting({ ask } as unknown as RecipeServer, current as unknown as CurrentRecipe);
    await editor.commands.get('kerfbook.writeFiles')!(uriOf('quick.kerf'), 'quick');
    expect(editor.errors).toEqual([`Nothing was written for quick. ${problem}`]);
    expect(editor.questions).toEqual([]);
});
