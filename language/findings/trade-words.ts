import { showNumber } from '../../shared/quantity/show';
import type { Where } from '../../shared/quantity/where';
import type { Finding, Fix } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import type { Token } from '../parsing/token';
import { oursFor } from './likely-names';
import { replaceWith, say } from './say';
import type { Stumble } from './stumble';

/** mm */
const inch = 25.4;

/** A word that makers bring along for what is said otherwise here, with ours in its place. */
export function tradeWord({ document, where }: Stumble, image: string, block: string): Finding | undefined {
    const line = document.textDocument.getText().slice(where.offset);
    const perInch = /^(?:[dlp]pi|lines(?:[ \t]+(?:per|to the|an)[ \t]+|[ \t]*\/[ \t]*)inch)\b(?:[ \t]+(\d+(?:\.\d+)?))?/i.exec(
        line,
    );
    if (perInch !== null) {
        const [written, count] = perInch;
        const pitch =
            count !== undefined && Number(count) > 0 ? phrase`pitch ${showNumber(inch / Number(count), 3)} mm` : undefined;
        const message = phrase`The distance of scan lines is \`pitch\`: ${pitch === undefined ? phrase`an inch is 25.4 mm.` : phrase`${count} to the inch is \`${pitch}\`.`}`;
        return say('syntax', { message, where, fixes: pitch === undefined ? [] : [instead(where, written, pitch)] });
    }
    if (image === 'score' && (block === 'Recipe' || block === 'Engrave' || block === 'Cut')) {
        const message = phrase`A scored line is an \`engrave\` with \`scan along outline\`: the beam follows the edge alone.`;
        const fix = block === 'Recipe' ? instead(where, image, 'engrave') : instead(where, restOf(line), 'scan along outline');
        return say('syntax', { message, where, fixes: block === 'Cut' ? [] : [fix] });
    }
    if (block === 'Engrave' && /^cross-?hatch/i.test(line)) {
        const message = phrase`The lines of one step all run one way. Lines that cross are two steps on the same art, one with \`scan across grain\` and one with \`scan along grain\`: their depths add up.`;
        return say('syntax', { message, where, fixes: [instead(where, restOf(line), 'scan across grain')] });
    }
    if (block === 'Engrave' && /^hatch(?:ing)?\b/i.test(line)) {
        const message = phrase`The distance of scan lines is \`pitch\`, and \`scan\` says which way they run.`;
        return say('syntax', { message, where, fixes: [instead(where, image, 'pitch')] });
    }
    return undefined;
}

/** `with danish oil`: a name that goes on behind a space. Nothing where the next word is no part of a name. */
export function partedName({ document, previous, uri }: Stumble, actual: Token): Finding | undefined {
    if (previous === undefined || !/^[A-Za-z][\w-]*$/.test(actual.image)) return undefined;
    const text = document.textDocument.getText();
    const [before] = /\b(?:with|of)[ \t]+[A-Za-z][\w-]*[ \t]+$/.exec(text.slice(0, actual.startOffset)) ?? [];
    if (before === undefined) return undefined;
    const [more] = /^[\w-]+(?:[ \t]+[A-Za-z][\w-]*)*/.exec(text.slice(actual.startOffset))!;
    const offset = previous.startOffset;
    const name = text
        .slice(offset, actual.startOffset + more.length)
        .replaceAll(/[ \t]+/g, '-')
        .toLowerCase();
    const where = { uri, offset, length: actual.startOffset + more.length - offset };
    const [ours] = oursFor(name);
    const kind = ours === undefined ? '' : phrase` The built-in stock has its kind as \`${ours}\`.`;
    const fixes = [ours ?? name].map((each) => instead(where, text.slice(offset, offset + where.length), each));
    return say('syntax', { message: phrase`A name is one word: \`${name}\`.${kind}`, where, fixes });
}

function instead(where: Where, written: string, ours: string): Fix {
    return replaceWith({ ...where, length: written.length }, ours, phrase`Change to \`${ours}\``, true);
}

/** What is left of a line, without a comment or the end of its block. */
function restOf(line: string): string {
    return /^[^\r\n{}/]*/.exec(line)![0].trimEnd();
}
