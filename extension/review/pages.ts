import * as vscode from 'vscode';
import type { RecipeServer } from '../server';
import { PAGE_VIEW, PagePanel, type PageQuestion } from './page-panel';

/** The open pages, one for each question. */
export class Pages implements vscode.Disposable {
    private readonly open = new Map<string, PagePanel>();

    constructor(private readonly server: RecipeServer) {}

    show(question: PageQuestion): void {
        const { offset: _, ...what } = question.params;
        const key = JSON.stringify([question.method, what]);
        const known = this.open.get(key);
        if (known !== undefined) {
            known.panel.reveal();
            void known.ask(question);
            return;
        }
        const { uri } = what;
        const name = decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
        const panel = vscode.window.createWebviewPanel(PAGE_VIEW, question.title(name), vscode.ViewColumn.Beside, {
            enableFindWidget: true,
        });
        const page = new PagePanel(panel, question, this.server);
        this.open.set(key, page);
        panel.onDidDispose(() => {
            page.dispose();
            this.open.delete(key);
        });
    }

    /** The page that a person looks at. */
    get inFront(): PagePanel | undefined {
        const all = [...this.open.values()];
        return all.find(({ panel }) => panel.active) ?? all.find(({ panel }) => panel.visible);
    }

    dispose(): void {
        for (const { panel } of this.open.values()) panel.dispose();
    }
}
