import type { Lexer } from 'langium';
import { startsStatement, type Token } from '../parsing/token';
import { constructs } from '../vocabulary/constructs';

/** Where a cursor stands: the blocks that are open around it and the line that is being written. */
export interface Standing {
    /** Types of the open blocks, outermost first; none at the level of the file. */
    readonly blocks: readonly string[];
    /** The first lines of the open blocks, which alone decide what may come: nothing that is broken elsewhere. */
    readonly heads: string;
    /** The statement before the cursor, which may still go on. */
    readonly statement: string;
    /** Whether a statement can begin here: nothing but blanks stands before the cursor on its line, or a brace. */
    readonly atStart: boolean;
}

/** Looks back from an offset, whatever the text before it is like. */
export function standingAt(text: string, offset: number, lexer: Lexer): Standing {
    const before = text.slice(0, offset);
    const { tokens } = lexer.tokenize(before, { mode: 'partial' });
    const open: Token[][] = [];
    let statement: Token[] = [];
    for (const token of tokens) {
        const name = token.tokenType.name;
        if (name === '{') {
            open.push(statement);
            statement = [];
        } else if (name === '}') {
            open.pop();
            statement = [];
        } else if (startsStatement(token)) statement = [token];
        else statement.push(token);
    }
    const last = tokens.at(-1);
    const lineIsEmpty = before.slice(before.lastIndexOf('\n') + 1).trim() === '';
    return {
        blocks: open.map((head, depth) => blockType(head[0]?.image ?? '', depth)),
        heads: open.map((head) => `${textOf(head)} { `).join(''),
        statement: textOf(statement),
        atStart: lineIsEmpty || last === undefined || last.image === '{' || last.image === '}',
    };
}

/** Whether an offset lies inside a comment, where nothing is proposed. */
export function isInComment(text: string, offset: number, lexer: Lexer): boolean {
    return lexer.tokenize(text).hidden.some(({ startOffset, image }) => {
        const end = startOffset + image.length;
        return startOffset < offset && (image.startsWith('//') ? offset <= end : offset < end);
    });
}

function textOf(tokens: readonly Token[]): string {
    return tokens.map(({ image }) => image).join(' ');
}

function blockType(word: string, depth: number): string {
    const found = constructs.find((each) => each.word === word && (each.where === 'file') === (depth === 0));
    return found?.type ?? '';
}
