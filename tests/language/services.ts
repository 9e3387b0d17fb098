import { DocumentState, EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { isBuiltIn } from '../../language/built-in';
import { createKerfServices } from '../../language/module';
import { couponFit } from '../../shared/view/coupon-fit';
import { runFacts } from '../../shared/view/run-facts';

const { shared, kerf } = createKerfServices(EmptyFileSystem, {
    couponFit: async (coupon) => couponFit(coupon),
    runFacts: async (recipe, run) => runFacts(recipe, run),
    today: () => '2026-11-30',
});
let started: Promise<void> | undefined;
let counter = 0;

export const services = kerf;

// Files of tests share one process: what one has opened would lie in the next one's folder (tests/kit/forget-opened.ts).
(globalThis as { forgetOpened?: () => Promise<void> }).forgetOpened = async () => {
    const opened = shared.workspace.LangiumDocuments.all.map(({ uri }) => uri).filter((uri) => !isBuiltIn(uri.toString()));
    await shared.workspace.DocumentBuilder.update([], opened.toArray());
};

/** The real services with the built-in stock loaded, one set for a whole test file. */
export async function start(): Promise<typeof kerf> {
    started ??= shared.workspace.WorkspaceManager.initializeWorkspace([]);
    await started;
    return kerf;
}

/** So many texts without a name of their own stay open: all lie in one folder, and what is in sight there is looked through. */
const KEPT = 20;

/** A document built as the editor builds it: parsed, linked and checked. */
export async function open(text: string, uri = nextUri()): Promise<LangiumDocument> {
    await start();
    const parsed = URI.parse(uri);
    if (shared.workspace.LangiumDocuments.hasDocument(parsed)) shared.workspace.LangiumDocuments.deleteDocument(parsed);
    const document = shared.workspace.LangiumDocumentFactory.fromString(text, parsed);
    shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build([document], { validation: true });
    if (document.state !== DocumentState.Validated) throw new Error('The document was not built.');
    return document;
}

function nextUri(): string {
    counter++;
    const oldest = URI.parse(`file:///shop/test-${counter - KEPT}.kerf`);
    if (shared.workspace.LangiumDocuments.hasDocument(oldest)) {
        shared.workspace.LangiumDocuments.deleteDocument(oldest);
        shared.workspace.IndexManager.remove(oldest);
    }
    return `file:///shop/test-${counter}.kerf`;
}
