import { isWord, type Token } from './token';

/** Words that say of which kind the step is whose name follows. */
const kinds = new Set(['engrave', 'cut']);
/** Words with which a line of a run begins or goes on before a number. */
const before = new Set([
    'issue',
    'revision',
    'laser',
    'note',
    'of',
    'at',
    'x',
    'pitch',
    'planned',
    'depth',
    'width',
    'made',
    'spoiled',
    'took',
]);
/** Words of which one may follow the name of a step at once, with a number behind it. */
const clauses = new Set(['at', 'x', 'pitch', 'planned', 'depth', 'width', 'tone']);
/** Other words that a run has: behind them, or as one of them, a line goes on. */
const others = new Set(['through', 'tone', 'temperature', 'photo', 'link', 'lot', 'plan', 'yes', 'no', 'by']);
const powers = new Set(['%', 'W', 'mW', 'kW']);

/** Whether a step of that name has its kind before it in a run: `engrave depth 80 % at 250 mm/s`. */
export function needsItsKind(name: string): boolean {
    return kinds.has(name) || before.has(name);
}

/**
 * A line of a run begins with the name of a step, which may be spelled like a word. It is told by what follows: `of`, a figure,
 * or what was measured. A step called like a word of the run itself is told by its kind before it: `engrave note 80 % at …`.
 */
export class RunLines {
    private readonly blocks: boolean[] = [];
    private head: Token | undefined;

    /** To be told of every token, in order, before anything is asked about it. */
    pass(token: Token, starts: boolean): void {
        if (token.image === '{') this.blocks.push(this.head?.image === 'run' && this.blocks.length === 0);
        else if (token.image === '}') this.blocks.pop();
        else if (starts) this.head = token;
    }

    /** Whether the word at `index`, behind another line of the run, is the name of a step: no line goes on with it. */
    isStepWithin(tokens: readonly Token[], index: number): boolean {
        const word = tokens[index]?.image ?? '';
        return !before.has(word) && !others.has(word) && this.isStep(tokens, index);
    }

    /** Whether the word at `index`, first on its line, is the name of a step. */
    isStep(tokens: readonly Token[], index: number): boolean {
        if (this.blocks.at(-1) !== true) return false;
        const [word, next, third] = tokens.slice(index, index + 3);
        if (word === undefined || next === undefined || next.startLine !== word.startLine || kinds.has(word.image)) return false;
        // `temperature 19 degC` is a line of the run, `temperature 80 % at …` a step of that name.
        if (isNumber(next)) return word.image === 'temperature' ? powers.has(third?.image ?? '') : !before.has(word.image);
        return isMeasured(word, next, third);
    }
}

/** Whether what stands behind a word of a run would be said of a step. */
export function readsLikeStep(tokens: readonly Token[], index: number): boolean {
    const [word, next, third] = tokens.slice(index, index + 3);
    if (word === undefined || next === undefined || next.startLine !== word.startLine) return false;
    return isNumber(next) ? powers.has(third?.image ?? '') : isMeasured(word, next, third);
}

function isMeasured(word: Token, next: Token, third: Token | undefined): boolean {
    if (third === undefined || third.startLine !== word.startLine) return false;
    if (next.image === 'of') return third.tokenType.name === 'ID' || isWord(third);
    if (next.image === 'through') return third.image === 'yes' || third.image === 'no';
    return clauses.has(next.image) && isNumber(third);
}

function isNumber({ tokenType: { name } }: Token): boolean {
    return name === 'NUMBER' || name === 'FRACTION';
}
