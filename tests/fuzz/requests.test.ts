import fc from 'fast-check';
import type { LangiumDocument } from 'langium';
import { expect, test } from 'vitest';
import type { CodeAction, Position, Range, TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { toDiagnostic } from '../../language/diagnostic';
import { coloursIn } from '../../language/editor/colours';
import { linkedRanges } from '../../language/editor/linked-editing';
import { selectionRanges } from '../../language/editor/selection-ranges';
import { syntaxFindings } from '../../language/findings/syntax';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import { open, services } from '../language/services';
import { patience, runs, texts } from './texts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const uri = 'file:///shop/fuzz.kerf';
const textDocument = { uri };
const options = { tabSize: 2, insertSpaces: true };
const { lsp } = services;

/** Everything an editor asks about a place or a file, by name. */
const questions: Readonly<Record<string, (document: LangiumDocument, position: Position, other: Position) => unknown>> = {
    hover: (document, position) => lsp.HoverProvider!.getHoverContent(document, { textDocument, position }),
    completion: (document, position) => lsp.CompletionProvider!.getCompletion(document, { textDocument, position }),
    definition: (document, position) => lsp.DefinitionProvider!.getDefinition(document, { textDocument, position }),
    references: (document, position) =>
        lsp.ReferencesProvider!.findReferences(document, { textDocument, position, context: { includeDeclaration: true } }),
    highlights: (document, position) => lsp.DocumentHighlightProvider!.getDocumentHighlight(document, { textDocument, position }),
    linked: (document, position) => linkedRanges(document, position)?.ranges,
    selection: (document, position, other) => selectionRanges(document, [position, other]),
    colours: (document) => coloursIn(document),
    outline: (document) => lsp.DocumentSymbolProvider!.getSymbols(document, { textDocument }),
    folding: (document) => lsp.FoldingRangeProvider!.getFoldingRanges(document, { textDocument }),
    links: (document) => lsp.DocumentLinkProvider!.getDocumentLinks(document, { textDocument }),
    hints: (document, start, end) => lsp.InlayHintProvider!.getInlayHints(document, { textDocument, range: { start, end } }),
    lenses: (document) => lsp.CodeLensProvider!.provideCodeLens(document, { textDocument }),
    tokens: (document) => lsp.SemanticTokenProvider!.semanticHighlight(document, { textDocument }),
    format: (document) => lsp.Formatter!.formatDocument(document, { textDocument, options }),
    formatRange: (document, start, end) =>
        lsp.Formatter!.formatDocumentRange(document, { textDocument, options, range: { start, end } }),
    formatTyped: (document, position) =>
        lsp.Formatter!.formatDocumentOnType(document, { textDocument, options, position, ch: '}' }),
    actions: (document, start, end) => actionsOf(document, { start, end }),
    rename: (document, position) =>
        refusable(() => lsp.RenameProvider!.rename(document, { textDocument, position, newName: 'quite-new' })),
};

/** A refusal is an answer. */
async function refusable(work: () => unknown): Promise<unknown> {
    try {
        return await work();
    } catch (error) {
        if (error instanceof Error && 'code' in error) return undefined;
        throw error;
    }
}

async function actionsOf(document: LangiumDocument, range: Range): Promise<CodeAction[]> {
    const diagnostics = textFindings(document, services).map((finding) => toDiagnostic(finding, document));
    const found = await lsp.CodeActionProvider!.getCodeActions(document, { textDocument, range, context: { diagnostics } });
    return (found ?? []) as CodeAction[];
}

/** Every range in an answer that is about this file lies in its text. */
function rangesLieIn(answer: unknown, document: LangiumDocument, name: string): void {
    const { lineCount } = document.textDocument;
    const visit = (value: unknown, isElsewhere: boolean): void => {
        if (typeof value !== 'object' || value === null) return;
        const { uri: other, targetUri } = value as { uri?: unknown; targetUri?: unknown };
        const away = isElsewhere || (typeof (targetUri ?? other) === 'string' && (targetUri ?? other) !== uri);
        if ('line' in value && 'character' in value && !away) {
            const { line, character } = value as Position;
            expect(line, name).toBeLessThan(lineCount);
            const end = document.textDocument.positionAt(document.textDocument.offsetAt({ line, character: 1e9 })).character;
            expect(character, name).toBeLessThanOrEqual(end);
            expect(Math.min(line, character), name).toBeGreaterThanOrEqual(0);
        }
        for (const inner of Object.values(value)) visit(inner, away);
    };
    visit(answer, false);
}

test(
    'any question at any place of any text is answered, within the text',
    async () => {
        const asked = fc.array(fc.tuple(fc.constantFrom(...Object.keys(questions)), share, share), {
            minLength: 1,
            maxLength: 12,
        });
        await fc.assert(
            fc.asyncProperty(texts, asked, async (text, all) => {
                const document = await open(text, uri);
                for (const [name, from, to] of all) {
                    const [start, end] = [from, to]
                        .sort()
                        .map((at) => document.textDocument.positionAt(Math.floor(at * text.length)));
                    rangesLieIn(await questions[name]!(document, start!, end!), document, name);
                }
            }),
            { numRuns: runs },
        );
    },
    patience,
);

async function meaning(text: string): Promise<string> {
    const recipes = lowerFile(await open(text, uri), services);
    return JSON.stringify(recipes, (_key, value: unknown) => (isPlace(value) ? undefined : value));
}

function isPlace(value: unknown): boolean {
    return typeof value === 'object' && value !== null && 'offset' in value && 'uri' in value;
}

test(
    'layout done twice is layout done once, and means the same, in broken texts too',
    async () => {
        await fc.assert(
            fc.asyncProperty(texts, async (text) => {
                const layOut = async (before: string): Promise<string> => {
                    const document = await open(before, uri);
                    const found = await lsp.Formatter!.formatDocument(document, { textDocument, options });
                    return TextDocument.applyEdits(document.textDocument, found as TextEdit[]);
                };
                const once = await layOut(text);
                expect(await layOut(once)).toBe(once);
                expect(await meaning(once)).toBe(await meaning(text));
            }),
            { numRuns: runs },
        );
    },
    patience,
);

test(
    'what a light bulb offers can be done, and breaks no line',
    async () => {
        await fc.assert(
            fc.asyncProperty(texts, share, async (text, at) => {
                const document = await open(text, uri);
                const broken = syntaxFindings(document).length;
                const place = document.textDocument.positionAt(Math.floor(at * text.length));
                for (const { title, edit } of await actionsOf(document, { start: place, end: place })) {
                    const own = edit?.changes?.[uri];
                    if (own === undefined) continue;
                    // Throws where edits overlap.
                    const after = TextDocument.applyEdits(document.textDocument, own);
                    expect(after, title).not.toBe(text);
                    const left = syntaxFindings(await open(after, 'file:///shop/after.kerf')).length;
                    // A line break, a brace or a quote put in can bring lines to light that nobody could see before.
                    if (broken === 0) expect(left, `${title}\n${after}`).toBe(0);
                }
            }),
            { numRuns: runs },
        );
    },
    patience,
);

test(
    'a thing called otherwise and back again is as it was',
    async () => {
        await fc.assert(
            fc.asyncProperty(texts, share, fc.option(share), async (text, at, other) => {
                const document = await open(text, uri);
                const before = textFindings(document, services);
                const names = document.references.flatMap(({ $refNode }) => $refNode ?? []);
                const pick = (part: number) => names[Math.min(names.length - 1, Math.floor(part * names.length))];
                const leaf = pick(at);
                // Where two things have one name already, only one of them is renamed.
                if (leaf === undefined || before.some(({ rule }) => rule === 'duplicate-name')) return;
                // A name that is there already is refused where the two could be mistaken for each other.
                const newName = other === null ? 'quite-new' : pick(other)!.text;
                const there = await renamed(document, document.textDocument.positionAt(leaf.offset), newName);
                if (there === undefined) return;
                const between = await open(there.text, uri);
                const back = await renamed(between, between.textDocument.positionAt(there.moved(leaf.offset)), leaf.text);
                expect(back?.text, `${leaf.text} as ${newName}`).toBe(text);
                expect(textFindings(await open(text, uri), services)).toEqual(before);
            }),
            { numRuns: runs },
        );
    },
    patience,
);

interface Renamed {
    readonly text: string;
    /** Where a place has gone. */
    moved(offset: number): number;
}

async function renamed(document: LangiumDocument, position: Position, newName: string): Promise<Renamed | undefined> {
    const edit = (await refusable(() => lsp.RenameProvider!.rename(document, { textDocument, position, newName }))) as
        | { changes?: Record<string, TextEdit[]> }
        | undefined;
    const own = edit?.changes?.[uri];
    // A run of a recipe in another file renames that too, and nobody writes there here.
    if (own === undefined || Object.keys(edit?.changes ?? {}).length > 1) return undefined;
    const at = (place: Position) => document.textDocument.offsetAt(place);
    return {
        text: TextDocument.applyEdits(document.textDocument, own),
        moved: (offset) =>
            own
                .filter(({ range }) => at(range.start) < offset)
                .reduce((sum, { range, newText }) => sum + newText.length - (at(range.end) - at(range.start)), offset),
    };
}
