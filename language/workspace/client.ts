import { type ClientCapabilities, DiagnosticTag, type InitializeParams } from 'vscode-languageserver';

/** What the client at the other end can do, by what it says when it starts the server. */
export interface ClientAbilities {
    /** Commands of the editor that a code lens may run. */
    readonly commands: ReadonlySet<string>;
    /** Whether an edit may make a file. */
    readonly createsFiles: boolean;
    /** Whether it asks for findings instead of being sent them. One that prefers to be sent them says so. */
    readonly pulls: boolean;
    /** What it shows of a finding beside its message. */
    readonly findings: { readonly links: boolean; readonly tags: boolean };
    /** Whether it asks for an action's edit when the action is taken. */
    readonly resolvesEdits: boolean;
    /** Whether it runs commands of the server's own. One that has buttons of its own for them needs none. */
    readonly runsCommands: boolean;
    /** Whether it shows a file when it is asked to. */
    readonly showsDocuments: boolean;
    /** Whether an edit may leave the cursor where something is to be typed. */
    readonly takesSnippets: boolean;
    /** Whether it opens texts that have no file, and asks the server for them. */
    readonly opensTexts: boolean;
    readonly refreshes: { readonly diagnostics: boolean; readonly inlayHints: boolean; readonly codeLenses: boolean };
}

/** What a client may say of itself in `initializationOptions`. */
interface Wishes {
    readonly commands?: unknown;
    readonly diagnostics?: unknown;
}

export const plainClient: ClientAbilities = {
    commands: new Set(),
    createsFiles: false,
    pulls: false,
    findings: { links: false, tags: false },
    resolvesEdits: false,
    runsCommands: false,
    showsDocuments: false,
    takesSnippets: false,
    opensTexts: false,
    refreshes: { diagnostics: false, inlayHints: false, codeLenses: false },
};

export function abilitiesOf({ capabilities, initializationOptions }: InitializeParams): ClientAbilities {
    const { workspace, textDocument, window } = capabilities;
    const { commands, diagnostics }: Wishes =
        typeof initializationOptions === 'object' && initializationOptions !== null ? initializationOptions : {};
    const own = new Set(Array.isArray(commands) ? commands.filter((each) => typeof each === 'string') : []);
    return {
        commands: own,
        createsFiles:
            workspace?.workspaceEdit?.documentChanges === true &&
            workspace.workspaceEdit.resourceOperations?.includes('create') === true,
        pulls: textDocument?.diagnostic !== undefined && diagnostics !== 'push',
        findings: findingsOf(textDocument),
        resolvesEdits:
            textDocument?.codeAction?.dataSupport === true &&
            textDocument.codeAction.resolveSupport?.properties.includes('edit') === true,
        // Many that run commands do not say so: to say it means only that they can be told of more later.
        runsCommands: !own.has('kerfbook.writeFiles'),
        showsDocuments: window?.showDocument?.support === true,
        takesSnippets: workspace?.workspaceEdit?.documentChanges === true && workspace.workspaceEdit.snippetEditSupport === true,
        opensTexts: workspace?.textDocumentContent !== undefined,
        refreshes: {
            diagnostics: workspace?.diagnostics?.refreshSupport === true,
            inlayHints: workspace?.inlayHint?.refreshSupport === true,
            codeLenses: workspace?.codeLens?.refreshSupport === true,
        },
    };
}

/** Older clients that ask for findings say what they show of one only where those speak that are sent them. */
function findingsOf(textDocument: ClientCapabilities['textDocument']): ClientAbilities['findings'] {
    const said = [textDocument?.publishDiagnostics, textDocument?.diagnostic];
    return {
        links: said.some((each) => each?.codeDescriptionSupport === true),
        tags: said.some((each) => each?.tagSupport?.valueSet?.includes(DiagnosticTag.Unnecessary) === true),
    };
}
