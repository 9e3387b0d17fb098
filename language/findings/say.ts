import type { Where } from '../../shared/quantity/where';
import type { Finding, Fix } from '../../shared/recipe/finding';
import type { Message } from '../../shared/recipe/phrase';

type Said = Pick<Finding, 'message' | 'where'> & Partial<Finding>;

/** A finding of the text; an error unless said otherwise. */
export function say(rule: string, said: Said): Finding {
    return { severity: 'error', related: [], fixes: [], ...said, rule };
}

export function replaceWith(where: Where, text: string, title: Message, preferred = false): Fix {
    return { title, changes: [{ do: 'replace', where, text }], ...(preferred && { preferred }) };
}

export function removal(where: Where, title: Message): Fix {
    return { title, changes: [{ do: 'remove', where }] };
}
