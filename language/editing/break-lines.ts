import type { Token } from '../parsing/token';
import { isComment, type Laid } from './format-text';

/** Letters of a line, its indentation with them. */
export const longestLine = 120;

/** A token on its way to its place: where its line breaks is still open. */
export interface Placed {
    readonly token: Token;
    readonly depth: number;
    blanks: string;
}

export interface BreakingInput {
    readonly indent: string;
    readonly lineBreak: string;
    /** Offsets at which a statement begins. */
    readonly statements: ReadonlySet<number>;
    /** Whether a line of these tokens may be broken. */
    readonly mayBreak: (line: readonly Placed[]) => boolean;
    /** Blocks that hold a line which begins with a word: none for a word that only goes on with one. */
    readonly homes: (word: string) => readonly string[];
}

/**
 * Breaks lines that are too long, from outside in: between statements, then around what a block holds, then before words that
 * go on with a statement. What fits stays as it is, so that a second time nothing changes.
 * @returns whether any line was broken
 */
export function breakLongLines(placed: readonly Placed[], input: BreakingInput): boolean {
    let broken = false;
    const breakLine = (line: readonly Placed[]): void => {
        if (widthOf(line) <= longestLine) return;
        const { parts, further } = partsOf(line, input);
        for (const part of parts.slice(1)) {
            const [first] = part;
            first!.blanks = input.lineBreak + input.indent.repeat(first!.depth + further);
            broken = true;
        }
        if (parts.length > 1) for (const part of parts) breakLine(part);
    };
    for (const line of linesOf(placed)) if (line.every(isOnOneLine) && input.mayBreak(line)) breakLine(line);
    return broken;
}

function* linesOf(placed: readonly Placed[]): Iterable<readonly Placed[]> {
    let start = 0;
    for (let index = 1; index <= placed.length; index++) {
        if (index < placed.length && !placed[index]!.blanks.includes('\n')) continue;
        yield placed.slice(start, index);
        start = index;
    }
}

function isOnOneLine({ token }: Placed): boolean {
    return !token.image.includes('\n');
}

/** A comment at the end of a line is nobody's to break. */
function widthOf(line: readonly Placed[]): number {
    const told = isLineComment(line.at(-1)) ? line.slice(0, -1) : line;
    return told.reduce(
        (sum, { token, blanks }) => sum + blanks.slice(blanks.lastIndexOf('\n') + 1).length + token.image.length,
        0,
    );
}

function isLineComment(placed: Placed | undefined): boolean {
    return placed?.token.image.startsWith('//') === true;
}

/** `further` is how much deeper than its block each part but the first stands. */
function partsOf(line: readonly Placed[], input: BreakingInput): { parts: readonly (readonly Placed[])[]; further: number } {
    const statements = cutAt(line, statementStarts(line, input));
    if (statements.length > 1) return { parts: statements, further: 0 };
    const opened = openedBlock(line);
    if (opened !== undefined) {
        const [head, held, rest] = opened;
        return { parts: [head, ...cutAt(held, statementStarts(held, input)), ...(rest.length > 0 ? [rest] : [])], further: 0 };
    }
    return { parts: cutAt(line, goingOn(line, input)), further: 1 };
}

function cutAt(line: readonly Placed[], starts: readonly number[]): Placed[][] {
    return [0, ...starts].map((start, index) => line.slice(start, starts[index])).filter((part) => part.length > 0);
}

/** Where statements begin that stand in no block of this line, and braces that close one of an earlier line. */
function statementStarts(line: readonly Placed[], { statements }: BreakingInput): number[] {
    const starts: number[] = [];
    let level = 0;
    for (const [index, { token }] of line.entries()) {
        if (token.image === '}') level--;
        const closesEarlier = level < 0;
        if (index > 0 && (closesEarlier || (level === 0 && statements.has(token.startOffset)))) starts.push(index);
        level = Math.max(0, level);
        if (token.image === '{') level++;
    }
    return starts;
}

/** A statement up to its brace, what its block holds, and its closing brace with what follows; undefined where it holds nothing here. */
function openedBlock(line: readonly Placed[]): [Placed[], Placed[], Placed[]] | undefined {
    const open = line.findIndex(({ token }) => token.image === '{');
    if (open < 0) return undefined;
    let level = 0;
    const found = line.findIndex(({ token }, index) => {
        if (index < open) return false;
        level += Number(token.image === '{') - Number(token.image === '}');
        return level === 0;
    });
    const close = found < 0 ? line.length : found;
    const held = line.slice(open + 1, close);
    return held.every(({ token }) => isComment(token)) ? undefined : [line.slice(0, open + 1), held, line.slice(close)];
}

/** The last places before the edge at which a statement can go on in a line of its own. */
function goingOn(line: readonly Placed[], input: BreakingInput): number[] {
    const starts: number[] = [];
    const [first] = line;
    let width = widthOf(line.slice(0, 1));
    let last: number | undefined;
    for (let index = 1; index < line.length; index++) {
        const { token, blanks } = line[index]!;
        if (goesOnAlone(line, index, input)) last = index;
        width += blanks.length + token.image.length;
        if (width <= longestLine || last === undefined) continue;
        starts.push(last);
        width = input.indent.length * (first!.depth + 1) + widthOf(line.slice(last, index + 1)) - line[last]!.blanks.length;
        last = undefined;
    }
    return starts;
}

/** Words with which a clause or one more place of a statement begins. */
const clauseWords = new Set([
    'inverse',
    'at',
    'turned',
    'repeat',
    'and',
    'but',
    'kerf',
    'strip',
    'fits',
    'pitch',
    'planned',
    'gives',
]);
const listed = new Set(['HASH', 'DOTTED']);
const figures = new Set(['curve', 'grits']);

function goesOnAlone(line: readonly Placed[], index: number, { homes }: BreakingInput): boolean {
    const { token } = line[index]!;
    const behindComma = line[index - 1]!.token.image === ',';
    if (listed.has(token.tokenType.name)) return true;
    if (behindComma) return token.tokenType.name === 'NUMBER' && figures.has(line[0]!.token.image);
    return clauseWords.has(token.image) && token.tokenType.name === token.image && homes(token.image).length === 0;
}

/** The tokens on their way, in the order in which they are laid out. */
export function placedOf(laid: readonly Laid[]): Placed[] {
    return laid.map(({ token, blanks, depth }) => ({ token, blanks, depth }));
}
