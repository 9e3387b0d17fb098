import { showNumber } from '../../shared/quantity/show';
import type { Finding } from '../../shared/recipe/finding';
import { replaceWith, say } from './say';
import type { Stumble } from './stumble';

/** mm */
const inch = 25.4;

/** A word that makers bring along for what is said otherwise here, with ours in its place. */
export function tradeWord({ document, where }: Stumble, image: string, block: string): Finding | undefined {
    if (/^[dlp]pi$/i.test(image)) {
        const [written, count] = /^\w+[ \t]+(\d+(?:\.\d+)?)/.exec(document.textDocument.getText().slice(where.offset)) ?? [];
        const pitch = count !== undefined && Number(count) > 0 ? `pitch ${showNumber(inch / Number(count), 3)} mm` : undefined;
        const message = `The distance of scan lines is \`pitch\`: ${pitch === undefined ? 'an inch is 25.4 mm.' : `${count} to the inch is \`${pitch}\`.`}`;
        return say('syntax', {
            message,
            where,
            ...(pitch === undefined
                ? {}
                : { fixes: [replaceWith({ ...where, length: written!.length }, pitch, `Change to \`${pitch}\``, true)] }),
        });
    }
    if (image === 'score' && block === 'Recipe') {
        return say('syntax', {
            message: 'A scored line is an `engrave` with `scan along outline`: the beam follows the edge alone.',
            where,
            fixes: [replaceWith(where, 'engrave', 'Change to `engrave`', true)],
        });
    }
    return undefined;
}
