import { DocumentState, type LangiumDocument, URI } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import { CodeActionKind, CodeLensRefreshRequest, type Connection } from 'vscode-languageserver';
import { wantsFixAll } from '../language/editing/code-actions';
import { createKerfServices } from '../language/module';
import type { KerfLanguageServer } from '../language/workspace/language-server';
import { dayOf } from '../shared/quantity/calendar';
import { allowablePages } from './all-pages';
import { answerArtRequests } from './art-requests';
import { answerCheckRequests } from './check-requests';
import { Commands } from './commands/commands';
import { answerCouponRequests } from './coupon/coupon-requests';
import type { Asker } from './engine/asker';
import type { FileReader } from './files/read-result';
import { fixAllRounds } from './fixing/fix-all-rounds';
import { HintWishes } from './hint-wishes';
import { answering } from './protocol/answering';
import { answerRefusals } from './protocol/message-order';
import { refused } from './protocol/refused';
import { answerRequests } from './requests';
import { answerReviewRequests } from './review/review-requests';
import type { Versions } from './review/versions';
import { rulePageAt } from './rule-page-at';
import { answerRunRequests } from './run-requests';
import { ShownProgress } from './show-progress';
import { answerStartingRequests } from './starting/starting-requests';
import { ArtCache } from './workshop/art-cache';
import { LastPlans } from './workshop/last-plans';
import { namesInArt } from './workshop/names-in-art';
import type { Source } from './workshop/open-workshop';
import { Publisher } from './workshop/publisher';
import { Workshop } from './workshop/workshop';
import type { OpenStore } from './writing/store';
import { answerWritingRequests } from './writing/writing-requests';

type ActionHandler = Parameters<Connection['onCodeAction']>[0];

/** What differs between Node and a browser worker. */
export interface Process {
    /** Made with `inOrder`. */
    readonly connection: Connection;
    readonly fileSystem: Source['fileSystem'];
    readonly read: FileReader;
    readonly asker: Asker;
    /** Where files are written. */
    readonly openStore: OpenStore;
    /** Absent where there is no git. */
    readonly versions?: Versions;
    /** Address of the manual's folder, where it lies beside the program. */
    readonly manual?: string;
}

/** Starts the language server on a connection. All of it runs in Node and in a browser worker alike. */
export function serveLanguage({ connection: raw, fileSystem, read, asker, openStore, versions, manual }: Process): Workshop {
    answerRefusals(raw);
    const connection = answering(raw, async (uri) => {
        const { WorkspaceManager, LangiumDocuments, TextDocuments } = services.shared.workspace;
        await WorkspaceManager.ready;
        return LangiumDocuments.hasDocument(uri) || TextDocuments.get(uri.toString()) !== undefined;
    });
    // Langium would send the text's findings by itself; the publisher sends them together with the trade's.
    const quiet: Connection = Object.create(connection, {
        sendDiagnostics: { value: async () => {} },
        onCodeAction: { value: (handler: ActionHandler) => connection.onCodeAction(fixingAll(handler)) },
    });
    /** To mend all, the trade has to be heard first, outside of the lock: a plan may take its time, and typing does not wait for it. */
    const fixingAll =
        (handler: ActionHandler): ActionHandler =>
        async (params, token, ...rest) => {
            if (!wantsFixAll(params)) return handler(params, token, ...rest);
            const document = await publisher.settled(params.textDocument.uri, token);
            const found = await handler(params, token, ...rest);
            if (document === undefined || !Array.isArray(found)) return found;
            return Promise.all(
                found.map((action) =>
                    'kind' in action && action.kind === CodeActionKind.SourceFixAll
                        ? fixAllRounds(action, document, services.kerf, { fileSystem, read }, asker)
                        : action,
                ),
            );
        };
    const clientOf = () => (services.shared.lsp.LanguageServer as KerfLanguageServer).client;
    const refreshHints = (): void => {
        if (clientOf().refreshes.inlayHints) connection.languages.inlayHint.refresh().catch(refused);
    };
    const plans = new LastPlans(() => {
        refreshHints();
        if (clientOf().refreshes.codeLenses) connection.sendRequest(CodeLensRefreshRequest.type).catch(refused);
    });
    const arts = new ArtCache(read);
    const services = createKerfServices(
        { connection: quiet, ...fileSystem },
        {
            commands: new Commands(connection, () => workshop),
            tradePages: allowablePages,
            today: () => dayOf(new Date()),
            showsDefaults: () => wishes.showsDefaults,
            planned: (uri) => plans.of(uri),
            runs: (uri) => plans.runsOf(uri),
            diagnostics: (document) => publisher.current(document),
            artNames: namesInArt(arts),
            // One at a time: the cursor has moved on from the coupon before.
            couponFit: (coupon) => asker.ask({ do: 'fit', coupon }, [], 'coupon under the cursor').catch(() => undefined),
            runFacts: (recipe, run) =>
                asker.ask({ do: 'run-facts', recipe, run }, [], 'run under the cursor').catch(() => undefined),
            rulePage: async (rule) =>
                (await asker.ask({ do: 'page', rule }, [], 'rule under the cursor').catch(() => undefined)) ?? undefined,
        },
    );
    const wishes = new HintWishes(services.shared.workspace.ConfigurationProvider, refreshHints);
    services.shared.lsp.LanguageServer.onInitialized(() => void wishes.read());
    const progress = new ShownProgress(connection);
    asker.watch?.(progress);
    services.shared.lsp.LanguageServer.onInitialize(({ capabilities }) => {
        progress.able = capabilities.window?.workDoneProgress === true;
    });
    const workshop = new Workshop(services.kerf, arts, asker);
    const publisher = new Publisher(connection, workshop, plans, (rule) => rulePageAt(rule, clientOf(), manual));
    answerRequests(connection, workshop);
    answerArtRequests(connection, workshop);
    answerCheckRequests(connection, workshop);
    answerCouponRequests(connection, workshop, read);
    answerWritingRequests(connection, workshop, read, openStore);
    answerRunRequests(connection, workshop, openStore);
    answerReviewRequests(connection, workshop, versions);
    answerStartingRequests(connection, workshop, { fileSystem, read }, asker);
    replanWhenArtChanges(workshop, publisher);
    const { TextDocuments } = services.shared.workspace;
    TextDocuments.onDidOpen(() => asker.setAttended?.(true));
    TextDocuments.onDidClose(() => asker.setAttended?.(TextDocuments.all().length > 0));
    // What a line takes goes by its words alone.
    startLanguageServer(services.shared, { SignatureHelp: DocumentState.Parsed });
    return workshop;
}

const artEnding = /\.(svg|png|jpe?g)$/i;

function replanWhenArtChanges(workshop: Workshop, publisher: Publisher): void {
    const { shared } = workshop.services;
    shared.lsp.DocumentUpdateHandler?.onWatchedFilesChange?.((params) => {
        const changed = params.changes.filter(({ uri }) => artEnding.test(uri)).map(({ uri }) => URI.parse(uri).toString());
        for (const uri of changed) workshop.arts.changed(uri);
        if (changed.length === 0) return;
        for (const document of shared.workspace.LangiumDocuments.all.toArray()) {
            if (document.state >= DocumentState.Linked && uses(workshop, document, changed)) void publisher.plan(document);
        }
    });
}

function uses(workshop: Workshop, document: LangiumDocument, art: readonly string[]): boolean {
    return workshop.recipes(document).some((recipe) => recipe.arts.some((source) => art.includes(source.uri)));
}
