import { DefaultTokenBuilder, type Grammar, type GrammarAST, RegExpUtils, type TokenBuilderOptions } from 'langium';
import { nameLike } from './token';

type Token = ReturnType<DefaultTokenBuilder['buildTerminalTokens']>[number];

export const strayWord = 'STRAY';
const mark = 'MARK';
export const openString = 'OPEN_STRING';
export const openComment = 'OPEN_COMMENT';
export const oddCharacter = 'ODD';

// Written as ranges, since the lexer cannot sort a complement such as \S by first character.
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are just what has to be caught.
const anyCharacter = /[\uD800-\uDBFF][\uDC00-\uDFFF]|[!-\uFFFF\u0000-\u0008\u000E-\u001F]/;

/** Tokens that no line of the grammar takes, so that what is broken stays on its own line. */
export class KerfTokenBuilder extends DefaultTokenBuilder {
    /** What a word has to look like to begin a terminal. */
    private readonly begun = new Map<Token, RegExp>();

    override buildTokens(grammar: Grammar, options?: TokenBuilderOptions): Token[] {
        const tokens = super.buildTokens(grammar, options) as Token[];
        const name = tokens.find((token) => token.name === 'ID')!;
        // A word where a name can stand is both: the parser takes it as the word or as the name, whichever it wants there.
        tokens.sort((a, b) => Number(b.name === mark) - Number(a.name === mark)); // before whatever a mark may read like
        const words = tokens.filter((token) => /^[a-z]/.test(token.name));
        tokens.push(...words.map((word) => ({ ...never(nameLike(word.name)), CATEGORIES: [word, name] })));
        // A text or a comment that is never closed ends with its line, a text before the brace that ends its line.
        tokens.push({ name: openString, PATTERN: /"(?:\\.|(?! ?\{[ \t]*[\n\r])[^"\\\n\r])*/ });
        tokens.push({ name: openComment, PATTERN: /\/\*[^\n\r]*/, GROUP: 'hidden' });
        // Whatever else is typed breaks its line in place, instead of being passed over.
        tokens.push({ name: oddCharacter, PATTERN: anyCharacter });
        return tokens;
    }

    /** As it is in Langium; but a terminal is taken apart once, not once for each of the words: that was a third of making the lexer. */
    protected override findLongerAlt(keyword: GrammarAST.Keyword, terminals: Token[]): Token[] {
        return terminals.filter((terminal) => {
            if (!(terminal.PATTERN instanceof RegExp)) return false;
            const known = this.begun.get(terminal) ?? RegExpUtils.partialRegExp(`^${terminal.PATTERN.source}$`);
            this.begun.set(terminal, known);
            return (known.exec(keyword.value)?.[0].length ?? 0) > 0;
        });
    }

    protected override buildTerminalToken(terminal: GrammarAST.TerminalRule): Token {
        if (terminal.name === strayWord) return never(strayWord);
        if (terminal.name !== mark) return super.buildTerminalToken(terminal);
        return { name: mark, PATTERN: markOfPlan, LINE_BREAKS: false, START_CHARS_HINT: [...'0123456789abcdef'] };
    }

    protected override buildKeywordToken(keyword: GrammarAST.Keyword, terminals: Token[], ignoreCase: boolean): Token {
        const token = super.buildKeywordToken(keyword, terminals, ignoreCase);
        if (keyword.value !== 'x') return token;
        const { LONGER_ALT: _word, ...plain } = token;
        return { ...plain, PATTERN: times, LINE_BREAKS: false, START_CHARS_HINT: ['x', '×'] };
    }
}

/** A kind of token that no text is read as: the lexer makes others into it. */
function never(name: string): Token {
    return { name, PATTERN: () => null, LINE_BREAKS: false, START_CHARS_HINT: ['\u0000'] };
}

type Before = readonly { image: string; tokenType: { name: string }; startLine?: number; endLine?: number; endOffset?: number }[];

/**
 * What stands behind `of plan`, also in a run on one line; `pocket of plan 100000 mW` names a board: inside a line a power may follow it.
 */
function markOfPlan(text: string, offset: number, before: Before): [string] | null {
    const [ahead, first, second] = [before.at(-3), before.at(-2), before.at(-1)];
    if (first?.image !== 'of' || second?.image !== 'plan') return null;
    const begins = ahead === undefined || /^[{}]$/.test(ahead.image) || ahead.endLine !== first.startLine;
    const digits = begins ? /[0-9a-f]{6,64}(?![\w-])/y : /[0-9a-f]{6,64}(?![\w-]|\.\d|\s*(?:%|[mk]?W\b))/y;
    digits.lastIndex = offset;
    const found = digits.exec(text);
    return found && [found[0]];
}

/** `x` between two numbers, also in `300x200`; anywhere else `x2` is a name like any other. */
function times(text: string, offset: number, before: { tokenType: { name: string }; endOffset?: number }[]): [string] | null {
    if (text[offset] === '×') return ['×'];
    const last = before.at(-1);
    // `at 400 mm/s x3`: behind a unit that is no name, with nothing but the number in the word.
    if (/^(?:UNIT|%)$/.test(last?.tokenType.name ?? '')) {
        const passes = /x(?=\d+(?![\w-]))/y;
        passes.lastIndex = offset;
        if (passes.test(text)) return ['x'];
    }
    const behindNumber = /^(?:NUMBER|FRACTION)$/.test(last?.tokenType.name ?? '') && last?.endOffset === offset - 1;
    const ends = behindNumber ? /x(?![A-Za-z_-])/y : /x(?![\w-])/y;
    ends.lastIndex = offset;
    return ends.test(text) ? ['x'] : null;
}
