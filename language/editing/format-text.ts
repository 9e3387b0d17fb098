import { startsStatement, type Token } from '../parsing/token';

/** What the formatter has to know of a text beyond its tokens. */
export interface FormatInput {
    readonly text: string;
    /** All tokens and comments of the text, in order. */
    readonly tokens: readonly Token[];
    /** Offsets at which a statement begins behind another one on its line. */
    readonly statements: ReadonlySet<number>;
    /** Where braces do not pair, indentation is all that tells where a block ends: it is kept. */
    readonly bracesPair: boolean;
    /** Lines, from 0, that cannot be read: nothing inside them is moved. */
    readonly broken: ReadonlySet<number>;
    /** One step of indentation. */
    readonly indent: string;
    /** Whether a word that begins a line only goes on with the statement before. */
    readonly goesOn: (token: Token) => boolean;
}

/** A token, with the blanks that belong before it. */
export interface Laid {
    readonly token: Token;
    /** The gap before it, as it is written. */
    readonly from: number;
    readonly old: string;
    readonly blanks: string;
    /** In so many blocks it stands; a closing brace in those around its own. */
    readonly depth: number;
}

/**
 * The tokens of a text with the blanks of a well laid out one. Only blanks between tokens change, lines are never joined, and at
 * most one empty line is kept; so a comment can swallow nothing, and doing it twice does no more than doing it once.
 */
export function layOut(input: FormatInput): Laid[] {
    const { text, tokens } = input;
    const lineBreak = lineBreakOf(text);
    const laid: Laid[] = [];
    let depth = 0;
    let previous: Token | undefined;
    for (const token of tokens) {
        const from = previous === undefined ? 0 : endOf(previous);
        const old = text.slice(from, token.startOffset);
        const breaks = previous === undefined ? 0 : old.split('\n').length - 1;
        if (token.image === '}') depth = Math.max(0, depth - 1);
        const blanks =
            breaks > 0 || previous === undefined
                ? lineBreak.repeat(linesBetween(previous, token, breaks)) + indentOf(input, previous, token, depth, old)
                : between(input, previous, token, old);
        laid.push({ token, from, old, blanks, depth });
        if (token.image === '{') depth++;
        previous = token;
    }
    return laid;
}

export function lineBreakOf(text: string): string {
    return text.includes('\r\n') ? '\r\n' : '\n';
}

export function endOf(token: Token): number {
    return token.startOffset + token.image.length;
}

function linesBetween(previous: Token | undefined, token: Token, breaks: number): number {
    const besideBrace = previous === undefined || previous.image === '{' || token.image === '}';
    return besideBrace ? Math.min(breaks, 1) : Math.min(breaks, 2);
}

function indentOf(
    { indent, bracesPair, goesOn }: FormatInput,
    previous: Token | undefined,
    token: Token,
    depth: number,
    old: string,
): string {
    if (!bracesPair) return /[ \t]*$/.exec(old.slice(old.lastIndexOf('\n') + 1))?.[0] ?? '';
    const further = previous !== undefined && previous.image !== '{' && previous.image !== '}' && goesOn(token) ? 1 : 0;
    return indent.repeat(depth + further);
}

function between({ statements, broken }: FormatInput, previous: Token, token: Token, old: string): string {
    if (isComment(token) || isComment(previous)) return ' ';
    if (broken.has((token.startLine ?? 1) - 1)) return old;
    if (token.image === ',') return '';
    if (previous.image === '{' && token.image === '}') return ' ';
    if (previous.image === '{' || token.image === '}' || token.image === '{') return ' ';
    return statements.has(token.startOffset) || previous.image === '}' ? '  ' : ' ';
}

export function isComment(token: Token): boolean {
    return token.image.startsWith('//') || token.image.startsWith('/*');
}

/** A line that begins with a number, a sign or a word that begins no statement. */
export function isContinuation(token: Token, homes: (word: string) => readonly string[]): boolean {
    if (isComment(token) || token.image === '}' || token.image === '{' || !startsStatement(token)) return false;
    return token.tokenType.name !== 'STRAY' && homes(token.image).length === 0;
}
