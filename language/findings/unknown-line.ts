import type { Finding } from '../../shared/recipe/finding';
import { byNearness, nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import { isWord, startsStatement, type Token } from '../parsing/token';
import { blockPhrase, homesOf, isBlock, lineWords } from '../vocabulary/blocks';
import { oneOf } from '../vocabulary/expected';
import { removal, replaceWith, say } from './say';
import type { Stumble } from './stumble';
import { partedName, tradeWord } from './trade-words';

/** A line that begins with a word the block does not have, or goes on where it should have ended. */
export function unknownLine(stumble: Stumble, actual: Token): Finding {
    const block = stumble.rules.findLast(isBlock) ?? 'File';
    const { where } = stumble;
    const image = actual.image;
    if (isNextGrit(stumble)) {
        const { previous, uri } = stumble;
        const behind = { uri, offset: previous!.startOffset + previous!.image.length, length: 0 };
        return say('syntax', {
            message: phrase`Between \`${previous!.image}\` and \`${image}\` a comma is missing.`,
            where,
            fixes: [replaceWith(behind, ',', phrase`Insert \`,\``, true)],
        });
    }
    if (!startsStatement(actual) && !isNamed(actual)) {
        return say('syntax', {
            message: phrase`\`${image}\` does not belong here.`,
            where,
            fixes: [removal(where, phrase`Remove \`${image}\``)],
        });
    }
    if (!isNamed(actual)) {
        return say('syntax', {
            message: phrase`A line begins with a word, such as ${oneOf(lineWords(block).slice(0, 3))}.`,
            where,
        });
    }
    if (image === 'edition') {
        const message = phrase`\`edition\` stands once, in the first line of a file that says for which edition it is written.`;
        return say('syntax', { message, where });
    }
    if (image === 'without' && block !== 'File') {
        const message = phrase`\`without\` leaves out a line of a recipe’s base: in ${blockPhrase(block)} what does not hold is not written.`;
        return say('syntax', { message, where });
    }
    const homes = isWord(actual) ? homesOf(image) : [];
    if (homes.length > 0) {
        const inside = homes.filter((home) => home !== 'File').slice(0, 3);
        const stands = inside.length === 0 ? phrase`outside of all braces` : phrase`in ${either(inside.map(blockPhrase))}`;
        const subject = block === 'File' ? '' : phrase` does not belong in ${blockPhrase(block)}: it`;
        return say('syntax', { message: phrase`\`${image}\`${subject} stands ${stands}.`, where });
    }
    const trade = tradeWord(stumble, image, block);
    if (trade !== undefined) return trade;
    const meant = nearest(image, beginnings(block));
    if (meant !== undefined) {
        return say('syntax', {
            message: phrase`There is no \`${image}\` in ${blockPhrase(block)}. Did you mean \`${meant}\`?`,
            where,
            fixes: [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
        });
    }
    const parted = partedName(stumble, actual);
    if (parted !== undefined) return parted;
    return say('syntax', { message: phrase`There is no \`${image}\` in ${blockPhrase(block)}. ${canHave(block, image)}`, where });
}

/** `grits 120 180`: the only line of which numbers stand side by side. */
function isNextGrit({ document, previous, actual }: Stumble): boolean {
    if (previous === undefined || actual?.tokenType.name !== 'NUMBER' || startsStatement(actual)) return false;
    const before = document.textDocument.getText().slice(0, actual.startOffset);
    return /\bgrits[ \t\d,]*\d[ \t]+$/.test(before.slice(before.lastIndexOf('\n') + 1));
}

const mostTold = 12;
const someTold = 6;

/** The lines of a block; of many the nearest to what was written, in words and then as they come. */
function canHave(block: string, written: string): string {
    const words = byNearness(written, lineWords(block));
    if (words.length <= mostTold) return phrase`It can have ${oneOf(words)}.`;
    const some = words.slice(0, someTold).map((word) => `\`${word}\``);
    return phrase`It can have ${some.join(', ')} and ${words.length - someTold} other kinds of lines.`;
}

function isNamed(token: Token): boolean {
    return isWord(token) || token.tokenType.name === 'STRAY' || token.tokenType.name === 'ID';
}

/** A two-word property can be mistyped in its first word alone. */
function beginnings(block: string): string[] {
    return lineWords(block).flatMap((words) => [words, words.split(' ')[0]!]);
}

function either(phrases: readonly string[]): string {
    return phrases.length < 2 ? phrases.join('') : phrase`${phrases.slice(0, -1).join(', ')} or ${phrases.at(-1)}`;
}
