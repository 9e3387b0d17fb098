import * as vscode from 'vscode';
import { movedTo } from '../moved-files';
import type { RecipeServer } from '../server';
import { type AskedPage, askedAt, keyOf } from './asked-page';
import { KeptPages, type PageMemory } from './kept-pages';
import { PAGE_VIEW, PagePanel } from './page-panel';
import { questionOf } from './page-question';

/** The open pages, one for each question; they come back after a restart. */
export class Pages implements vscode.Disposable {
    private readonly open = new Map<string, PagePanel>();
    private readonly kept: KeptPages;
    private readonly subscriptions: readonly vscode.Disposable[];

    constructor(
        private readonly server: RecipeServer,
        memory: PageMemory,
    ) {
        this.kept = new KeptPages(memory);
        const serializer = vscode.window.registerWebviewPanelSerializer(PAGE_VIEW, {
            deserializeWebviewPanel: async (panel) => {
                const asked = this.kept.take(panel.title);
                if (asked === undefined || this.open.has(keyOf(asked))) panel.dispose();
                else this.adopt(panel, asked);
            },
        });
        this.subscriptions = [serializer, vscode.workspace.onDidRenameFiles(({ files }) => this.moved(files))];
    }

    show(asked: AskedPage): void {
        const known = this.open.get(keyOf(asked));
        if (known !== undefined) {
            known.panel.reveal();
            void known.ask(asked);
            return;
        }
        const name = decodeURIComponent(asked.uri.slice(asked.uri.lastIndexOf('/') + 1));
        const { title } = questionOf(asked);
        const options = { enableFindWidget: true };
        this.adopt(vscode.window.createWebviewPanel(PAGE_VIEW, title(name), vscode.ViewColumn.Beside, options), asked);
    }

    private adopt(panel: vscode.WebviewPanel, asked: AskedPage): void {
        const page = new PagePanel(panel, asked, this.server, () => this.keep());
        this.open.set(keyOf(asked), page);
        this.keep();
        panel.onDidDispose(() => {
            page.dispose();
            for (const [key, one] of this.open) if (one === page) this.open.delete(key);
            this.keep();
        });
    }

    /** A page goes with its files. */
    private moved(files: vscode.FileRenameEvent['files']): void {
        for (const [key, page] of [...this.open]) {
            const asked = askedAt(page.asked, (uri) => movedTo(uri, files));
            if (keyOf(asked) === key) continue;
            this.open.delete(key);
            if (this.open.has(keyOf(asked))) {
                page.panel.dispose();
                continue;
            }
            this.open.set(keyOf(asked), page);
            void page.ask(asked);
        }
        this.keep();
    }

    private keep(): void {
        const open = [...this.open.values()].map(({ panel: { title }, asked }) => ({ title, asked }));
        const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs);
        const ours = tabs.filter(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.endsWith(PAGE_VIEW));
        this.kept.keep(open, new Set(ours.map(({ label }) => label)));
    }

    /** The page that a person looks at. */
    get inFront(): PagePanel | undefined {
        const all = [...this.open.values()];
        return all.find(({ panel }) => panel.active) ?? all.find(({ panel }) => panel.visible);
    }

    dispose(): void {
        for (const each of this.subscriptions) each.dispose();
        for (const page of this.open.values()) page.dispose();
    }
}
