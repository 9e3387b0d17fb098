import type { LangiumDocument } from 'langium';
import type { Position } from 'vscode-languageserver';
import { open } from './services';

/** A document with the cursor where `<|>` stood in its text. */
export async function openAt(
    marked: string,
    uri?: string,
): Promise<{ document: LangiumDocument; position: Position; at: { textDocument: { uri: string }; position: Position } }> {
    const offset = marked.indexOf('<|>');
    const document = await open(marked.replace('<|>', ''), uri);
    const position = document.textDocument.positionAt(offset);
    return { document, position, at: { textDocument: { uri: document.uri.toString() }, position } };
}

/** The text that a range covers. */
export function textIn(document: LangiumDocument, range: { start: Position; end: Position } | undefined): string {
    return range === undefined ? '' : document.textDocument.getText(range);
}
