import { beforeEach, describe, expect, it, vi } from 'vitest';

const editor = vi.hoisted(() => ({
    isTrusted: true,
    folders: [] as { name: string; uri: { scheme: string; fsPath: string } }[],
    offered: undefined as { id: string; provider: { provideMcpServerDefinitions(): unknown[] } } | undefined,
    changes: 0,
    told: [] as (() => void)[],
    lacksIt: false,
}));

vi.mock('vscode', () => {
    class EventEmitter {
        event = () => undefined;
        fire(): void {
            editor.changes += 1;
        }
    }
    class McpStdioServerDefinition {
        constructor(
            readonly label: string,
            readonly command: string,
            readonly args: string[],
            readonly env: object,
            readonly version: string,
        ) {}
    }
    return {
        EventEmitter,
        McpStdioServerDefinition,
        Uri: { joinPath: (_: unknown, ...parts: string[]) => ({ fsPath: parts.join('/') }) },
        l10n: { t: (text: string, ...given: string[]) => text.replace('{0}', given[0] ?? '') },
        lm: {
            get registerMcpServerDefinitionProvider() {
                if (editor.lacksIt) return undefined;
                return (id: string, provider: NonNullable<typeof editor.offered>['provider']) => {
                    editor.offered = { id, provider };
                    return { dispose: () => undefined };
                };
            },
        },
        workspace: {
            get isTrusted() {
                return editor.isTrusted;
            },
            get workspaceFolders() {
                return editor.folders;
            },
            onDidGrantWorkspaceTrust: (tell: () => void) => editor.told.push(tell),
            onDidChangeWorkspaceFolders: (tell: () => void) => editor.told.push(tell),
        },
    };
});

const { offerToAssistants } = await import('../../extension/assistants');
const manifest = (await import('../../package.json')).default;

const folder = (name: string, scheme = 'file') => ({ name, uri: { scheme, fsPath: `/shop/${name}` } });
const context = () => ({ extensionUri: {}, extension: { packageJSON: { version: '9.9.9' } }, subscriptions: [] as unknown[] });
const offer = (subscriptions = context()) => offerToAssistants(subscriptions as never);
const servers = () =>
    editor.offered!.provider.provideMcpServerDefinitions() as { label: string; args: string[]; env: object; version: string }[];

describe('what assistants in the editor are offered', () => {
    beforeEach(() => {
        Object.assign(editor, { isTrusted: true, folders: [], offered: undefined, changes: 0, told: [], lacksIt: false });
    });

    it('is a server that only reads for each folder on the disk, under the name that the manifest gives', () => {
        editor.folders = [folder('trays'), folder('far', 'vscode-vfs'), folder('signs')];
        offer();
        expect(manifest.contributes.mcpServerDefinitionProviders.map(({ id }) => id)).toEqual([editor.offered!.id]);
        expect(servers().map(({ label, args }) => [label, ...args])).toEqual([
            ['Kerfbook: trays', 'dist/cli.cjs', 'mcp', '/shop/trays'],
            ['Kerfbook: signs', 'dist/cli.cjs', 'mcp', '/shop/signs'],
        ]);
        expect(servers()[0]).toMatchObject({ env: { ELECTRON_RUN_AS_NODE: '1' }, version: '9.9.9' });
        editor.folders = [folder('trays')];
        expect(servers().map(({ label }) => label)).toEqual(['Kerfbook']);
    });

    it('is nothing where the folder is not trusted, and told anew once it is', () => {
        Object.assign(editor, { isTrusted: false, folders: [folder('trays')] });
        offer();
        expect(servers()).toEqual([]);
        for (const tell of editor.told) tell();
        expect(editor.changes).toBe(2);
        editor.isTrusted = true;
        expect(servers()).toHaveLength(1);
    });

    it('is left out where an editor of the same kind has no such thing', () => {
        editor.lacksIt = true;
        expect(() => offer()).not.toThrow();
    });
});
