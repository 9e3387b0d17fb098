import { DocumentState, type LangiumDocument, URI } from 'langium';
import type { CancellationToken, Connection, Diagnostic } from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import { toDiagnostic } from '../../language/diagnostic';
import { hashText } from '../../language/text-hash';
import type { ClientAbilities } from '../../language/workspace/client';
import type { KerfLanguageServer } from '../../language/workspace/language-server';
import { contentKey } from '../../shared/plan/content-key';
import type { Finding } from '../../shared/recipe/finding';
import type { Recipe } from '../../shared/recipe/recipe';
import { onceInRoutines } from '../../shared/rules/in-routine';
import type { PlannedParams } from '../../shared/view/protocol';
import { notifications } from '../../shared/view/requests';
import { isAllowable } from '../is-allowable';
import { refused } from '../protocol/refused';
import type { LastPlans } from './last-plans';
import { PlanProgress } from './plan-progress';
import { PulledDiagnostics } from './pulled-diagnostics';
import type { Workshop } from './workshop';

/**
 * Sends findings to the editor: the text's own at once, with those of the trade that still stand
 * on the same words; the trade's as soon as the plan is made. An editor that asks for them is told when to ask again.
 */
export class Publisher {
    private readonly progress: PlanProgress;
    /** Files that wait to be worked out, with who waits for it. */
    private readonly later = new Map<string, () => void>();
    private isBusy = false;
    /** Files of which nothing changed but where something stands in another one that they point to. */
    private readonly moved = new Set<string>();
    private whenNobodyTypes: ReturnType<typeof setTimeout> | undefined;
    private readonly trade = new Map<
        string,
        {
            readonly findings: readonly Finding[];
            readonly text: string;
            readonly recipes: readonly Recipe[];
            /** A hash of what they say, wherever it stands; undefined where they are to be planned again all the same. */
            readonly content: string | undefined;
            /** What is said of routines in other files, with the words it is said of. */
            readonly elsewhere: readonly { readonly finding: Finding; readonly words: string }[];
        }
    >();

    constructor(
        private readonly connection: Connection,
        private readonly workshop: Workshop,
        private readonly plans: LastPlans,
        private readonly pageOf: (rule: string) => string | undefined = () => undefined,
    ) {
        this.progress = new PlanProgress(connection);
        new PulledDiagnostics(connection, workshop, (document) => this.current(document));
        const builder = workshop.services.shared.workspace.DocumentBuilder;
        builder.onDocumentPhase(DocumentState.Validated, (document) => {
            if (isBuiltIn(document.uri.toString())) return;
            // Then a turn for those who read them, on whatever processor they run.
            const said = this.client.pulls ? nextTurn() : this.send(document).then(nextTurn);
            // Not awaited: the build goes on, and typing never waits for geometry.
            if (this.isOpen(document)) void this.planOnce(document, said);
            else void this.progress.during(() => this.planLater(document));
        });
        builder.onBuildPhase(DocumentState.Validated, async (built) => this.planWhereRunsCount(built));
        builder.onUpdate((_changed, deleted) => {
            if (this.moved.size > 0) this.waitForPause();
            for (const uri of deleted) {
                const others = this.trade.get(uri.toString())?.elsewhere ?? [];
                this.trade.delete(uri.toString());
                this.moved.delete(uri.toString());
                if (!this.client.pulls) for (const { finding } of others) void this.sendOther(finding.where.uri);
                this.plans.forget(uri.toString());
                if (!this.client.pulls) void this.connection.sendDiagnostics({ uri: uri.toString(), diagnostics: [] });
            }
        });
    }

    /**
     * Plans a document once its text's own findings are out: even getting a plan ready takes its time. While somebody
     * types, it waits for a short rest, so that nothing comes between a key and the picture.
     */
    private async planOnce(document: LangiumDocument, said: Promise<void>): Promise<void> {
        await said.catch(() => undefined);
        const { version } = document.textDocument;
        if (this.trade.has(document.uri.toString())) await rest();
        if (document.state >= DocumentState.Linked && document.textDocument.version === version)
            await this.planIfChanged(document);
    }

    /** Runs of another file tell of a laser and a board: where they are used, depths are no longer what they were. */
    private planWhereRunsCount(built: readonly LangiumDocument[]): void {
        for (const uri of this.trade.keys()) {
            const document = this.workshop.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
            if (document === undefined || document.state < DocumentState.Linked || built.includes(document)) continue;
            if (this.trade.get(uri)?.recipes === this.workshop.recipes(document)) continue;
            if (this.isOpen(document)) void this.planOnce(document, Promise.resolve());
            else void this.progress.during(() => this.planLater(document));
        }
    }

    /**
     * Plans a document unless it says what it said when it was planned last: an edit has many read anew that only could be meant by it,
     * and each of their plans would stand between the next key and its picture. What points at places that moved waits for a pause.
     */
    private async planIfChanged(document: LangiumDocument): Promise<void> {
        const uri = document.uri.toString();
        const known = this.trade.get(uri);
        const isKnown =
            known?.text === document.textDocument.getText() && known.content === contentHash(this.workshop.recipes(document));
        if (!isKnown) {
            await this.plan(document);
            return;
        }
        this.moved.add(uri);
        this.waitForPause();
    }

    private waitForPause(): void {
        clearTimeout(this.whenNobodyTypes);
        this.whenNobodyTypes = setTimeout(() => {
            const moved = [...this.moved];
            this.moved.clear();
            for (const uri of moved) {
                const [known, document] = [this.trade.get(uri), this.documentOf(uri)];
                if (known === undefined || document === undefined) continue;
                this.trade.set(uri, { ...known, content: undefined });
                void this.planLater(document);
            }
        }, pauseInTyping);
    }

