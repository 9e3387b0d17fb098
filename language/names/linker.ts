import { DefaultLinker, interruptAndCheck, type LangiumDocument } from 'langium';
import type { CancellationToken } from 'vscode-languageserver';
import { treeOf } from './tree';

/** So many names are looked up between two looks at whether the result is still wanted. */
const atOnce = 64;

/** Resolves the names of a document in one pass over its flat tree. */
export class KerfLinker extends DefaultLinker {
    override async link(document: LangiumDocument, token?: CancellationToken): Promise<void> {
        const { references } = treeOf(document.parseResult.value);
        for (let index = 0; index < references.length; index++) {
            if (token !== undefined && index % atOnce === 0) await interruptAndCheck(token);
            this.doLink(references[index]!, document);
        }
    }
}
