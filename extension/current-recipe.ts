import * as vscode from 'vscode';
import type { BenchParams, Checklist, PlacedRecipe } from '../shared/view/protocol';
import { requests } from '../shared/view/requests';
import { movedTo } from './moved-files';
import { recipeAt } from './recipe-at';
import { isRecipeText, mayHoldRecipes, recipePlace } from './recipe-place';
import type { RecipeServer } from './server';

export interface RecipePlace {
    readonly uri: string;
    /** Absent: the first of the file. */
    readonly recipe?: string;
}

const KEY = 'kerfbook.currentRecipe';
const PINNED = 'kerfbook.currentRecipe.pinned';

/** Programs that write a file in one go take the old one away first, ms. */
const WRITTEN_WITHIN = 400;

/**
 * The one recipe that bench view, checklist, status bar and commands are about. The text cursor sets it, choosing it sets it,
 * a pin holds it against the cursor. It is kept when the maker turns to another kind of file, moves with its file and outlives a restart.
 */
export class CurrentRecipe implements vscode.Disposable {
    private readonly changed = new vscode.EventEmitter<void>();
    /** Its checklist is another one, or there is none. */
    readonly onDidChange = this.changed.event;
    private readonly chosen = new vscode.EventEmitter<void>();
    /** Another recipe has become the current one, or the pin was set or taken out; its checklist comes later. */
    readonly onDidChoose = this.chosen.event;
    private readonly subscriptions: vscode.Disposable[] = [];
    private readonly recipesOf = new Map<string, readonly PlacedRecipe[]>();
    private place: RecipePlace | undefined;
    private pinned: boolean;
    private asked = 0;
    /** Its steps as last planned; absent when the file holds no recipe that can be. */
    checklist: Checklist | undefined;

    constructor(
        private readonly server: RecipeServer,
        private readonly memory: vscode.Memento,
    ) {
        this.place = memory.get<RecipePlace>(KEY);
        this.pinned = memory.get<boolean>(PINNED) === true && this.place !== undefined;
        const gone = vscode.workspace.createFileSystemWatcher('**/*.kerf', true, true, false);
        this.subscriptions.push(
            gone,
            gone.onDidDelete((uri) => void this.deleted(uri)),
            server.onDidPlan((planned) => this.planned(planned.uri, planned.recipes)),
            vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
            vscode.window.onDidChangeTextEditorSelection(({ textEditor, kind }) => {
                // A selection of no kind is the editor's own, as when it brings a text back: nobody has moved there.
                if (kind !== undefined) this.follow(textEditor);
            }),
            vscode.workspace.onDidRenameFiles(({ files }) => {
                if (this.place === undefined) return;
                const uri = movedTo(this.place.uri, files);
                if (uri !== this.place.uri) this.choose({ ...this.place, uri });
            }),
            vscode.workspace.onDidCloseTextDocument(({ uri, isClosed }) => {
                if (isClosed && mayHoldRecipes(uri)) void this.deleted(uri);
            }),
        );
        this.follow(vscode.window.activeTextEditor);
        void this.refresh();
    }

    get uri(): string | undefined {
        return this.place?.uri;
    }

    /** Absent until the server has planned its file. */
    get recipe(): string | undefined {
        return this.place?.recipe;
    }

    get isPinned(): boolean {
        return this.pinned;
    }

    /** Names of all recipes of its file, once the server has planned it. */
    get recipes(): readonly string[] {
        return this.place === undefined ? [] : this.namesIn(this.place.uri);
    }

    /** Names of all recipes of a file, once the server has planned it. */
    namesIn(uri: string): readonly string[] {
        return (this.recipesOf.get(uri) ?? []).map(({ name }) => name);
    }

    /** Name of the recipe of a file that a place lies in; undefined between recipes. */
    recipeHere(uri: string, offset: number): string | undefined {
        return recipeAt(this.recipesOf.get(uri) ?? [], offset);
    }

    /** Whether a recipe is still there, as far as is known: its file may never have been planned. */
    async isThere({ uri, recipe }: RecipePlace): Promise<boolean> {
        const known = this.recipesOf.get(uri);
        if (recipe !== undefined && known !== undefined && known.length > 0 && !known.some(({ name }) => name === recipe))
            return false;
        return isThere(vscode.Uri.parse(uri));
    }