    /** Plans a document again though its text has not changed, since its art has. */
    async plan(document: LangiumDocument): Promise<boolean> {
        const version = document.textDocument.version;
        const recipes = this.workshop.recipes(document);
        const survey = await this.workshop.survey(document);
        if (survey === undefined || document.textDocument.version !== version) return false;
        const { findings } = survey;
        const uri = document.uri.toString();
        this.plans.keep(uri, survey);
        const elsewhere = this.saidElsewhere(findings, uri);
        const told = new Set([...(this.trade.get(uri)?.elsewhere ?? []), ...elsewhere].map(({ finding }) => finding.where.uri));
        this.trade.set(uri, {
            findings,
            text: document.textDocument.getText(),
            recipes,
            content: contentHash(recipes),
            elsewhere,
        });
        if (!this.client.pulls) for (const other of told) void this.sendOther(other);
        if (!this.client.pulls) void this.send(document);
        else if (this.client.refreshes.diagnostics) this.connection.languages.diagnostics.refresh().catch(refused);
        const params: PlannedParams = {
            uri,
            textVersion: version,
            recipes: recipes.map(({ name, whole: { offset, length } }) => ({ name, offset, length })),
        };
        void this.connection.sendNotification(notifications.planned.method, params);
        return true;
    }

    /** The document of an address once the trade has spoken of its text as it is now; undefined if there is none, or it never rests. */
    async settled(address: string, token: CancellationToken): Promise<LangiumDocument | undefined> {
        for (let tries = 0; tries < MAX_TRIES; tries++) {
            const document = await this.workshop.linked(address, token);
            if (document === undefined || (await this.plan(document))) return document;
        }
        return undefined;
    }

    /** What nobody looks at is worked out one by one, so that what is open waits for one of them at most. */
    private planLater(document: LangiumDocument): Promise<void> {
        return new Promise((resolve) => {
            const uri = document.uri.toString();
            this.later.get(uri)?.();
            this.later.set(uri, resolve);
            if (!this.isBusy) void this.workOff();
        });
    }

    private async workOff(): Promise<void> {
        this.isBusy = true;
        for (const [uri, done] of this.later) {
            this.later.delete(uri);
            const document = this.workshop.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
            const wanted = document !== undefined && document.state >= DocumentState.Linked && !this.progress.isStopped;
            if (wanted) await this.planIfChanged(document).catch(() => undefined);
            done();
        }
        this.isBusy = false;
    }

    private get client(): ClientAbilities {
        return (this.workshop.services.shared.lsp.LanguageServer as KerfLanguageServer).client;
    }

    private isOpen(document: LangiumDocument): boolean {
        return this.workshop.services.shared.workspace.TextDocuments.get(document.uri.toString()) !== undefined;
    }

    private send(document: LangiumDocument): Promise<void> {
        const { version } = document.textDocument;
        return this.connection.sendDiagnostics({ uri: document.uri.toString(), version, diagnostics: this.current(document) });
    }

    private saidElsewhere(findings: readonly Finding[], uri: string) {
        return findings.flatMap((finding) => {
            const home = finding.where.uri === uri || finding.inRoutine !== true ? undefined : this.documentOf(finding.where.uri);
            return home === undefined ? [] : [{ finding, words: wordsAt(home.textDocument.getText(), finding.where) }];
        });
    }

    private documentOf(uri: string): LangiumDocument | undefined {
        return this.workshop.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    }

    private async sendOther(uri: string): Promise<void> {
        const document = this.documentOf(uri);
        if (document !== undefined && document.state >= DocumentState.Linked) await this.send(document);
    }

    /** What is known of a file at this moment. */
    current(document: LangiumDocument): Diagnostic[] {
        const uri = document.uri.toString();
        const old = this.trade.get(uri);
        const text = document.textDocument.getText();
        const standing = old?.findings.filter(({ where }) => wordsAt(old.text, where) === wordsAt(text, where)) ?? [];
        const { findings: shows } = this.client;
        const shown = { tags: shows.tags, pageOf: shows.links ? this.pageOf : () => undefined };
        const ofOthers = [...this.trade.values()].flatMap(({ elsewhere }) =>
            elsewhere.filter(({ finding, words }) => finding.where.uri === uri && words === wordsAt(text, finding.where)),
        );
        return onceInRoutines([...this.workshop.textFindings(document), ...standing, ...ofOthers.map(({ finding }) => finding)])
            .filter((finding) => finding.where.uri === uri)
            .map((finding) =>
                toDiagnostic(finding, document, isAllowable(finding.rule), (other) => this.documentOf(other), shown),
            );
    }
}

/** So often a plan that a newer one took the place of is made anew for somebody who waits for it. */
const MAX_TRIES = 10;

/** Longer than it takes to show a picture, and shorter than anybody waits for squiggles. */
const restAfterTyping = 150; // ms

/** Whoever types on does not stop for so long. */
const pauseInTyping = 1500; // ms

function contentHash(recipes: readonly Recipe[]): string {
    return hashText(contentKey(recipes));
}

function rest(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve, restAfterTyping));
}

/** After the answers that are ready now. */
function nextTurn(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve));
}

function wordsAt(text: string, { offset, length }: { offset: number; length: number }): string {
    return text.slice(offset, offset + length);
}
