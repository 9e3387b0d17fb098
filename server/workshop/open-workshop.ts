import { type FileSystemProvider, type LangiumDocument, URI } from 'langium';
import { createKerfServices } from '../../language/module';
import { dayOf } from '../../shared/quantity/calendar';
import { phrase } from '../../shared/recipe/phrase';
import { allowablePages } from '../all-pages';
import type { Asker } from '../engine/asker';
import type { FileReader } from '../files/read-result';
import { ArtCache } from './art-cache';
import { CannotOpen } from './cannot-open';
import { runsBeside } from './runs-beside';
import { Workshop } from './workshop';

/** Where recipe files and art are read from: the disk, a revision. */
export interface Source {
    readonly fileSystem: { readonly fileSystemProvider: () => FileSystemProvider };
    readonly read: FileReader;
}

export interface OpenFiles {
    readonly workshop: Workshop;
    readonly documents: readonly LangiumDocument[];
}

/**
 * Reads and builds recipe files by their addresses, with all that they use and the runs beside them.
 * @param uris may be still on their way: the built-in stock is read meanwhile
 * @param nameOf what a file is called that cannot be read; where it is absent, such files are left out
 */
export async function openWorkshop(
    { fileSystem, read }: Source,
    uris: readonly string[] | Promise<readonly string[]>,
    nameOf: ((uri: string) => string) | undefined,
    asker: Asker,
): Promise<OpenFiles> {
    const coming = Promise.resolve(uris);
    // It is awaited once the stock is read; until then nobody would hear that it has failed.
    coming.catch(() => {});
    const { shared, kerf } = createKerfServices(fileSystem, { tradePages: allowablePages, today: () => dayOf(new Date()) });
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const { LangiumDocuments, DocumentBuilder } = shared.workspace;
    const documents = await Promise.all(
        (await coming).map((uri) =>
            LangiumDocuments.getOrCreateDocument(URI.parse(uri)).catch(() => {
                if (nameOf === undefined) return undefined;
                throw new CannotOpen(phrase`${nameOf(uri)} cannot be read as a recipe file.`);
            }),
        ),
    );
    const there = documents.flatMap((document) => document?.uri ?? []);
    const besides = await runsBeside(there, fileSystem.fileSystemProvider());
    await Promise.all(besides.map((uri) => LangiumDocuments.getOrCreateDocument(uri).catch(() => undefined)));
    await DocumentBuilder.build([...LangiumDocuments.all], { validation: false });
    return { workshop: new Workshop(kerf, new ArtCache(read), asker), documents: documents.filter((each) => each !== undefined) };
}
