import { blockHeads } from './block-words';
import type { Token } from './token';

/** The last words of a comment that can be the head of a block, with words before them: the first group. */
const head = new RegExp(String.raw`^(//.*\S.*)\b(?:${blockHeads.join('|')})[ \t]+[\w"#-](?:[^{}"]|"[^"]*")*\{[ \t]*$`);

/**
 * Where the heads of blocks begin that a line comment has swallowed, since the line break before them is gone. Looked
 * for only where more braces close than open; a head right behind the slashes was taken out on purpose.
 */
export function swallowedHeads(tokens: readonly Token[], hidden: readonly Token[]): { comment: Token; offset: number }[] {
    const count = (image: string) => tokens.filter((token) => token.image === image).length;
    const surplus = count('}') - count('{');
    if (surplus <= 0) return [];
    return hidden
        .flatMap((comment) => {
            const before = comment.image.startsWith('//') ? head.exec(comment.image)?.[1] : undefined;
            return before === undefined ? [] : [{ comment, offset: comment.startOffset + before.length }];
        })
        .slice(0, surplus);
}
