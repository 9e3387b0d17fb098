import type { ReferenceDescription } from 'langium';
import { DefaultDocumentHighlightProvider } from 'langium/lsp';
import { DocumentHighlight, DocumentHighlightKind } from 'vscode-languageserver';

/** Every place where the thing under the cursor is meant; the place where it is declared stands out. */
export class KerfHighlights extends DefaultDocumentHighlightProvider {
    protected override createDocumentHighlight(reference: ReferenceDescription): DocumentHighlight {
        // The declaration comes as a reference of the thing to itself.
        const isDeclaration = reference.sourcePath === reference.targetPath;
        const kind = isDeclaration ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
        return DocumentHighlight.create(reference.segment.range, kind);
    }
}
