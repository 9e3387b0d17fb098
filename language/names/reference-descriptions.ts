import { DefaultReferenceDescriptionProvider, type LangiumDocument, type ReferenceDescription } from 'langium';
import { treeOf } from './tree';

/** What the index knows of a document's names, from its flat tree. */
export class KerfReferenceDescriptions extends DefaultReferenceDescriptionProvider {
    override async createDescriptions(document: LangiumDocument): Promise<ReferenceDescription[]> {
        const { references } = treeOf(document.parseResult.value);
        return references.flatMap((info) => (info.reference.error ? [] : this.createInfoDescriptions(info)));
    }
}
