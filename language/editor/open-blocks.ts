import type { LangiumDocument, Lexer } from 'langium';
import { isFile, KerfTerminals } from '../generated/ast';
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

/**
 * The offset from which a text has to be read to know where a cursor stands: that of the entry it
 * is in or behind, since nothing reaches over the start of an entry. What is read stays small in large files.
 */
export function readFrom(document: LangiumDocument, offset: number): number {
    const file = document.parseResult.value;
    const isCurrent = file.$cstNode?.root.fullText === document.textDocument.getText();
    if (!isFile(file) || !isCurrent) return 0;
    let start = 0;
    for (const { $cstNode } of [...file.uses, ...file.entries]) {
        if ($cstNode !== undefined && $cstNode.offset < offset) start = Math.max(start, $cstNode.offset);
    }
    return start;
}

/** Looks back from the end of a text, whatever it is like. */
export function standingAfter(before: string, lexer: Lexer): Standing {
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

const { STRING, COMMENT, BLOCK_COMMENT } = KerfTerminals;
const passage = new RegExp(
    `${STRING.source}|"[^\\n\\r]*|(?<comment>${COMMENT.source}|${BLOCK_COMMENT.source}|/\\*[^\\n\\r]*)`,
    'g',
);

/** Whether an offset lies inside a comment, where nothing is proposed. `from` lies in none. */
export function isInComment(text: string, from: number, offset: number): boolean {
    passage.lastIndex = from;
    for (let found = passage.exec(text); found !== null && found.index < offset; found = passage.exec(text)) {
        const comment = found.groups?.comment;
        if (comment === undefined || passage.lastIndex < offset) continue;
        return passage.lastIndex > offset || !comment.endsWith('*/');
    }
    return false;
}

function textOf(tokens: readonly Token[]): string {
    return tokens.map(({ image }) => image).join(' ');
}

function blockType(word: string, depth: number): string {
    const found = constructs.find((each) => each.word === word && (each.where === 'file') === (depth === 0));
    return found?.type ?? '';
}
