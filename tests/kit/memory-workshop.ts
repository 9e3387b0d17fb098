import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { createKerfServices } from '../../language/module';
import { allowablePages } from '../../server/all-pages';
import { LocalAsker } from '../../server/engine/asker';
import { byContent } from '../../server/files/content-version';
import type { FileReader } from '../../server/files/read-result';
import { ArtCache } from '../../server/workshop/art-cache';
import { namesInArt } from '../../server/workshop/names-in-art';
import { Workshop } from '../../server/workshop/workshop';
import type { Finding } from '../../shared/recipe/finding';
import { expectToKeepToItsPage } from './keeps-to-its-page';

/** A workshop whose files live in memory; the built-in stock is there. */
export interface MemoryWorkshop {
    readonly workshop: Workshop;
    open(text: string, name?: string): Promise<LangiumDocument>;
    /** All findings of a text: its own and the trade's. */
    findings(text: string): Promise<Finding[]>;
    /** As it was before anything was opened: reading the built-in stock once more takes longer than most of what is looked at. */
    forget(): Promise<void>;
}

/** @param art file contents by name, as the recipes write them */
export async function memoryWorkshop(art: Readonly<Record<string, string | Uint8Array>> = {}): Promise<MemoryWorkshop> {
    const read: FileReader = byContent(async (uri) => {
        const content = art[uri.replace('file:///shop/', '')];
        if (content === undefined) return { problem: 'missing', version: 'missing' };
        return { bytes: typeof content === 'string' ? new TextEncoder().encode(content) : content, version: '1' };
    });
    const arts = new ArtCache(read);
    const { shared, kerf } = createKerfServices(EmptyFileSystem, { tradePages: allowablePages, artNames: namesInArt(arts) });
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const workshop = new Workshop(kerf, arts, new LocalAsker());
    let count = 0;
    const opened: URI[] = [];
    const open = async (text: string, name = `recipe-${++count}.kerf`): Promise<LangiumDocument> => {
        const uri = URI.parse(`file:///shop/${name}`);
        const document = shared.workspace.LangiumDocumentFactory.fromString(text, uri);
        opened.push(uri);
        shared.workspace.LangiumDocuments.addDocument(document);
        await shared.workspace.DocumentBuilder.build([document], { validation: false });
        return document;
    };
    return {
        workshop,
        open,
        async findings(text) {
            const document = await open(text);
            const found = [...workshop.textFindings(document), ...((await workshop.tradeFindings(document)) ?? [])];
            for (const finding of found) expectToKeepToItsPage(finding);
            return found;
        },
        async forget() {
            count = 0;
            await shared.workspace.DocumentBuilder.update([], opened.splice(0));
        },
    };
}
