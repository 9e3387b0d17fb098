import { DefaultLexer, type LexerResult, type TokenizeOptions } from 'langium';
import { type Conflict, conflictsIn, withoutConflicts } from './conflicts';
import { nameTakingWords } from './name-taking-words';
import { RunLines } from './run-lines';
import { balance, type StructureProblem } from './structure';
import { swallowedHeads } from './swallowed';
import { isWord, nameLike, type Token } from './token';
import { openComment, openString, strayWord } from './token-builder';
import { mendTorn } from './torn';

/** What the lexer adds to Langium's report: braces that do not pair, and what was left open on a line. */
export interface KerfLexingReport {
    readonly diagnostics: never[];
    readonly structure: readonly StructureProblem[];
    /** Places that git could not merge; nothing of them is read. */
    readonly conflicts: readonly Conflict[];
    readonly open: readonly { readonly kind: 'text' | 'comment'; readonly token: Token }[];
}

/** Where a word stands: first of a statement, first on its line, behind a word that a name follows, behind a comma. */
interface PlaceOfWord {
    readonly starts: boolean;
    readonly newLine: boolean;
    readonly taking: boolean;
    readonly afterComma: boolean;
}

/**
 * Tokens with the shape of the text in them: a word that begins a line without being a word of the
 * language can never be taken as the end of the line before, and braces always pair.
 */
export class KerfLexer extends DefaultLexer {
    private readonly nameTaking: ReadonlySet<string> = new Set(nameTakingWords);

    override tokenize(whole: string, options?: TokenizeOptions): LexerResult {
        const conflicts = conflictsIn(whole);
        const text = withoutConflicts(whole, conflicts);
        const { result, swallowed } = this.withSwallowed(text, options);
        const open: { kind: 'text' | 'comment'; token: Token }[] = [];
        for (const token of result.hidden) if (token.tokenType.name === openComment) open.push({ kind: 'comment', token });
        const { tokens: mended, torn } = mendTorn(result.tokens, text, (piece) => super.tokenize(piece).tokens);
        this.markLines(mended, open);
        const { tokens, problems } = balance(mended, this.definition, options?.mode !== 'partial');
        const structure = [
            ...torn.map((token) => ({ kind: 'torn' as const, token })),
            ...swallowed.map((token) => ({ kind: 'swallowed' as const, token })),
            ...problems,
        ];
        const report: KerfLexingReport = { diagnostics: [], structure, conflicts, open };
        return { ...result, tokens, report };
    }

    /** A comment that has swallowed the head of a block is read up to there only. */
    private withSwallowed(text: string, options?: TokenizeOptions): { result: LexerResult; swallowed: Token[] } {
        const result = super.tokenize(text, options);
        const heads = swallowedHeads(result.tokens, result.hidden);
        if (heads.length === 0) return { result, swallowed: [] };
        let rest = text;
        for (const { comment, offset } of heads) {
            rest = `${rest.slice(0, comment.startOffset)}${' '.repeat(offset - comment.startOffset)}${rest.slice(offset)}`;
        }
        const again = super.tokenize(rest, options);
        const begins = new Set(heads.map(({ offset }) => offset));
        return { result: again, swallowed: again.tokens.filter(({ startOffset }) => begins.has(startOffset)) };
    }

    /** Every token and comment as it stands in the text, in order: no brace is put in or left out. */
    written(text: string): Token[] {
        const { tokens, hidden } = super.tokenize(text);
        this.markLines(tokens, []);
        return [...tokens, ...hidden].sort((a, b) => a.startOffset - b.startOffset);
    }

    /**
     * Marks where statements can begin, and makes words into names where they stand for names. Whether a word right behind
     * one that a name follows is that name, the parser decides; first on its line it never is, but for the steps of a run.
     */
    private markLines(tokens: readonly Token[], open: { kind: 'text' | 'comment'; token: Token }[]): void {
        const run = new RunLines();
        let previous: Token | undefined;
        /** Whether the token before is a word that a name follows, and no name itself. */
        let taking = false;
        for (let index = 0; index < tokens.length; index++) {
            const token = tokens[index]!;
            const name = token.tokenType.name;
            const newLine = previous === undefined || token.startLine !== previous.endLine;
            const after = previous?.tokenType.name;
            const starts = newLine || after === '{' || after === '}';
            if (starts) token.payload = 'start';
            // A list goes on behind its comma, but never with a step of a run.
            if (name === 'ID' && newLine && (after !== ',' || run.isStep(tokens, index))) this.retype(token, strayWord);
            if (name === openString) {
                open.push({ kind: 'text', token });
                this.retype(token, 'STRING');
            }
            run.pass(token, starts);
            const named: boolean =
                isWord(token) && this.nameWord(run, tokens, index, { starts, newLine, taking, afterComma: after === ',' });
            taking = !named && isWord(token) && this.nameTaking.has(token.image);
            previous = token;
        }
    }

    /**
     * Makes a word into a name where it stands for one: first on a line of a run, where it is a step's, or behind a word that a name follows.
     * @returns whether it is a name that the line goes on with
     */
    private nameWord(run: RunLines, tokens: readonly Token[], index: number, place: PlaceOfWord): boolean {
        const token = tokens[index]!;
        const { starts, newLine, taking, afterComma } = place;
        const isStep = starts ? run.isStep(tokens, index) : !taking && !afterComma && run.isStepWithin(tokens, index);
        if (isStep) this.retype(token, strayWord);
        else if (!newLine && (taking || afterComma)) {
            token.payload = 'name';
            this.retype(token, nameLike(token.tokenType.name));
            return true;
        }
        return false;
    }

    private retype(token: Token, name: string): void {
        const type = this.definition[name];
        if (type === undefined) return;
        token.tokenType = type;
        token.tokenTypeIdx = type.tokenTypeIdx ?? -1;
    }
}
