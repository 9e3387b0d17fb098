import * as vscode from 'vscode';
import type { PlannedParams } from '../shared/view/protocol';
import type { RecipeServer } from './server';

export interface RecipePlace {
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
    private readonly changed = new vscode.EventEmitter<RecipePlace | undefined>();
    readonly onDidChange = this.changed.event;
    /** What the server last said of each file. */
    private readonly planned = new Map<string, PlannedParams>();
    private readonly subscriptions: vscode.Disposable[] = [];
    private kept: RecipePlace | undefined;

    constructor(
        server: RecipeServer,
        private readonly memory: vscode.Memento,
    ) {
        this.kept = memory.get<RecipePlace>(KEY);
        this.subscriptions.push(
            server.onDidPlan((params) => {
                this.planned.set(params.uri, params);
                if (params.uri === this.kept?.uri) this.changed.fire(this.kept);
            }),
            vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
        );
        this.follow(vscode.window.activeTextEditor);
    }

    get place(): RecipePlace | undefined {
        return this.kept;
    }

    /** What the server last said of the current file; undefined before it has planned it. */
    get summary(): PlannedParams | undefined {
        return this.kept === undefined ? undefined : this.planned.get(this.kept.uri);
    }

    /** The name to show: the chosen recipe as long as the file holds it, else the first. */
    get name(): string | undefined {
        const names = this.summary?.recipes ?? [];
        const chosen = this.kept?.recipe;
        return chosen !== undefined && names.includes(chosen) ? chosen : names[0];
    }

    choose(place: RecipePlace): void {
        this.kept = place;
        void this.memory.update(KEY, place);
        this.changed.fire(place);
    }

    private follow(editor: vscode.TextEditor | undefined): void {
        const document = editor?.document;
        if (document?.languageId !== 'kerf' || document.uri.scheme === 'kerfbook-stock') return;
        const uri = document.uri.toString();
        if (uri !== this.kept?.uri) this.choose({ uri });
    }

    dispose(): void {
        this.changed.dispose();
        for (const each of this.subscriptions) each.dispose();
    }
}
