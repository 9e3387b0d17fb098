import { showNumber } from '../../shared/quantity/show';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { replaceWith, say } from './say';
import type { Stumble } from './stumble';

/** mm */
const inch = 25.4;

/** A word that makers bring along for what is said otherwise here, with ours in its place. */
export function tradeWord({ document, where }: Stumble, image: string, block: string): Finding | undefined {
    if (/^[dlp]pi$/i.test(image)) {
        const [written, count] = /^\w+[ \t]+(\d+(?:\.\d+)?)/.exec(document.textDocument.getText().slice(where.offset)) ?? [];
        const pitch =
            count !== undefined && Number(count) > 0 ? phrase`pitch ${showNumber(inch / Number(count), 3)} mm` : undefined;
        const message = phrase`The distance of scan lines is \`pitch\`: ${pitch === undefined ? phrase`an inch is 25.4 mm.` : phrase`${count} to the inch is \`${pitch}\`.`}`;
        return say('syntax', {
            message,
            where,
            ...(pitch === undefined
                ? {}
                : { fixes: [replaceWith({ ...where, length: written!.length }, pitch, phrase`Change to \`${pitch}\``, true)] }),
        });
    }
    if (image === 'score' && block === 'Recipe') {
        return say('syntax', {
            message: phrase`A scored line is an \`engrave\` with \`scan along outline\`: the beam follows the edge alone.`,
            where,
            fixes: [replaceWith(where, 'engrave', phrase`Change to \`engrave\``, true)],
        });
    }
    return undefined;
}
