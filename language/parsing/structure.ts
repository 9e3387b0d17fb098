import type { Lexer } from 'langium';
import type { Token } from './token';
import { startsStatement } from './token';

/**
 * Braces that do not pair. `unclosed`: the brace at `token` is never closed; `excess`: it closes
 * nothing; `early`: it closes a recipe that goes on after it; `unopened`: after `token` a brace is missing.
 */
export interface StructureProblem {
    readonly kind: 'unclosed' | 'excess' | 'early' | 'unopened';
    readonly token: Token;
    /** The first word after the place where the missing brace belongs, and the last token before it. */
    readonly next?: Token;
    readonly last?: Token;
}

interface Block {
    readonly head: Token;
    readonly brace: Token;
}

const plainEntries = new Set(['recipe', 'board', 'veneer', 'coupon', 'resin', 'sealer', 'abrasive', 'use']);
/** Words that begin both a block of stock and a line of a recipe. */
const sharedEntries = new Set(['laser', 'wood', 'beam', 'glue', 'finish']);
const steps = new Set(['engrave', 'cut', 'seal', 'fill', 'inlay', 'wait', 'peel', 'sand', 'finish', 'mask', 'check', 'do']);
const recipeOnly = new Set([...steps, 'blank', 'revision', 'make']);
/** Lines that are nothing without a block. */
const needBlock = new Set([...plainEntries, 'engrave', 'cut', 'sand', 'check', 'blank']);
needBlock.delete('use');

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

    constructor(
        private readonly tokens: readonly Token[],
        private readonly types: Lexer['definition'],
    ) {}

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
        if (name === '{') return this.open(token);
        if (startsStatement(token)) this.beforeStatement(index);
        if (name === '}') return this.close(token);
        if (startsStatement(token) || this.head === undefined) {
            this.head = token;
            this.opened = false;
        }
        this.out.push(token);
    }

    private open(brace: Token): void {
        this.blocks.push({ head: this.head ?? brace, brace });
        this.opened = true;
        this.out.push(brace);
    }

    private close(brace: Token): void {
        this.openIfMissing(brace);
        const block = this.blocks.pop();
        if (block === undefined) {
            this.report('excess', brace);
            return;
        }
        if (this.blocks.length === 0) {
            this.lastRecipe = block.head.image === 'recipe' ? { block, closedAt: this.out.length } : undefined;
        }
        this.head = undefined;
        this.out.push(brace);
    }

    private beforeStatement(index: number): void {
        const token = this.tokens[index]!;
        this.openIfMissing(token);
        const isEntry = this.startsEntry(index);
        if (this.blocks.length === 0) {
            if (!isEntry && this.startsRecipeLine(index)) this.reopenRecipe();
            return;
        }
        const inner = this.blocks.at(-1)!;
        const outermost = this.blocks[0]!.head.image;
        if (isEntry) {
            this.report('unclosed', inner.brace, token);
            while (this.blocks.length > 0) this.closeMadeUp();
        } else if (outermost === 'recipe' && this.blocks.length > 1 && this.startsRecipeLine(index)) {
            this.report('unclosed', inner.brace, token);
            while (this.blocks.length > 1) this.closeMadeUp();
        }
    }

    /** `engrave pocket on tray` without its brace: the lines under it are still its own. */
    private openIfMissing(next: Token | undefined): void {
        const head = this.head;
        if (head === undefined || this.opened || !needBlock.has(head.image) || next === this.head) return;
        if (!startsStatement(head)) return;
        const last = this.out.at(-1)!;
        this.problems.push({ kind: 'unopened', token: last, ...(next && { next }) });
        const brace = this.madeUp('{');
        this.open(brace);
        const bodyFollows =
            next !== undefined && next.tokenType.name !== '}' && !recipeOnly.has(next.image) && !plainEntries.has(next.image);
        const ownBrace = next?.tokenType.name === '}' && this.closesHead(next, head);
        if (!bodyFollows && !ownBrace) this.closeMadeUp();
    }

    /** Whether a `}` right after a header stands under it rather than under the block around it. */
    private closesHead(brace: Token, head: Token): boolean {
        return brace.startLine === head.startLine || brace.startColumn === head.startColumn;
    }

    private startsEntry(index: number): boolean {
        const token = this.tokens[index]!;
        if (plainEntries.has(token.image)) return true;
        if (!sharedEntries.has(token.image)) return false;
        const outer = this.blocks[0];
        const left = outer === undefined || (token.startColumn ?? 1) <= (outer.head.startColumn ?? 1);
        return left && this.tokens[index + 2]?.tokenType.name === '{';
    }

    private startsRecipeLine(index: number): boolean {
        const token = this.tokens[index]!;
        if (token.image === 'art') return this.tokens[index + 2]?.tokenType.name === 'STRING';
        if (token.image === 'blank') return this.tokens[index + 2]?.tokenType.name === '{';
        return recipeOnly.has(token.image);
    }

    private reopenRecipe(): void {
        const last = this.lastRecipe;
        if (last === undefined) return;
        const [brace] = this.out.splice(last.closedAt, 1);
        if (brace !== undefined && brace.isInsertedInRecovery !== true) this.report('early', brace);
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
        if (token.isInsertedInRecovery) return; // said already where it is missing
        this.problems.push({ kind, token, ...(next && { next }), ...(last && { last }) });
    }

    private madeUp(image: '{' | '}'): Token {
        const type = this.types[image]!;
        const nowhere = { startOffset: Number.NaN, endOffset: Number.NaN, startLine: Number.NaN, endLine: Number.NaN };
        return { image: '', tokenType: type, tokenTypeIdx: type.tokenTypeIdx ?? -1, isInsertedInRecovery: true, ...nowhere };
    }
}
