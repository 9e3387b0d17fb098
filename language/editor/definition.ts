import type { LangiumDocument } from 'langium';
import { DefaultDefinitionProvider } from 'langium/lsp';
import type { DefinitionParams, LocationLink } from 'vscode-languageserver';
import type { File } from '../generated/ast';
import { pathsIn } from './paths';

const start = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** From a name to its declaration, in other files and in the built-in stock too; from a path to the file. */
export class KerfDefinition extends DefaultDefinitionProvider {
    override async getDefinition(document: LangiumDocument, params: DefinitionParams): Promise<LocationLink[] | undefined> {
        const offset = document.textDocument.offsetAt(params.position);
        const path = pathsIn(document.parseResult.value as File).find((each) => each.offset <= offset && offset <= each.end);
        if (path === undefined) return super.getDefinition(document, params);
        const text = document.textDocument;
        const originSelectionRange = { start: text.positionAt(path.offset), end: text.positionAt(path.end) };
        return [{ targetUri: path.target.toString(), targetRange: start, targetSelectionRange: start, originSelectionRange }];
    }
}
