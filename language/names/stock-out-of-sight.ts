import type { LangiumDocument, ReferenceInfo } from 'langium';
import { UriUtils } from 'langium';
import { isBuiltIn } from '../built-in';
import { type Entry, isFile, isKind, isRun } from '../generated/ast';
import type { KerfServices } from '../services';

/** A thing that a line could name if its file were used. */
export interface OutOfSight {
    readonly entry: Entry & { readonly name: string };
    readonly document: LangiumDocument;
    /** The file as a `use` in the asking file names it. */
    readonly path: string;
}

/** More than that nobody reads through; the next letter narrows it down. */
const most = 200;

/**
 * What other files of the workspace declare that would fit a reference, but that its file does not use, nearest file first. Names
 * that are in sight are left out, since they would go on meaning what they mean.
 */
export function stockOutOfSight(info: ReferenceInfo, from: LangiumDocument, services: KerfServices): OutOfSight[] {
    // A run finds its recipe without a `use`; a kind and a lot belong to the thing they stand in.
    if (isRun(info.container) || isKind(info.container) || info.property === 'lot') return [];
    const { AstReflection: reflection, workspace } = services.shared;
    const type = reflection.getReferenceType(info);
    const used = new Set([from.uri.toString(), ...services.names.UsedFiles.of(from).map(({ uri }) => uri.toString())]);
    const inSight = new Set(
        services.references.ScopeProvider.getScope(info)
            .getAllElements()
            .map(({ name }) => name),
    );
    const found: OutOfSight[] = [];
    for (const document of workspace.LangiumDocuments.all) {
        const file = document.parseResult.value;
        const address = document.uri.toString();
        if (!isFile(file) || used.has(address) || isBuiltIn(address) || document.uri.scheme !== from.uri.scheme) continue;
        const path = UriUtils.relative(UriUtils.dirname(from.uri), document.uri);
        for (const entry of file.entries) {
            if (!hasName(entry) || inSight.has(entry.name) || !reflection.isSubtype(entry.$type, type)) continue;
            found.push({ entry, document, path });
        }
    }
    const away = ({ path }: OutOfSight): number => path.split('/').length;
    const nearest = new Map<string, OutOfSight>();
    for (const each of found.sort((a, b) => away(a) - away(b))) {
        if (nearest.size < most && !nearest.has(each.entry.name)) nearest.set(each.entry.name, each);
    }
    return [...nearest.values()];
}

function hasName(entry: Entry): entry is Entry & { name: string } {
    return 'name' in entry && typeof entry.name === 'string' && entry.name !== '';
}
