import type { TextDocumentContentProvider } from 'langium/lsp';
import { ErrorCodes, ResponseError, type TextDocumentContentParams, type TextDocumentContentResult } from 'vscode-languageserver';
import { builtInScheme, builtInText } from '../built-in';
import type { OutsideServices } from '../outside';

/** Rules' pages as texts without a file: `kerfbook-page:/not-mirrored.md`. */
export const pageScheme = 'kerfbook-page';

/** What editors show and no disk holds: the built-in stock and the rules' pages. */
export class VirtualTexts implements TextDocumentContentProvider {
    readonly schemes = [builtInScheme, pageScheme];

    constructor(private readonly outside: () => OutsideServices) {}

    async provideTextDocumentContent({ uri }: TextDocumentContentParams): Promise<TextDocumentContentResult> {
        const [, rule] = uri.match(/^kerfbook-page:\/*([a-z-]+)\.md$/) ?? [];
        const text = builtInText(uri) ?? (rule === undefined ? undefined : await this.outside().rulePage(rule));
        // A text has to be answered, and an empty one would say that there is such a thing.
        if (text === undefined) throw new ResponseError(ErrorCodes.InvalidParams, `There is no text at ${uri}.`);
        return { text };
    }
}
