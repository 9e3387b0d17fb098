import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';

const messages: ReadonlyMap<string, string> = new Map([
    ['text', 'Text is not drawn: turn it into paths, since fonts differ from place to place.'],
    ['script', 'A script is not run: the drawing is read as it stands.'],
    ...['animate', 'animateColor', 'animateMotion', 'animateTransform', 'set'].map((name): [string, string] => [
        name,
        `<${name}> is left out: the drawing is read as it stands before it moves.`,
    ]),
]);

/** Says by name and place that something is not drawn. */
export function tellOther(problems: Problems, { name, attributes, offset }: SvgElement): void {
    const shown = name.slice(0, 40);
    const { href } = attributes;
    if (name === 'image' && href !== undefined && !href.trim().startsWith('#')) {
        problems.add('refused', name, 'A picture inside the drawing is not opened; use it as art of its own.', offset);
    } else {
        const message = messages.get(name) ?? `<${shown}> is not supported and is left out.`;
        problems.add(name === 'text' ? 'text' : 'unsupported', shown, message, offset);
    }
}
