import * as v from 'valibot';
import { requests } from '../../shared/view/requests';
import { address, count, figure, whole } from '../../shared/view/shapes';

/** In the protocol of all language servers an absent field may be sent as null. */
const maybe = <Shape extends v.GenericSchema>(shape: Shape) => v.nullish(shape);
const listOf = v.array;
const anything = v.record(v.string(), v.unknown());

const position = v.object({ line: count, character: count });
const range = v.object({ start: position, end: position });
const textDocument = v.object({ uri: address });
const folders = listOf(v.object({ uri: address, name: v.string() }));
const options = v.object({ tabSize: count, insertSpaces: v.boolean() });
const changes = listOf(v.object({ text: v.string(), range: maybe(range) }));

const atFile = v.object({ textDocument });
const atPlace = v.object({ textDocument, position });
const ofItem = v.object({ item: v.object({ uri: address, selectionRange: range }) });
const atRange = v.object({ textDocument, range });

/** What each message takes, of those that take anything. Requests first, by what they are about. */
const taken: Readonly<Record<string, v.GenericSchema>> = {
    ...Object.fromEntries(Object.values(requests).map(({ method, params }) => [method, params])),
    initialize: v.object({ capabilities: anything, workspaceFolders: maybe(folders), rootUri: maybe(address) }),
    'textDocument/documentSymbol': atFile,
    'textDocument/foldingRange': atFile,
    'textDocument/documentLink': atFile,
    'textDocument/codeLens': atFile,
    'textDocument/documentColor': atFile,
    'textDocument/diagnostic': v.object({ textDocument, previousResultId: maybe(v.string()) }),
    'textDocument/semanticTokens/full': atFile,
    'textDocument/semanticTokens/full/delta': v.object({ textDocument, previousResultId: v.string() }),
    'textDocument/semanticTokens/range': atRange,
    'textDocument/hover': atPlace,
    'textDocument/completion': atPlace,
    'textDocument/definition': atPlace,
    'textDocument/declaration': atPlace,
    'textDocument/typeDefinition': atPlace,
    'textDocument/implementation': atPlace,
    'textDocument/signatureHelp': atPlace,
    'textDocument/documentHighlight': atPlace,
    'textDocument/prepareRename': atPlace,
    'textDocument/prepareCallHierarchy': atPlace,
    'textDocument/prepareTypeHierarchy': atPlace,
    'typeHierarchy/supertypes': ofItem,
    'typeHierarchy/subtypes': ofItem,
    'textDocument/linkedEditingRange': atPlace,
    'textDocument/references': v.object({ textDocument, position, context: v.object({ includeDeclaration: v.boolean() }) }),
    'textDocument/rename': v.object({ textDocument, position, newName: v.string() }),
    'textDocument/selectionRange': v.object({ textDocument, positions: listOf(position) }),
    'textDocument/inlayHint': atRange,
    'textDocument/colorPresentation': v.object({
        textDocument,
        range,
        color: v.object({ red: figure, green: figure, blue: figure, alpha: figure }),
    }),
    'textDocument/codeAction': v.object({
        textDocument,
        range,
        context: v.object({ diagnostics: listOf(v.object({ range })), only: maybe(listOf(v.string())) }),
    }),
    'textDocument/formatting': v.object({ textDocument, options }),
    'textDocument/rangeFormatting': v.object({ textDocument, range, options }),
    'textDocument/rangesFormatting': v.object({ textDocument, ranges: listOf(range), options }),
    'textDocument/onTypeFormatting': v.object({ textDocument, position, ch: v.string(), options }),
    'workspace/executeCommand': v.object({ command: v.string(), arguments: maybe(listOf(v.unknown())) }),
    'codeAction/resolve': v.object({ title: v.string() }),
    'completionItem/resolve': v.object({ label: v.string() }),
    'workspace/symbol': v.object({ query: v.string() }),
    'workspace/diagnostic': v.object({ previousResultIds: listOf(v.object({ uri: v.string(), value: v.string() })) }),
    'workspace/willDeleteFiles': v.object({ files: listOf(v.object({ uri: address })) }),
    'workspace/willRenameFiles': v.object({ files: listOf(v.object({ oldUri: address, newUri: address })) }),
    'workspace/textDocumentContent': v.object({ uri: address }),
    'textDocument/didOpen': v.object({
        textDocument: v.object({ uri: address, languageId: v.string(), version: whole, text: v.string() }),
    }),
    'textDocument/didChange': v.object({
        textDocument: v.object({ uri: address, version: maybe(whole) }),
        contentChanges: changes,
    }),
    'textDocument/didClose': atFile,
    'textDocument/didSave': atFile,
    'workspace/didChangeWatchedFiles': v.object({ changes: listOf(v.object({ uri: address, type: count })) }),
    'workspace/didChangeWorkspaceFolders': v.object({ event: v.object({ added: folders, removed: folders }) }),
};

/** Whether these are parameters of that message. Of what is not known here nothing is said. */
export function fits(name: string, params: unknown): boolean {
    return !Object.hasOwn(taken, name) || v.is(taken[name]!, params);
}
