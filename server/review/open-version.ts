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

/** @param names may be still on their way */
export async function openVersion(
    source: Source,
    names: readonly string[] | Promise<readonly string[]>,
    uriOf: (name: string) => string,
    label: (name: string) => string,
    asker: Asker,
): Promise<OpenVersion> {
    const namesOf = new Map<string, string>();
    const uris = async (): Promise<string[]> =>
        (await names).map((name) => {
            const uri = uriOf(name);
            namesOf.set(uri, name);
            return uri;
        });
    const { workshop, documents } = await openWorkshop(
        { ...source, read: byContent(source.read) },
        uris(),
        (uri) => namesOf.get(uri) ?? uri,
        asker,
    );
    return { workshop, documents: new Map((await names).map((name, index) => [name, documents[index]!])), label };
}
