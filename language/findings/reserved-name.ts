import type { Finding } from '../../shared/recipe/finding';
import type { Token } from '../parsing/token';
import { replaceWith, say } from './say';
import type { Stumble } from './stumble';

/** A word of the language where a name is wanted. The parser has taken it as the name, so that the line keeps its meaning. */
export function reservedName({ where }: Stumble, actual: Token): Finding {
    const better = `${actual.image}-1`;
    return say('reserved-name', {
        message: `\`${actual.image}\` is a word of the language and cannot be a name.`,
        where,
        fixes: [replaceWith(where, better, `Call it \`${better}\``)],
    });
}
