import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { say } from './say';

/** Broken lines, each said once. */
export function* syntaxFindings(document: LangiumDocument): Iterable<Finding> {
    const uri = document.uri.toString();
    const length = document.textDocument.getText().length;
    for (const error of document.parseResult.lexerErrors) {
        yield say('syntax', { message: error.message, where: { uri, offset: error.offset, length: error.length } });
    }
    for (const error of document.parseResult.parserErrors) {
        const offset = Number.isFinite(error.token.startOffset) ? error.token.startOffset : Math.max(0, length - 1);
        yield say('syntax', { message: error.message, where: { uri, offset, length: Math.max(1, error.token.image.length) } });
    }
}
