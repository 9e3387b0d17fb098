import type { ServerCapabilities } from 'vscode-languageserver';

/** What the protocol calls a feature, and what a maker gets from it. A test holds that nothing the server says is missing here. */
const features: Readonly<Record<string, string>> = {
    textDocumentSync: 'Text is read as it is typed, a piece at a time.',
    completionProvider:
        'Proposals by place: lines of the block, names with their figures, units that fit, rules, files, parts of the art.',
    hoverProvider: 'What lies under the cursor: figures in other units, what a word does, what a name stands for and its source.',
    inlayHintProvider: 'Solved settings, depth with its interval, times and prices beside the text.',
    codeLensProvider: 'Above each recipe: time, quantities, and, in editors that know the commands, view and write files.',
    codeActionProvider:
        'Quick fixes; pin and unpin; convert units in one place or the whole file; make built-in stock the shop’s own; move stock to the workshop file; fix all.',
    executeCommandProvider:
        'Files written for machine and bench, a coupon, a finished run, a new recipe; what came of it is shown.',
    definitionProvider: 'From a name to where it is declared, into built-in stock too; from a path to its file.',
    referencesProvider: 'Every place where a thing is meant, across files.',
    documentHighlightProvider: 'The same within a file, as the cursor moves.',
    renameProvider: 'Renames across files; names that the language could not read back or that are taken are refused.',
    linkedEditingRangeProvider: 'Names of a recipe’s own art, blanks and steps change together as they are typed.',
    documentSymbolProvider: 'The outline: stock, recipes, steps in the order of the work.',
    workspaceSymbolProvider: 'Search by name over all files and the built-in stock.',
    semanticTokensProvider: 'Names coloured by what they stand for.',
    documentFormattingProvider: 'Layout of a file; never changes what it means. Lines above 120 letters are broken.',
    documentRangeFormattingProvider: 'Layout of the chosen lines, also of several places at once.',
    documentOnTypeFormattingProvider: 'A closing brace moves to its place.',
    signatureHelpProvider:
        'While a square, a cut test, a grid, a curve or a price is typed: what the line takes, and what the next figure is.',
    typeHierarchyProvider:
        'What a recipe is based on and its variants; what stock takes its figures from (`kind`), and what takes them from it.',
    foldingRangeProvider: 'Blocks and long comments fold.',
    selectionRangeProvider: 'The selection widens from word to line to block.',
    documentLinkProvider: 'Paths of art and of used files open with a click.',
    colorProvider: 'Colours of resins and woods have a swatch and a picker.',
    diagnosticProvider: 'Findings on request, for a file or the whole workspace; other clients are sent them.',
    'workspace.textDocumentContent': 'Built-in stock, to which definitions lead, and the pages of rules open as texts.',
    'workspace.workspaceFolders': 'Several folders at once.',
    'workspace.fileOperations':
        'When files or folders move, `use` and `art` go on leading to them; whoever deletes what recipes use hears which they are.',
};

/** The features of a server as a Markdown table, from its own answer to `initialize`. Throws for one that nobody has described. */
export function capabilityTable(capabilities: ServerCapabilities): string {
    const { workspace = {}, ...others } = capabilities;
    const said = {
        ...others,
        ...Object.fromEntries(Object.entries(workspace).map(([name, value]) => [`workspace.${name}`, value])),
    };
    const rows = Object.entries(said).flatMap(([name, value]) => {
        if (value === undefined || value === false || value === null) return [];
        const what = features[name];
        if (what === undefined) throw new Error(`Nobody has described ${name}.`);
        return [`| \`${name}\` | ${what} | ${details(value)} |`];
    });
    return ['| In the protocol | What it gives | In detail |', '| --- | --- | --- |', ...rows.sort()].join('\n');
}

/** Action kinds, trigger characters and the like, as far as a reader has use for them. */
function details(value: unknown): string {
    if (typeof value !== 'object' || value === null) return '';
    const {
        codeActionKinds,
        triggerCharacters,
        firstTriggerCharacter,
        prepareProvider,
        resolveProvider,
        workspaceDiagnostics,
        willRename,
        full,
        range,
        schemes,
        commands,
        rangesSupport,
        willDelete,
    } = value as Record<string, unknown>;
    const listed = [codeActionKinds, triggerCharacters, schemes, commands].find(Array.isArray) as string[] | undefined;
    const words = [
        ...(listed ?? []).map((each) => `\`${each === ' ' ? 'space' : each}\``),
        ...(typeof firstTriggerCharacter === 'string' ? [`\`${firstTriggerCharacter}\``] : []),
        ...(prepareProvider === true ? ['prepare'] : []),
        ...(resolveProvider === true ? ['resolve'] : []),
        ...(workspaceDiagnostics === true ? ['file', 'workspace'] : []),
        ...(rangesSupport === true ? ['several ranges'] : []),
        ...(willRename === undefined ? [] : ['before renaming']),
        ...(willDelete === undefined ? [] : ['before deleting']),
        ...(full === undefined ? [] : ['file', ...(range === undefined ? [] : ['range']), ...(isDelta(full) ? ['changes'] : [])]),
    ];
    return words.join(', ');
}

/** `{ delta: false }` denies it. */
function isDelta(full: unknown): boolean {
    return typeof full === 'object' && full !== null && 'delta' in full && full.delta === true;
}
