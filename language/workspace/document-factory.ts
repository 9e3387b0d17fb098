import { DefaultLangiumDocumentFactory, type LangiumDocument } from 'langium';
import type { CancellationToken } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';

/** A file that has gone since it was read counts as empty until its removal is reported; a build never fails for it. */
export class KerfDocumentFactory extends DefaultLangiumDocumentFactory {
    protected override async getUpdatedText(
        document: LangiumDocument,
        open: TextDocument | undefined,
        token: CancellationToken,
    ): Promise<string> {
        try {
            return await super.getUpdatedText(document, open, token);
        } catch {
            return '';
        }
    }
}
