import { method } from '../../shared/view/protocol';

/** Whether a value is what it should be; `isAddress` tells addresses from other texts. */
type Shape = (value: unknown, isAddress: (text: string) => boolean) => boolean;

const text: Shape = (value) => typeof value === 'string';
const flag: Shape = (value) => typeof value === 'boolean';
const figure: Shape = (value) => typeof value === 'number' && Number.isFinite(value);
const count: Shape = (value) => Number.isSafeInteger(value) && (value as number) >= 0;
const version: Shape = (value) => Number.isSafeInteger(value);
const address: Shape = (value, isAddress) => typeof value === 'string' && isAddress(value);

function record(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whatever else it holds is left to whoever reads it. */
function having(fields: Readonly<Record<string, Shape>>): Shape {
    return (value, isAddress) => record(value) && Object.entries(fields).every(([name, shape]) => shape(value[name], isAddress));
}

function listOf(shape: Shape): Shape {
    return (value, isAddress) => Array.isArray(value) && value.every((each) => shape(each, isAddress));
}

function maybe(shape: Shape): Shape {
    return (value, isAddress) => value === undefined || value === null || shape(value, isAddress);
}

const position = having({ line: count, character: count });
const range = having({ start: position, end: position });
const textDocument = having({ uri: address });
const folders = listOf(having({ uri: address, name: text }));
const options = having({ tabSize: count, insertSpaces: flag });
const changes = listOf(having({ text, range: maybe(range) }));

const atFile = having({ textDocument });
const atPlace = having({ textDocument, position });
const atRange = having({ textDocument, range });
const file = having({ uri: address });
const ofRecipe = having({ uri: address, recipe: maybe(text), offset: maybe(count) });
const ofStep = having({ uri: address, recipe: maybe(text), offset: maybe(count), step: count });
const ofCoupon = having({ uri: address, sheet: text, laser: text });
const ofSquares = having({ uri: address, sheet: text, laser: text, made: maybe(text) });

/** What each message takes, of those that take anything. Requests first, by what they are about. */
const taken: Readonly<Record<string, Shape>> = {
    initialize: having({ capabilities: record, workspaceFolders: maybe(folders), rootUri: maybe(address) }),
    'textDocument/documentSymbol': atFile,
    'textDocument/foldingRange': atFile,
    'textDocument/documentLink': atFile,
    'textDocument/codeLens': atFile,
    'textDocument/documentColor': atFile,
    'textDocument/diagnostic': having({ textDocument, previousResultId: maybe(text) }),
    'textDocument/semanticTokens/full': atFile,
    'textDocument/semanticTokens/full/delta': having({ textDocument, previousResultId: text }),
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
    'textDocument/linkedEditingRange': atPlace,
    'textDocument/references': having({ textDocument, position, context: having({ includeDeclaration: flag }) }),
    'textDocument/rename': having({ textDocument, position, newName: text }),
    'textDocument/selectionRange': having({ textDocument, positions: listOf(position) }),
    'textDocument/inlayHint': atRange,
    'textDocument/colorPresentation': having({
        textDocument,
        range,
        color: having({ red: figure, green: figure, blue: figure, alpha: figure }),
    }),
    'textDocument/codeAction': having({
        textDocument,
        range,
        context: having({ diagnostics: listOf(having({ range })), only: maybe(listOf(text)) }),
    }),
    'textDocument/formatting': having({ textDocument, options }),
    'textDocument/rangeFormatting': having({ textDocument, range, options }),
    'textDocument/onTypeFormatting': having({ textDocument, position, ch: text, options }),
    'completionItem/resolve': having({ label: text }),
    'workspace/symbol': having({ query: text }),
    'workspace/diagnostic': having({ previousResultIds: listOf(having({ uri: text, value: text })) }),
    'workspace/willRenameFiles': having({ files: listOf(having({ oldUri: address, newUri: address })) }),
    'workspace/textDocumentContent': file,
    [method.bench]: having({ uri: address, recipe: maybe(text), offset: maybe(count), had: maybe(listOf(text)) }),
    [method.checklist]: ofRecipe,
    [method.build]: ofRecipe,
    [method.section]: having({ uri: address, recipe: maybe(text), offset: maybe(count), frame: count, blank: text, y: figure }),
    [method.toolpath]: ofStep,
    [method.press]: ofStep,
    [method.rewrite]: having({ uri: address, textVersion: version, offset: count, length: count, text }),
    [method.couponChoices]: ofRecipe,
    [method.coupon]: ofCoupon,
    [method.squares]: ofSquares,
    [method.readDepth]: having({ text }),
    [method.measured]: having({ uri: address, sheet: text, laser: text, rows: listOf(having({ words: text, depth: text })) }),
    [method.run]: having({ uri: address, recipe: text, date: text, revision: count, lines: listOf(text), notes: listOf(text) }),
    [method.newRecipeChoices]: having({ files: listOf(address) }),
    [method.newRecipe]: having({ files: listOf(address) }),
    [method.insertArt]: having({ uri: address, offset: count, files: listOf(address) }),
    [method.check]: having({ folder: address, files: maybe(listOf(address)), strict: maybe(flag) }),
    [method.compare]: having({ uri: address, before: maybe(address), revision: maybe(text) }),
    [method.revisions]: file,
    [method.revisionPlaces]: file,
    [method.table]: ofRecipe,
    [method.history]: ofRecipe,
    [method.stock]: file,
    [method.page]: having({ rule: text }),
    'textDocument/didOpen': having({ textDocument: having({ uri: address, languageId: text, version, text }) }),
    'textDocument/didChange': having({
        textDocument: having({ uri: address, version: maybe(version) }),
        contentChanges: changes,
    }),
    'textDocument/didClose': atFile,
    'textDocument/didSave': atFile,
    'workspace/didChangeWatchedFiles': having({ changes: listOf(having({ uri: address, type: count })) }),
    'workspace/didChangeWorkspaceFolders': having({ event: having({ added: folders, removed: folders }) }),
};

/** Whether these are parameters of that message. Of what is not known here nothing is said. */
export function fits(name: string, params: unknown, isAddress: (text: string) => boolean): boolean {
    return !Object.hasOwn(taken, name) || taken[name]!(params, isAddress);
}
