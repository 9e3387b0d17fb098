import { units } from '../../shared/quantity/units';
import { builtInText, builtInUris } from '../built-in';
import { homesOf, lineWords } from '../vocabulary/blocks';
import { constructs } from '../vocabulary/constructs';
import { propertiesOf } from '../vocabulary/lookup';
import { isWord, type Token } from './token';

/** Figures: what is torn goes on in the next line with a digit or a sign, with which no line begins. */
const figures = new Set(['NUMBER', 'FRACTION', 'DATE', '+-', '..']);
/** Names: what they would be together has to be known. */
const names = new Set(['ID', 'HASH', 'DOTTED', 'UNIT']);
const colour = /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i;

/**
 * Puts words, names and figures together that a line break has torn apart: the end of a line and the beginning of the
 * next one, with which no line can begin, are one token where together they are one that is known.
 * @param read the tokens of a piece of text by itself
 * @returns the tokens, and those of them that were torn: their images are whole, their places take in the line break
 */
export function mendTorn(
    tokens: readonly Token[],
    text: string,
    read: (text: string) => readonly Token[],
): { tokens: readonly Token[]; torn: readonly Token[] } {
    const mended: Token[] = [];
    const torn: Token[] = [];
    const known = new Known(tokens);
    for (let index = 0; index < tokens.length; index++) {
        const token = tokens[index]!;
        const last = mended.at(-1);
        const whole =
            last === undefined || !isTorn(mended, token, text)
                ? undefined
                : together(last, token, text, read, known, isNamed(mended, tokens, index));
        const from = whole === undefined ? -1 : mended.findIndex(({ startOffset }) => startOffset === whole.startOffset);
        const to = whole === undefined ? -1 : tokens.findIndex(({ endOffset }) => endOffset === whole.endOffset);
        const isFound = whole !== undefined && from >= 0 && to >= index;
        // No unit ends with the stroke of `mm/`.
        if (!isFound || (last?.image !== '/' && isWholeAlone(mended, from, tokens, index, to))) {
            mended.push(token);
            continue;
        }
        const { endLine, endColumn } = tokens[to]!;
        const joined = { ...mended[from]!, ...whole, endLine, endColumn } as Token;
        mended.splice(from, mended.length - from, joined);
        torn.push(joined);
        index = to;
    }
    return { tokens: torn.length === 0 ? tokens : mended, torn };
}

/**
 * Whether both lines can be meant as they stand: `1/4 in` and a line that begins with `to`, as while `top speed` is typed, or
 * `hourly 32` and below it a figure of its own.
 */
function isWholeAlone(before: readonly Token[], from: number, tokens: readonly Token[], index: number, to: number): boolean {
    const half = before[from]!;
    const line = before.filter(({ startLine }) => startLine === half.startLine);
    const number = from > 0 && line.includes(before[from - 1]!) ? before[from - 1]!.tokenType.name : '';
    if (isNumber(number) && units.has(half.image)) return beginnings().some((word) => word.startsWith(tokens[index]!.image));
    const next = tokens[to + 1];
    const unit = next !== undefined && next.startLine === tokens[to]!.endLine && units.has(next.image);
    return isNumber(half.tokenType.name) && unit && canBeBare(line[0]!.image);
}

function isNumber(type: string): boolean {
    return type === 'NUMBER' || type === 'FRACTION';
}

function canBeBare(head: string): boolean {
    const lines = homesOf(head).flatMap((block) => propertiesOf(block).filter(({ words }) => words.split(' ')[0] === head));
    return lines.some(({ measures }) => measures.some(({ dimension }) => dimension === 'count' || dimension === 'money'));
}

/** Nothing but a line break stands between them, and no line begins with the second; or none with the first, and one with both together. */
function isTorn(before: readonly Token[], token: Token, text: string): boolean {
    const last = before.at(-1)!;
    if (token.startLine !== (last.endLine ?? 0) + 1) return false;
    const name = token.tokenType.name;
    if (name === '{' || name === '}' || name.endsWith('STRING')) return false;
    if (isWord(token) && homesOf(token.image).length > 0 && !isHalfAlone(before, token)) return false;
    return /^\r?\n[ \t]*$/.test(text.slice((last.endOffset ?? 0) + 1, token.startOffset));
}

