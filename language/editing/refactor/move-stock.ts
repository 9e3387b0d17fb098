import { AstUtils, isReference, type LangiumDocument, type URI, UriUtils } from 'langium';
import { CodeActionKind } from 'vscode-languageserver';
import { phrase } from '../../../shared/recipe/phrase';
import { isBuiltIn } from '../../built-in';
import { type Entry, isFile, isRecipe } from '../../generated/ast';
import { whereOf } from '../../lowering/places';
import { Layout } from '../layout';
import { editsOf, type SpanEdit } from '../text-edits';
import type { Refactor, RefactorPlace } from './refactor';

const workshopFile = 'workshop.kerf';

/** Stock that stands beside a recipe moves, with the comment above it, to a file that other recipes can use as well. */
export function moveStock(place: RefactorPlace): Refactor[] {
    const { document, node, offset, services } = place;
    const file = document.parseResult.value;
    const entry = isFile(file)
        ? file.entries.find(({ $cstNode }) => $cstNode && $cstNode.offset <= offset && offset <= $cstNode.end)
        : undefined;
    if (!isFile(file) || entry === undefined || isRecipe(entry) || node === file || isBuiltIn(document.uri.toString())) return [];
    const used = file.uses.flatMap((use) => {
        const uri = services.names.UsedFiles.of(document).find(
            ({ through }) => through.length === 1 && through[0] === use,
        )?.document;
        return uri === undefined || isBuiltIn(uri.uri.toString()) ? [] : [uri];
    });
    if (used.length > 0) return used.flatMap((target) => intoFile(entry, target, place) ?? []);
    const uri = sibling(document);
    if (uri === undefined || uri.toString() === document.uri.toString()) return [];
    const there = services.shared.workspace.LangiumDocuments.getDocument(uri);
    const moved = there === undefined ? intoNewFile(entry, uri, place) : intoFile(entry, there, place);
    return moved === undefined ? [] : [{ ...moved, edits: withUse(moved.edits, document) }];
}

function sibling({ uri }: LangiumDocument): URI | undefined {
    try {
        return UriUtils.joinPath(UriUtils.dirname(uri), workshopFile);
    } catch {
        return undefined; // an untitled text lies nowhere
    }
}

function intoFile(entry: Entry, target: LangiumDocument, place: RefactorPlace): Refactor | undefined {
    const { document, services } = place;
    const inSight = new Set([target, ...services.names.UsedFiles.of(target).map((used) => used.document)]);
    if (!namesOf(entry, document).every((home) => inSight.has(home) || isBuiltIn(home.uri.toString()))) return undefined;
    const text = target.textDocument.getText();
    const { lineBreak } = new Layout(text);
    const gap = text.trim() === '' ? '' : text.endsWith('\n') ? lineBreak : lineBreak.repeat(2);
    const added = { offset: text.length, length: 0, text: `${gap}${wordsOf(entry, document, lineBreak)}${lineBreak}` };
    return {
        title: phrase`Move it to ${UriUtils.basename(target.uri)}`,
        kind: CodeActionKind.RefactorMove,
        edits: new Map([
            [target.uri.toString(), [added]],
            [document.uri.toString(), removalOf(entry, document)],
        ]),
    };
}

function intoNewFile(entry: Entry, uri: URI, { document, createsFiles }: RefactorPlace): Refactor | undefined {
    const isAlone = namesOf(entry, document).every((home) => isBuiltIn(home.uri.toString()));
    if (!createsFiles || !isAlone) return undefined;
    return {
        title: phrase`Move it to a new ${workshopFile}`,
        kind: CodeActionKind.RefactorMove,
        files: new Map([[uri.toString(), `${wordsOf(entry, document, '\n')}\n`]]),
        edits: new Map([[document.uri.toString(), removalOf(entry, document)]]),
    };
}

function withUse(edits: Refactor['edits'], document: LangiumDocument): Refactor['edits'] {
    const { lineBreak } = new Layout(document.textDocument.getText());
    const uri = document.uri.toString();
    const use = { offset: 0, length: 0, text: `use "${workshopFile}"${lineBreak}${lineBreak}` };
    return new Map(edits).set(uri, [use, ...(edits.get(uri) ?? [])]);
}

/** The files that declare what the entry names. */
function namesOf(entry: Entry, document: LangiumDocument): LangiumDocument[] {
    const own = document.references.filter(
        ({ $refNode }) => $refNode && AstUtils.hasContainerOfType($refNode.astNode, (each) => each === entry),
    );
    return own.flatMap((reference) => (isReference(reference) && reference.ref ? [AstUtils.getDocument(reference.ref)] : []));
}

/** The entry as it is written, with the lines of comment right above it. */
function wordsOf(entry: Entry, document: LangiumDocument, lineBreak: string): string {
    const text = document.textDocument.getText();
    const { offset, length } = whereOf(entry);
    return text.slice(withComment(offset, text), offset + length).replaceAll(/\r?\n/g, lineBreak);
}

function removalOf(entry: Entry, document: LangiumDocument): SpanEdit[] {
    const text = document.textDocument.getText();
    const where = whereOf(entry);
    const start = withComment(where.offset, text);
    const span = { ...where, offset: start, length: where.offset + where.length - start };
    return editsOf({ do: 'remove', where: span }, text).map((edit) => {
        // The empty line behind it goes too.
        const after = /^[ \t]*\r?\n/.exec(text.slice(edit.offset + edit.length))?.[0].length ?? 0;
        return { ...edit, length: edit.length + after };
    });
}

function withComment(offset: number, text: string): number {
    const layout = new Layout(text);
    let start = offset;
    for (let line = layout.lineStart(offset); line > 0; ) {
        line = layout.lineStart(line - 1);
        if (!/^[ \t]*\/\//.test(text.slice(line, layout.lineEnd(line)))) break;
        start = line;
    }
    return layout.standsAlone(offset, offset) || start < offset ? start : offset;
}
