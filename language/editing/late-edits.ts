import { type LangiumDocuments, URI } from 'langium';
import { type CodeAction, LSPErrorCodes, ResponseError, type WorkspaceEdit } from 'vscode-languageserver';
import { phrase } from '../../shared/recipe/phrase';

/** What can be done, with its edit worked out only when somebody chooses it. */
export interface Offer {
    readonly action: Omit<CodeAction, 'edit'>;
    readonly edit: () => WorkspaceEdit;
    /** Addresses of the files whose text it goes by. */
    readonly files: readonly string[];
}

/** Who knows the edits that were left out. */
export interface ActionResolver {
    /** An action with the edit that it was offered without. */
    resolve(action: CodeAction): CodeAction;
}

interface Kept {
    readonly edit: Offer['edit'];
    readonly versions: ReadonlyMap<string, number | undefined>;
}

/** So many offers are remembered: more than several menus that are open at a time. */
const MOST = 2000;

/** Edits of offered actions, for a client that asks for the one it takes: most are looked at and left. */
export class LateEdits implements ActionResolver {
    private readonly kept = new Map<number, Kept>();
    private last = 0;

    constructor(private readonly documents: LangiumDocuments) {}

    /** The action without its edit. */
    promise({ action, edit, files }: Offer): CodeAction {
        const versions = new Map(files.map((uri) => [uri, this.versionOf(uri)]));
        this.kept.set(++this.last, { edit, versions });
        this.kept.delete(this.last - MOST);
        return { ...action, data: this.last };
    }

    /** The action with its edit; throws what the protocol has for a text that has changed since. */
    resolve(action: CodeAction): CodeAction {
        // Of somebody else, or whole already.
        if (typeof action.data !== 'number' || action.edit !== undefined) return action;
        const kept = this.kept.get(action.data);
        const isStale = kept === undefined || [...kept.versions].some(([uri, version]) => this.versionOf(uri) !== version);
        if (isStale) throw new ResponseError(LSPErrorCodes.ContentModified, phrase`The text has changed since this was offered.`);
        return { ...action, edit: kept.edit() };
    }

    private versionOf(uri: string): number | undefined {
        return this.documents.getDocument(URI.parse(uri))?.textDocument.version;
    }
}

/** The whole action. */
export function atOnce({ action, edit }: Offer): CodeAction {
    return { ...action, edit: edit() };
}