/** `off` alone on a line that nothing begins with, and below it `cut`: a line begins with `offcut`. */
function isHalfAlone(before: readonly Token[], token: Token): boolean {
    const [half, above] = before.slice(-2).reverse();
    if (half === undefined || above?.endLine === half.startLine) return false;
    return homesOf(half.image).length === 0 && homesOf(half.image + token.image).length > 0;
}

/** What declares a name and cannot end behind it. */
const declaring = new Set([
    'recipe',
    'routine',
    'board',
    'veneer',
    'resin',
    'sealer',
    'abrasive',
    'shop',
    'engrave',
    'cut',
    'blank',
    'places',
]);

/** `board wal` and below it `nut-12 {`: the name that a block bears. */
function isNamed(before: readonly Token[], tokens: readonly Token[], index: number): boolean {
    const [half, head, above] = before.slice(-3).reverse();
    const next = tokens[index + 1];
    if (head === undefined || half === undefined || next === undefined || above?.endLine === head.startLine) return false;
    if (head.startLine !== half.startLine || next.startLine !== tokens[index]!.startLine) return false;
    if (head.image === 'art') return next.tokenType.name === 'STRING';
    return declaring.has(head.image) && ['{', 'on', 'based', 'for'].includes(next.image);
}

function together(
    last: Token,
    token: Token,
    text: string,
    read: (text: string) => readonly Token[],
    known: Known,
    named: boolean,
): (Pick<Token, 'image' | 'tokenType' | 'startOffset'> & { endOffset: number; tokenTypeIdx: number }) | undefined {
    const joint = (last.endOffset ?? 0) + 1;
    const before = /\S*$/.exec(text.slice(Math.max(0, joint - longest), joint))![0];
    const behind = /^\S*/.exec(text.slice(token.startOffset, token.startOffset + longest))![0];
    for (const { image, tokenType, tokenTypeIdx, startOffset } of read(before + behind)) {
        const end = startOffset + image.length;
        if (startOffset >= before.length || end <= before.length) continue;
        const name = tokenType.name;
        const fits =
            (figures.has(name) && /^[\d./-]/.test(behind)) ||
            (/^[a-z]/.test(name) && name !== 'x') ||
            (names.has(name) && (known.has(image) || (name === 'HASH' && colour.test(image)))) ||
            (name === 'ID' && named);
        if (!fits || known.isStep(token.image)) return undefined;
        const endOffset = token.startOffset + end - before.length - 1;
        return { image, tokenType, tokenTypeIdx, startOffset: joint - before.length + startOffset, endOffset };
    }
    return undefined;
}

/** No word of the language and hardly a name is longer. */
const longest = 80;

/** The names of a text, looked for only once something may be torn. */
class Known {
    private images: ReadonlySet<string> | undefined;
    private steps: ReadonlySet<string> | undefined;

    constructor(private readonly tokens: readonly Token[]) {}

    has(name: string): boolean {
        this.images ??= new Set(this.tokens.filter(({ tokenType }) => names.has(tokenType.name)).map(({ image }) => image));
        return this.images.has(name) || units.has(name) || alwaysKnown().has(name);
    }

    /** In a run a line begins with the name of a step. */
    isStep(name: string): boolean {
        this.steps ??= new Set(
            this.tokens.flatMap(({ image }, index) =>
                image === 'engrave' || image === 'cut' ? [this.tokens[index + 1]?.image ?? ''] : [],
            ),
        );
        return this.steps.has(name);
    }
}

let always: ReadonlySet<string> | undefined;

/** Built-in stock, and the words among which a line chooses. */
function alwaysKnown(): ReadonlySet<string> {
    always ??= new Set([
        ...builtInUris.flatMap((uri) => [...builtInText(uri)!.matchAll(/^[a-z]+ ([\w-]+) \{/gm)].map(([, name]) => name!)),
        ...constructs.flatMap(({ type }) => propertiesOf(type).flatMap(({ choices }) => choices)),
    ]);
    return always;
}

/** The words with which a line can begin. */
function beginnings(): string[] {
    return [...new Set(constructs.flatMap(({ type }) => lineWords(type))), ...lineWords('File')];
}