    /** The recipe file that a command is about: the one it was given, the one in front, else that of the current recipe. */
    fileFor(given?: unknown): vscode.Uri | undefined {
        const inFront = vscode.window.activeTextEditor?.document;
        return (
            recipePlace(given) ??
            (inFront !== undefined && isRecipeText(inFront) ? inFront.uri : undefined) ??
            (this.place === undefined ? undefined : vscode.Uri.parse(this.place.uri))
        );
    }

    /** Its steps, asked for again where none are known: a text that was just being written had none. */
    async steps(): Promise<Checklist | undefined> {
        if (this.checklist === undefined) await this.refresh();
        return this.checklist;
    }

    choose(place: RecipePlace): void {
        if (place.uri === this.place?.uri && place.recipe === this.place.recipe) return;
        this.set(place);
    }

    pin(pinned: boolean): void {
        this.pinned = pinned && this.place !== undefined;
        void this.memory.update(PINNED, this.pinned);
        this.chosen.fire();
        if (!this.pinned) this.follow(vscode.window.activeTextEditor);
    }

    private set(place: RecipePlace | undefined): void {
        this.place = place;
        void this.memory.update(KEY, place);
        this.chosen.fire();
        void this.refresh();
    }

    /** The recipe that the cursor is in becomes the current one. A file without recipes, such as one of stock, changes nothing. */
    private follow(editor: vscode.TextEditor | undefined): void {
        const document = editor?.document;
        if (document === undefined || this.pinned || !isRecipeText(document)) return;
        const uri = document.uri.toString();
        const known = this.recipesOf.get(uri);
        const here = uri === this.place?.uri;
        if (known === undefined || known.length === 0) {
            // At the first start there is nothing better than the file that is open.
            if (this.place === undefined) this.choose({ uri });
            return;
        }
        const recipe = recipeAt(known, document.offsetAt(editor!.selection.active)) ?? (here ? this.place?.recipe : undefined);
        this.choose({ uri, recipe: recipe ?? known[0]!.name });
    }

    private planned(uri: string, recipes: readonly PlacedRecipe[]): void {
        const first = !this.recipesOf.has(uri);
        this.recipesOf.set(uri, recipes);
        const { activeTextEditor: editor } = vscode.window;
        if (first && editor?.document.uri.toString() === uri) this.follow(editor);
        if (uri !== this.place?.uri) return;
        const { recipe } = this.place;
        const named = recipes.some(({ name }) => name === recipe);
        // A recipe that has been renamed or removed is no longer asked for; a text that is broken has none for a moment.
        if (named || recipes.length === 0) void this.refresh();
        else {
            const at = editor?.document.uri.toString() === uri ? editor.document.offsetAt(editor.selection.active) : -1;
            this.set({ uri, recipe: recipeAt(recipes, at) ?? recipes[0]!.name });
        }
    }

    private async deleted(uri: vscode.Uri): Promise<void> {
        await new Promise((resolve) => setTimeout(resolve, WRITTEN_WITHIN));
        if (await isThere(uri)) return;
        this.recipesOf.delete(uri.toString());
        if (uri.toString() !== this.place?.uri) return;
        this.pinned = false;
        this.set(undefined);
        this.follow(vscode.window.activeTextEditor);
    }

    private async refresh(): Promise<void> {
        const { place } = this;
        const ticket = ++this.asked;
        void vscode.commands.executeCommand('setContext', 'kerfbook.hasRecipe', place !== undefined);
        const params: BenchParams | undefined = place;
        const checklist = params && (await this.server.ask(requests.checklist, params));
        if (ticket !== this.asked) return; // a newer question is on its way
        this.checklist = checklist;
        this.changed.fire();
    }

    dispose(): void {
        this.changed.dispose();
        this.chosen.dispose();
        for (const each of this.subscriptions) each.dispose();
    }
}

/** A text that is still open is not lost with its file. */
async function isThere(uri: vscode.Uri): Promise<boolean> {
    if (vscode.workspace.textDocuments.some((each) => each.uri.toString() === uri.toString())) return true;
    if (uri.scheme === 'untitled') return false;
    return Promise.resolve(vscode.workspace.fs.stat(uri)).then(
        () => true,
        () => false,
    );
}
