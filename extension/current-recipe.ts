import * as vscode from 'vscode';
import type { BenchParams, Checklist } from '../shared/view/protocol';
import { requests } from '../shared/view/requests';
import type { RecipeServer } from './server';

interface RecipePlace {
    readonly uri: string;
    /** Absent: the first of the file. */
    readonly recipe?: string;
}

const KEY = 'kerfbook.currentRecipe';

/**
 * The recipe that the status bar and the checklist are about: that of the recipe file last looked
 * at, kept when the maker turns to another kind of file, and over a restart.
 */
export class CurrentRecipe implements vscode.Disposable {
    private readonly changed = new vscode.EventEmitter<void>();
    readonly onDidChange = this.changed.event;
    private readonly subscriptions: vscode.Disposable[] = [];
    private readonly recipesOf = new Map<string, readonly string[]>();
    private place: RecipePlace | undefined;
    private asked = 0;
    /** Its steps as last planned; absent when the file holds no recipe that can be. */
    checklist: Checklist | undefined;

    constructor(
        private readonly server: RecipeServer,
        private readonly memory: vscode.Memento,
    ) {
        this.place = memory.get<RecipePlace>(KEY);
        this.subscriptions.push(
            server.onDidPlan(({ uri, recipes }) => {
                this.recipesOf.set(uri, recipes);
                if (uri === this.place?.uri) void this.refresh();
            }),
            vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
        );
        if (!this.follow(vscode.window.activeTextEditor)) void this.refresh();
    }

    get uri(): string | undefined {
        return this.place?.uri;
    }

    /** Names of all recipes of its file, once the server has planned it. */
    get recipes(): readonly string[] {
        return this.recipesOf.get(this.place?.uri ?? '') ?? [];
    }

    choose(place: RecipePlace): void {
        this.place = place;
        void this.memory.update(KEY, place);
        void this.refresh();
    }

    /** Whether the editor holds another recipe than the current one, which then becomes it. */
    private follow(editor: vscode.TextEditor | undefined): boolean {
        const document = editor?.document;
        if (document?.languageId !== 'kerfbook' || document.uri.scheme === 'kerfbook-stock') return false;
        const uri = document.uri.toString();
        if (uri === this.place?.uri) return false;
        this.choose({ uri });
        return true;
    }

    private async refresh(): Promise<void> {
        const { place } = this;
        if (place === undefined) return;
        const ticket = ++this.asked;
        const { uri, recipe } = place;
        // A recipe that has been renamed or removed is no longer asked for.
        const known = recipe !== undefined && (this.recipes.length === 0 || this.recipes.includes(recipe));
        const params: BenchParams = { uri, ...(known ? { recipe } : {}) };
        const checklist = await this.server.ask(requests.checklist, params);
        if (ticket !== this.asked) return; // a newer question is on its way
        this.checklist = checklist;
        this.changed.fire();
    }

    dispose(): void {
        this.changed.dispose();
        for (const each of this.subscriptions) each.dispose();
    }
}
