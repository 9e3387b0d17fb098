import type { LangiumDocument } from 'langium';
import type { Asker } from '../engine/asker';
import { byContent } from '../files/content-version';
import { openWorkshop, type Source } from '../workshop/open-workshop';
import type { Workshop } from '../workshop/workshop';

/** One version of some recipe files, opened: its files by the names that were asked for, as far as they are there. */
export interface OpenVersion {
    readonly workshop: Workshop;
    readonly documents: ReadonlyMap<string, LangiumDocument>;
    /** What this version of a file is called. */
    label(name: string): string;
}

export async function openVersion(
    source: Source,
    names: readonly string[],
    uriOf: (name: string) => string,
    label: (name: string) => string,
    asker: Asker,
): Promise<OpenVersion> {
    const uris = names.map(uriOf);
    const { workshop, documents } = await openWorkshop(
        { ...source, read: byContent(source.read) },
        uris,
        (uri) => names[uris.indexOf(uri)] ?? uri,
        asker,
    );
    return { workshop, documents: new Map(names.map((name, index) => [name, documents[index]!])), label };
}
