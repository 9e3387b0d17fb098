import type { LangiumDocument } from 'langium';
import type { Where } from '../../shared/quantity/where';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import type { StructureProblem } from '../parsing/structure';
import { isMadeUp, type Token } from '../parsing/token';
import { removal, replaceWith, say } from './say';

/** A brace that has no partner, or a line break that is missing or stands where none may be. */
export function braceFinding({ kind, token, next, last }: StructureProblem, document: LangiumDocument): Finding {
    const where = placeOf(token, document);
    switch (kind) {
        case 'excess':
            return say('syntax', {
                message:
                    token.image === '{'
                        ? phrase`This { opens nothing: the line before it has no block.`
                        : phrase`This } closes nothing.`,
                where,
                fixes: [removal(where, phrase`Remove this ${token.image}`)],
            });
        case 'early':
            return say('syntax', {
                message: phrase`This } ends the recipe, but more of it follows below.`,
                where,
                fixes: [removal(where, phrase`Remove this }`)],
            });
        case 'torn': {
            const whole = { ...where, length: (token.endOffset ?? 0) + 1 - where.offset };
            const raw = document.textDocument.getText().slice(whole.offset, whole.offset + whole.length);
            return say('syntax', {
                message: phrase`A line break stands in the middle of \`${token.image}\`.`,
                where: { ...where, length: Math.max(1, raw.search(/[\r\n]/)) },
                fixes: [replaceWith(whole, token.image, phrase`Put \`${token.image}\` together`, true)],
            });
        }
        case 'swallowed':
            return say('syntax', {
                message: phrase`This \`${token.image}\` stands in a comment: a line break is missing before it.`,
                where,
                fixes: [replaceWith({ ...where, length: 0 }, '\n', phrase`Begin a new line`, true)],
            });
        case 'unopened':
            return say('syntax', {
                message: phrase`After \`${token.image}\` a { is missing, and the lines that belong to it.`,
                where,
                fixes: [replaceWith(endOf(token, document), ' {', phrase`Insert {`, true)],
            });
        case 'unclosed': {
            const before = next === undefined ? '' : phrase` before \`${next.image}\``;
            const text = `\n${indentOf(token, document)}}`;
            return say('syntax', {
                message: phrase`This { is never closed: a } is missing${before}.`,
                where,
                related:
                    next === undefined
                        ? []
                        : [{ message: phrase`Before this word a } is missing.`, where: placeOf(next, document) }],
                fixes:
                    last === undefined || isMadeUp(last)
                        ? []
                        : [replaceWith(endOf(last, document), text, phrase`Close the block`, true)],
            });
        }
    }
}

function placeOf(token: Token, document: LangiumDocument): Where {
    return { uri: document.uri.toString(), offset: Math.max(0, token.startOffset), length: token.image.length };
}

function endOf(token: Token, document: LangiumDocument): Where {
    return { uri: document.uri.toString(), offset: Math.max(0, token.startOffset) + token.image.length, length: 0 };
}

/** The blanks at the start of the line on which the token stands. */
function indentOf(token: Token, document: LangiumDocument): string {
    const text = document.textDocument;
    const { line } = text.positionAt(Math.max(0, token.startOffset));
    const start = text.offsetAt({ line, character: 0 });
    return /^[ \t]*/.exec(text.getText().slice(start, token.startOffset))?.[0] ?? '';
}
