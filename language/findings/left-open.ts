import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import type { KerfLexingReport } from '../parsing/lexer';
import { replaceWith, say } from './say';

/** A text or a comment that is not closed on its line. The rest of the file is read as if it were. */
export function openFinding({ kind, token }: KerfLexingReport['open'][number], uri: string): Finding {
    const end = token.startOffset + bodyLength(token.image);
    const at = { uri, offset: end, length: 0 };
    if (kind === 'text') {
        return say('syntax', {
            message: phrase`This text is not closed: a " is missing at its end.`,
            where: { uri, offset: token.startOffset, length: 1 },
            fixes: [replaceWith(at, '"', phrase`Close the text`, true)],
        });
    }
    return say('syntax', {
        message: phrase`This comment is not closed: */ is missing. Only this line is taken as a comment.`,
        where: { uri, offset: token.startOffset, length: 2 },
        fixes: [replaceWith(at, ' */', phrase`Close the comment`, true)],
    });
}

/** Up to a brace that was surely not meant as part of the text, without the blanks before it. */
function bodyLength(image: string): number {
    const brace = image.search(/[{}]/);
    return image.slice(0, brace < 0 ? undefined : brace).trimEnd().length;
}
