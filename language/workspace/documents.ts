import { DefaultLangiumDocuments, type LangiumDocument, type URI } from 'langium';
import { UnknownFile } from './unknown-file';

/** Two who ask for the same file while it is read get the same document. */
export class KerfDocuments extends DefaultLangiumDocuments {
    /** Rejects with `UnknownFile` when the file cannot be read. */
    override async getOrCreateDocument(uri: URI): Promise<LangiumDocument> {
        const known = this.getDocument(uri);
        if (known !== undefined) return known;
        const read = await this.langiumDocumentFactory.fromUri(uri).catch(() => {
            throw new UnknownFile(uri.toString());
        });
        const meanwhile = this.getDocument(uri);
        if (meanwhile !== undefined) return meanwhile;
        this.addDocument(read);
        return read;
    }
}
