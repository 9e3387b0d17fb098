import type { Lexer } from 'langium';
import { canStandIn, homesOf, isLineOf } from '../vocabulary/blocks';
import { canHaveBlock, entries, holdSteps, isPart, needBlock, pointing, recipeOnly, sharedEntries, steps } from './block-words';
import type { Token } from './token';
import { isWord, mostErrors, startsStatement } from './token';

/**
 * Braces that do not pair. `unclosed`: the brace at `token` is never closed; `excess`: it closes
 * nothing; `early`: it closes a recipe that goes on after it; `unopened`: after `token` a brace is missing;
 * `swallowed`: the block that begins with `token` stands behind a comment, on the comment's line; `torn`: a line break stands in it.
 */
export interface StructureProblem {
    readonly kind: 'unclosed' | 'excess' | 'early' | 'unopened' | 'swallowed' | 'torn';
    readonly token: Token;
    /** The first word after the place where the missing brace belongs, and the last token before it. */
    readonly next?: Token;
    readonly last?: Token;
}

interface Block {
    readonly head: Token;
    readonly brace: Token;
}

/**
 * Makes every brace pair, so that the parser meets whole blocks only. A brace that is missing is put
 * in before the word that cannot stand inside the open block; one that is too many is dropped.
 * `closeAtEnd` is off for a text that is cut at the cursor.
 */
export function balance(
    tokens: readonly Token[],
    types: Lexer['definition'],
    closeAtEnd: boolean,
): { tokens: Token[]; problems: StructureProblem[] } {
    const run = new Balance(tokens, types);
    run.all(closeAtEnd);
    return { tokens: run.out, problems: run.problems };
}

class Balance {
    readonly out: Token[] = [];
    readonly problems: StructureProblem[] = [];
    private readonly blocks: Block[] = [];
    /** The first word of the line that is being read, and whether its block has been opened. */
    private head: Token | undefined;
    private opened = false;
    private lastRecipe: { block: Block; closedAt: number } | undefined;
    /** How many more braces close than open, in the whole text. */
    private surplus: number;

    constructor(
        private readonly tokens: readonly Token[],
        private readonly types: Lexer['definition'],
    ) {
        const count = (image: string) => tokens.filter((token) => token.image === image).length;
        this.surplus = count('}') - count('{');
    }

    all(closeAtEnd: boolean): void {
        for (let index = 0; index < this.tokens.length; index++) this.one(index);
        if (!closeAtEnd) return;
        this.openIfMissing(undefined);
        const innermost = this.blocks.at(-1);
        if (innermost !== undefined) this.report('unclosed', innermost.brace);
        while (this.blocks.length > 0) this.closeMadeUp();
    }

    private one(index: number): void {
        const token = this.tokens[index]!;
        const name = token.tokenType.name;
        if (name === '{') {
            this.open(token, index);
            return;
        }
        if (startsStatement(token)) this.beforeStatement(index);
        if (name === '}') {
            this.close(token, this.tokens[index + 1]);
            return;
        }
        if (startsStatement(token) || this.head === undefined || this.opensWithinLine(token)) {
            this.head = token;
            this.opened = false;
        }
        this.out.push(token);
    }

    /** A statement with a block of its own that stands behind another one on the same line. */
    private opensWithinLine(token: Token): boolean {
        // Behind `after` and `without` a step is only pointed at.
        if (pointing.has(this.out.at(-1)?.image ?? '')) return false;
        if (token.payload === 'name') return false;
        return isWord(token) && canHaveBlock.has(token.image) && (!sharedEntries.has(token.image) || steps.has(token.image));
    }

    private open(brace: Token, index: number): void {
        if (this.opensNothing(index)) {
            this.goOnBehind(brace, this.tokens[index + 1]);
            this.report('excess', brace);
            this.surplus++;
            return;
        }
        this.push(brace);
    }

    /** A brace behind a line that has no block. Behind a word that is unknown it opens one if what follows stands further in. */
    private opensNothing(index: number): boolean {
        const head = this.head;
        const next = this.tokens[index + 1];
        if (head === undefined) return this.blocks.length > 0;
        if (this.opened || this.tellsWhatWas()) return true;
        if (sharedEntries.has(head.image) && !steps.has(head.image)) return this.blocks.length > 0;
        if (canHaveBlock.has(head.image)) return false;
        if (homesOf(head.image).length > 0) return true;
        if (next === undefined) return false;
        if (next.startLine === head.startLine) return this.surplus < 0 && !this.closesOnLine(index);
        return next.tokenType.name === '}' ? (next.startColumn ?? 1) < (head.startColumn ?? 1) : isLeftOf(next, head);
    }

