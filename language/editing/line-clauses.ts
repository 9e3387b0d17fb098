import { type AstNode, type CstNode, GrammarAST, isCompositeCstNode } from 'langium';
import * as ast from '../generated/ast';

/** A clause of a line, from its first word to its last. */
export interface Clause {
    /** Its first word; for a figure that needs none, what it is. */
    readonly word: string;
    /** Where it stands among the clauses as they are laid out. */
    readonly rank: number;
    readonly parts: CstNode[];
}

const ofArt = ['inverse', 'at', 'turned', 'repeat'];
const ofRun = ['power', 'at', 'x', 'pitch', 'planned', 'depth', 'tone', 'through', 'width'];
const ofSquare = ['at', 'x', 'gives'];
/** The width of the back stands right behind that of the face. */
const ofCutTest = ['at', 'x', 'thickness', 'gives', 'kerf', 'strip', 'fits'];

/** The words with which clauses of such a line begin, in the order in which they are laid out; undefined for a line that has none. */
export function clauseOrder(node: AstNode): readonly string[] | undefined {
    if (ast.isArtUse(node) || ast.isShape(node)) return ofArt;
    if (ast.isBurnt(node)) return ofRun;
    if (ast.isBurn(node)) return ofSquare;
    return ast.isCutTest(node) ? ofCutTest : undefined;
}

/** The same by the kind of the line. */
export function clauseOrderOf(type: 'Burn' | 'CutTest'): readonly string[] {
    return type === 'Burn' ? ofSquare : ofCutTest;
}

/** The clauses of a line in the order in which they stand, and what stands before them. */
export function clausesOf(node: AstNode): { readonly before: readonly CstNode[]; readonly clauses: readonly Clause[] } {
    const order = clauseOrder(node) ?? [];
    const before: CstNode[] = [];
    const clauses: Clause[] = [];
    for (const child of partsOf(node.$cstNode)) {
        const word = headOf(child, node);
        const rank = word === undefined ? -1 : order.indexOf(word);
        if (word !== undefined && rank >= 0) clauses.push({ word, rank, parts: [child] });
        else (clauses.at(-1)?.parts ?? before).push(child);
    }
    return { before, clauses };
}

/** The word with which a part begins a clause. */
function headOf(child: CstNode, node: AstNode): string | undefined {
    if (isCompositeCstNode(child)) {
        if (ast.isRepeat(child.astNode)) return 'repeat';
        return ast.isBurnt(node) && node.power !== undefined && assigns(child) === 'power' ? 'power' : undefined;
    }
    const written = child.text === '×' ? 'x' : child.text;
    return child.grammarSource?.$type === 'Keyword' ? written : undefined;
}

/** Which part of the tree a part of the text became. */
function assigns({ grammarSource }: CstNode): string | undefined {
    for (let at: { readonly $container?: unknown } | undefined = grammarSource; at !== undefined; ) {
        if (GrammarAST.isAssignment(at)) return at.feature;
        at = at.$container as { readonly $container?: unknown } | undefined;
    }
    return undefined;
}

/** The words and parts of a line, out of the rules that only lead to its own. */
function partsOf(cst: CstNode | undefined): readonly CstNode[] {
    if (!isCompositeCstNode(cst)) return [];
    return cst.content.flatMap((child) =>
        isCompositeCstNode(child) && child.astNode === cst.astNode ? partsOf(child) : [child],
    );
}
