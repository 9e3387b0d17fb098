import { isName } from '../../shared/recipe/name';
import type { KerfServices } from '../services';

/** Letters; a longer one is no help to anybody. */
const longest = 40;

/**
 * A name of the language that is as near to these words as can be, and none of those that are taken or that are
 * words of the language.
 * @param fallback what it is called when nothing of the words can stand in a name
 */
export function freeName(words: string, taken: ReadonlySet<string>, fallback: string, services: KerfServices): string {
    const near = [...words.normalize('NFC').toLowerCase()]
        .map((letter) => (isName(`a${letter}`) ? letter : '-'))
        .slice(0, longest);
    const trimmed = near.join('').replaceAll(/-{2,}/g, '-').replaceAll(/^-|-$/g, '');
    const name = isName(trimmed) ? trimmed : isName(`${fallback}-${trimmed}`) ? `${fallback}-${trimmed}` : fallback;
    const base = name.replace(/-$/, '');
    const isFree = (candidate: string): boolean =>
        !taken.has(candidate) && !Object.hasOwn(services.parser.Lexer.definition, candidate);
    if (isFree(base)) return base;
    for (let count = 2; ; count += 1) {
        const next = `${base}-${count}`;
        if (isFree(next)) return next;
    }
}
