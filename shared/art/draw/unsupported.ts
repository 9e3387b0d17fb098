import { type Message, phrase } from '../../recipe/phrase';
import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';

function messageOf(name: string): Message | undefined {
    if (name === 'text') return phrase`Text is not drawn: turn it into paths, since fonts differ from place to place.`;
    if (name === 'script') return phrase`A script is not run: the drawing is read as it stands.`;
    if (name === 'set' || /^animate(Color|Motion|Transform)?$/.test(name))
        return phrase`<${name}> is left out: the drawing is read as it stands before it moves.`;
    return undefined;
}

/** Says by name and place that something is not drawn. */
export function tellOther(problems: Problems, { name, attributes, offset }: SvgElement): void {
    const shown = name.slice(0, 40);
    const { href } = attributes;
    if (name === 'image' && href !== undefined && !href.trim().startsWith('#')) {
        problems.add('refused', name, phrase`A picture inside the drawing is not opened; use it as art of its own.`, offset);
    } else {
        const message = messageOf(name) ?? phrase`<${shown}> is not supported and is left out.`;
        problems.add(name === 'text' ? 'text' : 'unsupported', shown, message, offset);
    }
}
