import type { LangiumDocument, ParseResult } from 'langium';
import type { Where } from '../../shared/quantity/where';
import type { Finding, Fix } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import { expectedNames } from '../parsing/error-names';
import { isMadeUp, startsStatement, type Token } from '../parsing/token';
import { oddCharacter } from '../parsing/token-builder';
import { describeExpected } from '../vocabulary/expected';
import { joiningWords } from '../vocabulary/joints';
import { oddCharacterOf } from './characters';
import { removal, replaceWith, say } from './say';
import type { Stumble } from './stumble';
import { unknownLine } from './unknown-line';

type ParserError = ParseResult['parserErrors'][number];

/** A line that cannot be read, marked at the first word that does not fit, or at the last before something is missing. */
export function brokenLine(error: ParserError, document: LangiumDocument): Finding {
    const stumble = stumbleOf(error, document);
    const { actual, previous } = stumble;
    if (actual?.tokenType.name === oddCharacter) return oddFinding(stumble, actual);
    const comma = decimalComma(stumble);
    if (comma !== undefined) return comma;
    const atLine = stumble.expected.includes('}') || stumble.expected.includes('EOF');
    if (actual !== undefined && atLine) return unknownLine(stumble, actual);
    const wanted = describeExpected(stumble.expected, stumble.rules, previous?.image ?? '');
    const after = previous === undefined || previous.image === '' ? 'Here' : phrase`After \`${previous.image}\``;
    const not = actual === undefined ? '' : phrase`, not \`${actual.image}\``;
    const word = wordMeant(stumble);
    if (word !== undefined) {
        const message = phrase`${after} comes ${word.isExpected ? wanted : `\`${word.meant}\``}${not}.`;
        const fix = replaceWith(stumble.where, word.meant, phrase`Change to \`${word.meant}\``, true);
        return say('syntax', { message, where: stumble.where, fixes: [fix] });
    }
    return say('syntax', { message: phrase`${after} comes ${wanted}${not}.`, where: stumble.where, fixes: insertion(stumble) });
}

function stumbleOf(error: ParserError, document: LangiumDocument): Stumble {
    const uri = document.uri.toString();
    const before = (error as { previousToken?: Token }).previousToken;
    const previous = before === undefined || isMadeUp(before) ? undefined : before;
    const lineEnds = isMadeUp(error.token) || (previous !== undefined && startsStatement(error.token) && !isBrace(previous));
    const rules = error.context.ruleStack.map((rule) => rule.replace('\u200B', ''));
    const expected = expectedNames(error.message);
    const atLine = expected.includes('}') || expected.includes('EOF');
    const actual = isMadeUp(error.token) || (lineEnds && !atLine) ? undefined : error.token;
    const marked = actual ?? previous;
    const where =
        marked === undefined
            ? { uri, offset: 0, length: 0 }
            : { uri, offset: Math.max(0, marked.startOffset), length: marked.image.length };
    return { uri, document, expected, rules, previous, actual, where };
}

/** The word of the language that was mistyped: one that has to come here, or one that may come before the block. */
function wordMeant({ expected, rules, actual }: Stumble): { meant: string; isExpected: boolean } | undefined {
    if (actual?.tokenType.name !== 'ID') return undefined;
    const meant = nearest(actual.image, expected.filter(isPlainWord));
    if (meant !== undefined) return { meant, isExpected: true };
    const joining = nearest(actual.image, joiningWords(rules.at(-1) ?? ''));
    return joining === undefined ? undefined : { meant: joining, isExpected: false };
}

function isPlainWord(name: string): boolean {
    return /^[a-z]+$/.test(name);
}

function isBrace(token: Token): boolean {
    return token.image === '{' || token.image === '}';
}

/** One word of the language that is missing can be put in. */
function insertion({ expected, actual, previous, uri }: Stumble): Fix[] {
    const [word, ...others] = expected;
    if (word === undefined || others.length > 0 || !/^(?:[a-z]+|[,:{])$/.test(word) || previous === undefined) return [];
    const end = previous.startOffset + previous.image.length;
    const text = word === ',' ? ',' : ` ${word}`;
    const fix = replaceWith({ uri, offset: end, length: 0 }, text, phrase`Insert \`${word}\``, actual !== undefined);
    return [fix];
}

function oddFinding({ where }: Stumble, actual: Token): Finding {
    const { message, text } = oddCharacterOf(actual.image);
    const fix =
        text === undefined ? [] : [text === '' ? removal(where, phrase`Remove \`${actual.image}\``) : writeInstead(where, text)];
    return say('syntax', { message, where, fixes: fix });
}

function writeInstead(where: Where, text: string): Fix {
    return replaceWith(where, text, phrase`Write \`${text.trim()}\``, true);
}

/** `0,5 mm`: a comma where decimals have a point. */
function decimalComma({ document, uri, actual, previous }: Stumble): Finding | undefined {
    if (actual?.image !== ',' || previous === undefined) return undefined;
    const text = document.textDocument.getText();
    const number = /^[+-]?\d+,\d+/.exec(text.slice(previous.startOffset, actual.startOffset + 20))?.[0];
    if (number === undefined) return undefined;
    const where = { uri, offset: previous.startOffset, length: number.length };
    const meant = number.replace(',', '.');
    return say('syntax', {
        message: phrase`Decimals are written with a point: \`${meant}\`.`,
        where,
        fixes: [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
    });
}
