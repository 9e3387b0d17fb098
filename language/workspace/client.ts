import type { InitializeParams } from 'vscode-languageserver';

/** What the client at the other end can do, by what it says when it starts the server. */
export interface ClientAbilities {
    /** Commands of the editor that a code lens may run. */
    readonly commands: ReadonlySet<string>;
    /** Whether an edit may make a file. */
    readonly createsFiles: boolean;
    /** Whether it asks for findings instead of being sent them. One that prefers to be sent them says so. */
    readonly pulls: boolean;
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
    refreshes: { diagnostics: false, inlayHints: false, codeLenses: false },
};

export function abilitiesOf({ capabilities, initializationOptions }: InitializeParams): ClientAbilities {
    const { workspace, textDocument } = capabilities;
    const { commands, diagnostics }: Wishes =
        typeof initializationOptions === 'object' && initializationOptions !== null ? initializationOptions : {};
    return {
        commands: new Set(Array.isArray(commands) ? commands.filter((each) => typeof each === 'string') : []),
        createsFiles:
            workspace?.workspaceEdit?.documentChanges === true &&
            workspace.workspaceEdit.resourceOperations?.includes('create') === true,
        pulls: textDocument?.diagnostic !== undefined && diagnostics !== 'push',
        refreshes: {
            diagnostics: workspace?.diagnostics?.refreshSupport === true,
            inlayHints: workspace?.inlayHint?.refreshSupport === true,
            codeLenses: workspace?.codeLens?.refreshSupport === true,
        },
    };
}
