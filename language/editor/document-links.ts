import type { LangiumDocument } from 'langium';
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver';
import type { File } from '../generated/ast';
import { pathsIn } from './paths';

/** Paths in quotes can be opened with a click. */
export class KerfDocumentLinks implements DocumentLinkProvider {
    getDocumentLinks(document: LangiumDocument): DocumentLink[] {
        const text = document.textDocument;
        return pathsIn(document.parseResult.value as File).map(({ offset, end, target, kind }) => ({
            range: { start: text.positionAt(offset), end: text.positionAt(end) },
            target: target.toString(),
            tooltip: { art: 'Open the art', recipe: 'Open the file', photo: 'Open the photo' }[kind],
        }));
    }
}