    private closesOnLine(index: number): boolean {
        const { startLine } = this.tokens[index]!;
        for (let at = index + 1; this.tokens[at]?.startLine === startLine; at++) if (this.tokens[at]!.image === '}') return true;
        return false;
    }

    private push(brace: Token): void {
        this.blocks.push({ head: this.head ?? brace, brace });
        this.opened = true;
        this.out.push(brace);
    }

    private close(brace: Token, next: Token | undefined): void {
        this.openIfMissing(brace);
        if (this.blocks.length === 0 || this.isTooMany(brace) || this.standsInLine(brace, next)) {
            this.goOnBehind(brace, next);
            this.report('excess', brace);
            this.surplus--;
            return;
        }
        const block = this.blocks.pop()!;
        if (this.blocks.length === 0) {
            this.lastRecipe = block.head.image === 'recipe' ? { block, closedAt: this.out.length } : undefined;
        }
        this.head = undefined;
        this.out.push(brace);
    }

    /** Of too many braces, one that stands further in than the block it would close. */
    private isTooMany(brace: Token): boolean {
        const inner = this.blocks.at(-1)!;
        return (
            this.surplus > 0 && startsStatement(brace) && !isLeftOf(brace, inner.head) && brace.startLine !== inner.brace.endLine
        );
    }

    /**
     * Of too many braces, one that ends no line of its own in a block that was opened further up: the line goes on behind
     * it, or the next one stands as far in as the lines of the block.
     */
    private standsInLine(brace: Token, next: Token | undefined): boolean {
        const inner = this.blocks.at(-1)!;
        if (this.surplus <= 0 || next === undefined) return false;
        if (brace.startLine === inner.brace.endLine) return this.emptiesBlock(brace, next, inner);
        if (next.image === '}') return next.startLine !== brace.startLine && !startsStatement(brace) && isAt(next, inner.head);
        if (next.startLine !== brace.startLine) return !startsStatement(brace) && !isLeftOf(next, inner.head);
        const goesOn = !isWord(next) || homesOf(next.image).length === 0;
        return goesOn || !startsStatement(brace) || isLineOf(inner.head.image, next.image);
    }

    /** Right behind the brace that opens a block whose lines then follow. */
    private emptiesBlock(brace: Token, next: Token, { head, brace: opening }: Block): boolean {
        if (this.out.at(-1) !== opening || next.startLine === brace.startLine || isLeftOf(next, head)) return false;
        return isLineOf(head.image, next.image);
    }

    /** Nothing begins behind a brace that is not there, unless it is a word with which lines begin. */
    private goOnBehind(brace: Token, next: Token | undefined): void {
        if (next === undefined || startsStatement(brace) || next.startLine !== brace.startLine) return;
        if (!isWord(next) || homesOf(next.image).length === 0) next.payload = undefined;
    }

    /**
     * A word that cannot stand in the open block ends it where it stands no further in than the block
     * does. Further in it is only a wrong line, which the parser passes over.
     */
    private beforeStatement(index: number): void {
        const token = this.tokens[index]!;
        this.openIfMissing(token);
        const isEntry = this.startsEntry(index);
        if (this.blocks.length === 0) {
            if (!isEntry && this.startsRecipeLine(index)) this.reopenRecipe(token);
            return;
        }
        const [outer, inner] = [this.blocks[0]!, this.blocks.at(-1)!];
        if (isEntry && isLeftOf(token, outer.head)) {
            this.report('unclosed', inner.brace, token);
            while (this.blocks.length > 0) this.closeMadeUp();
        } else if (
            outer.head.image === 'recipe' &&
            this.blocks.length > 1 &&
            this.startsRecipeLine(index) &&
            isLeftOf(token, inner.head) &&
            !this.isHeld(token, inner)
        ) {
            this.report('unclosed', inner.brace, token);
            while (this.blocks.length > 1 && isLeftOf(token, this.blocks.at(-1)!.head)) this.closeMadeUp();
        }
    }

    /** A step in a block that holds steps, in a text without indentation whose braces pair. */
    private isHeld(token: Token, inner: Block): boolean {
        return holdSteps.has(inner.head.image) && steps.has(token.image) && this.surplus >= 0;
    }

