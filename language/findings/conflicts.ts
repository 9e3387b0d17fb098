import type { Finding, Fix } from '../../shared/recipe/finding';
import type { Conflict } from '../parsing/conflicts';
import { replaceWith, say } from './say';

/** What git could not merge: one finding, with the three ways to settle it. */
export function conflictFinding({ offset, end, marker, first, second }: Conflict, uri: string): Finding {
    const whole = { uri, offset, length: end - offset };
    const named = first.name !== '' && second.name !== '' ? `, \`${first.name}\` and \`${second.name}\`` : '';
    const keep = (title: string, text: string): Fix => replaceWith(whole, text, title);
    return say('syntax', {
        message: `Two sides of a merge stand here${named}: keep the first, the second or both. Nothing between the markers is read until then.`,
        where: { uri, offset, length: marker.length },
        fixes: [
            keep(`Keep the first${of(first.name)}`, first.text),
            keep(`Keep the second${of(second.name)}`, second.text),
            keep('Keep both, the first before the second', first.text + second.text),
        ],
    });
}

function of(name: string): string {
    return name === '' ? '' : ` (${name})`;
}
