import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';

/** Says by name and place that something is not drawn. */
export function tellOther(problems: Problems, { name, attributes, offset }: SvgElement): void {
    const shown = name.slice(0, 40);
    switch (name) {
        case 'text':
            return problems.add(
                'text',
                name,
                'Text is not drawn: turn it into paths, since fonts differ from place to place.',
                offset,
            );
        case 'image':
            if (attributes.href !== undefined && !attributes.href.trim().startsWith('#')) {
                problems.add('refused', name, 'A picture inside the drawing is not opened.', offset);
                return;
            }
            break;
        case 'animate':
        case 'animateColor':
        case 'animateMotion':
        case 'animateTransform':
        case 'set':
            return problems.add(
                'unsupported',
                name,
                `<${name}> is left out: the drawing is read as it stands before it moves.`,
                offset,
            );
        case 'script':
            problems.add('unsupported', name, 'A script is not run: the drawing is read as it stands.', offset);
            return;
    }
    problems.add('unsupported', shown, `<${shown}> is not supported and is left out.`, offset);
}