    /** `engrave pocket on tray` without its brace: lines that stand further in are still its own. */
    private openIfMissing(next: Token | undefined): void {
        const head = this.head;
        if (head === undefined || this.opened || next === head || !startsStatement(head)) return;
        if (this.tellsWhatWas() || !isWord(head)) return;
        if (!needBlock.has(head.image) && !this.isLineOf(head, next)) return;
        const last = this.out.at(-1)!;
        this.report('unopened', last, next);
        this.push(this.madeUp('{'));
        if (next === undefined || !this.belongsTo(head, next)) this.closeMadeUp();
    }

    /** In a run `engrave pocket 80 % at …` only names a step, in a coupon `cut 95 % at …` tells of one that was tried: no line there has a block. */
    private tellsWhatWas(): boolean {
        return ['run', 'coupon'].includes(this.blocks.at(-1)?.head.image ?? '');
    }

    /** Whether a line further in is one that only the block of `head` can have, though it need not have one. */
    private isLineOf(head: Token, next: Token | undefined): boolean {
        if (next === undefined || isLeftOf(next, head)) return false;
        if (this.blocks.length === 0 && sharedEntries.has(head.image)) return true;
        if (!steps.has(head.image) && !(head.image === 'art' && this.blocks.length === 1)) return false;
        return canStandIn(head.image, next.image);
    }

    private belongsTo(head: Token, next: Token): boolean {
        if (next.tokenType.name === '}') return next.startLine === head.startLine || next.startColumn === head.startColumn;
        const isOfRun = head.image === 'run' && homesOf(next.image).includes('Run');
        const isElsewhere = recipeOnly.has(next.image) || entries.has(next.image);
        if (head.image !== 'recipe' && !holdSteps.has(head.image) && isElsewhere && !isOfRun) return false;
        const around = this.blocks.at(-2)?.head;
        const isFlat = around !== undefined && around.startColumn === head.startColumn;
        return isFlat || !isLeftOf(next, head);
    }

    private startsEntry(index: number): boolean {
        const token = this.tokens[index]!;
        if (!isWord(token)) return false;
        if (entries.has(token.image)) return true;
        return sharedEntries.has(token.image) && this.tokens[index + 2]?.tokenType.name === '{';
    }

    private startsRecipeLine(index: number): boolean {
        const token = this.tokens[index]!;
        if (!isWord(token)) return false;
        if (token.image === 'art') return this.tokens[index + 2]?.tokenType.name === 'STRING';
        if (token.image === 'blank') return this.tokens[index + 2]?.tokenType.name === '{';
        // In a step `without` leaves out one of its lines, in a recipe a whole part.
        if (token.image === 'without') return isPart(this.tokens[index + 1]?.image ?? '');
        return recipeOnly.has(token.image);
    }

    /** A step below a closed recipe belongs to it where there are too many closing braces, or where it stands further in. */
    private reopenRecipe(token: Token): void {
        const last = this.lastRecipe;
        if (last === undefined || (this.surplus <= 0 && isLeftOf(token, last.block.head))) return;
        const [brace] = this.out.splice(last.closedAt, 1);
        if (brace !== undefined && brace.isInsertedInRecovery !== true) {
            this.report('early', brace);
            this.surplus--;
        }
        this.blocks.push(last.block);
        this.lastRecipe = undefined;
    }

    private closeMadeUp(): void {
        const block = this.blocks.pop();
        if (this.blocks.length === 0 && block?.head.image === 'recipe') this.lastRecipe = { block, closedAt: this.out.length };
        this.head = undefined;
        this.out.push(this.madeUp('}'));
    }

    private report(kind: StructureProblem['kind'], token: Token, next?: Token): void {
        const last = this.out.at(-1);
        if (token.isInsertedInRecovery || this.problems.length >= mostErrors) return;
        this.problems.push({ kind, token, ...(next && { next }), ...(last && { last }) });
    }

    private madeUp(image: '{' | '}'): Token {
        const type = this.types[image]!;
        const nowhere = { startOffset: Number.NaN, endOffset: Number.NaN, startLine: Number.NaN, endLine: Number.NaN };
        return { image: '', tokenType: type, tokenTypeIdx: type.tokenTypeIdx ?? -1, isInsertedInRecovery: true, ...nowhere };
    }
}

function isAt(token: Token, head: Token): boolean {
    return token.startColumn === head.startColumn;
}

/** Whether a word stands no further in than another does. */
function isLeftOf(token: Token, head: Token): boolean {
    return (token.startColumn ?? 1) <= (head.startColumn ?? 1);
}
