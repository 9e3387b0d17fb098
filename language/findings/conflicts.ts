import type { Finding, Fix } from '../../shared/recipe/finding';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { Conflict } from '../parsing/conflicts';
import { replaceWith, say } from './say';

/** What git could not merge: one finding, with the three ways to settle it. */
export function conflictFinding({ offset, end, marker, first, second }: Conflict, uri: string): Finding {
    const whole = { uri, offset, length: end - offset };
    const named = first.name !== '' && second.name !== '' ? phrase`, \`${first.name}\` and \`${second.name}\`` : '';
    const keep = (title: Message, text: string): Fix => replaceWith(whole, text, title);
    return say('syntax', {
        message: phrase`Two sides of a merge stand here${named}: keep the first, the second or both. Nothing between the markers is read until then.`,
        where: { uri, offset, length: marker.length },
        fixes: [
            keep(phrase`Keep the first${of(first.name)}`, first.text),
            keep(phrase`Keep the second${of(second.name)}`, second.text),
            keep(phrase`Keep both, the first before the second`, first.text + second.text),
        ],
    });
}

function of(name: string): string {
    return name === '' ? '' : ` (${name})`;
}
