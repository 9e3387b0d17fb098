import { type AstNode, type CstNode, isCompositeCstNode, isLeafCstNode } from 'langium';
import * as ast from '../generated/ast';
import { knownAs } from '../variants/same-step';
import { itemKey } from '../vocabulary/item-key';

/** A statement with all that stands before it. The pieces of a text, laid end to end, are the text. */
export interface Piece {
    readonly type: string;
    /** By what it is known again in another version; several may have the same. */
    readonly key: string;
    /** The same without what may be changed in it, such as a step's own name. */
    readonly looseKey: string;
    readonly name?: string;
    /** What it was called before. */
    readonly was: readonly string[];
    /** Whether its place among others of its kind has a meaning. */
    readonly isOrdered: boolean;
    /** Whether two of that key may stand beside each other. */
    readonly isRepeatable: boolean;
    /** Blanks and comments before it, behind the piece before. */
    readonly lead: string;
    readonly text: string;
    /** The rest of its line, where nothing else stands on it. */
    readonly trail: string;
    /** Whether it begins right behind a line break, or the text; and whether its line ends with it. */
    readonly startsLine: boolean;
    readonly endsLine: boolean;
    readonly block?: Block;
}

/** The text of a statement with braces, divided. */
export interface Block {
    /** Up to its opening brace, and the rest of that line where no statement stands on it. */
    readonly head: string;
    readonly body: readonly Piece[];
    /** From behind its last statement to its closing brace. */
    readonly tail: string;
}

/** A whole file; `text` holds no carriage returns. Needs a tree without errors. */
export function blockOfFile(file: ast.File, text: string): Block {
    const statements: Statement[] = [...file.uses, ...file.entries].map((node) => ({
        node,
        from: startOf(node),
        to: endOf(node),
    }));
    const edition = editionOf(file.$cstNode);
    if (edition !== undefined) statements.push({ node: file, ...edition });
    return { head: '', ...cut(statements, text, 0, text.length) };
}

interface Statement {
    readonly node: AstNode;
    readonly from: number;
    readonly to: number;
}

function editionOf(root: CstNode | undefined): { from: number; to: number } | undefined {
    if (root === undefined || !isCompositeCstNode(root)) return undefined;
    const leaves = root.content.filter((each) => isLeafCstNode(each) && !each.hidden);
    const [first, second] = leaves;
    return first?.text === 'edition' && second !== undefined ? { from: first.offset, to: second.end } : undefined;
}

function cut(statements: readonly Statement[], text: string, from: number, to: number): Pick<Block, 'body' | 'tail'> {
    const body: Piece[] = [];
    let at = from;
    for (const { node, from: start, to: end } of statements.toSorted((a, b) => a.from - b.from)) {
        const trail = restOfLine(text, end);
        const block = ast.isFile(node) ? undefined : blockOf(node, text, start, end);
        body.push({
            ...identityOf(node),
            lead: text.slice(at, start),
            text: text.slice(start, end),
            trail,
            startsLine: at === 0 || text[at - 1] === '\n',
            endsLine: trail.endsWith('\n') || end + trail.length === text.length,
            ...(block !== undefined && { block }),
        });
        at = end + trail.length;
    }
    return { body, tail: text.slice(at, to) };
}

/** Blanks, a comment and the line break; nothing where something else follows on the line. */
function restOfLine(text: string, from: number): string {
    const rest = /[ \t]*(?:\/\/[^\n]*|\/\*(?:(?!\*\/)[^\n])*\*\/[ \t]*)?(?:\n|$)/y;
    rest.lastIndex = from;
    return rest.exec(text)?.[0] ?? '';
}

function blockOf(node: AstNode, text: string, from: number, to: number): Block | undefined {
    const braces = bracesOf(node.$cstNode, node);
    const [open, close] = [braces.find(({ text: image }) => image === '{'), braces.findLast(({ text: image }) => image === '}')];
    if (open === undefined || close === undefined || close.end !== to) return undefined;
    const items = ((node as { items?: AstNode[] }).items ?? []).map((item) => ({
        node: item,
        from: startOf(item),
        to: endOf(item),
    }));
    const begin = open.end + restOfLine(text, open.end).length;
    const inside = cut(items, text, begin, close.offset);
    return { head: text.slice(from, begin), body: inside.body, tail: inside.tail + text.slice(close.offset, to) };
}

function bracesOf(cst: CstNode | undefined, owner: AstNode): CstNode[] {
    if (cst === undefined || !isCompositeCstNode(cst) || cst.astNode !== owner) return [];
    return cst.content.flatMap((child) => (isLeafCstNode(child) && /^[{}]$/.test(child.text) ? [child] : bracesOf(child, owner)));
}

function startOf(node: AstNode): number {
    return node.$cstNode?.offset ?? 0;
}

function endOf(node: AstNode): number {
    return node.$cstNode?.end ?? 0;
}

type Identity = Pick<Piece, 'type' | 'key' | 'looseKey' | 'name' | 'was' | 'isOrdered' | 'isRepeatable'>;

function identityOf(node: AstNode): Identity {
    const { $type: type } = node;
    const own = (node as { name?: unknown }).name;
    const name = typeof own === 'string' ? own : undefined;
    const isOrdered = ast.isStep(node) || ast.isInserted(node);
    const called = ast.isStep(node) && name === undefined;
    return {
        type,
        key: `${type} ${keyOf(node, name)}`,
        looseKey: called ? `${type} ${looseStep(node)}` : `${type} ${keyOf(node, name)}`,
        ...(name !== undefined && { name }),
        was: ((node as { items?: AstNode[] }).items ?? []).filter(ast.isWas).flatMap(({ names }) => names),
        isOrdered,
        isRepeatable: called || ast.isInserted(node) || repeatable.has(type),
    };
}

/** Statements of which a block may hold two alike; of any other two are a contradiction. */
const repeatable: ReadonlySet<string> = new Set([
    'Run',
    'Order',
    'Wanted',
    'Note',
    'ArtUse',
    'Shape',
    'Burn',
    'CutTest',
    'Over',
    'OnHand',
    'Offcut',
]);

function looseStep(step: ast.Step): string {
    const { kind, of } = knownAs(step);
    return kind === 'wait' || kind === 'do' ? kind : `${kind} ${of}`;
}

/** Of entries of a file without a name of their own, and of what an order wants. */
function entryKey(node: AstNode): string | undefined {
    if (ast.isFile(node)) return 'edition';
    if (ast.isUse(node)) return node.path;
    if (ast.isRun(node)) return `${node.recipe?.$refText} ${node.date}`;
    if (ast.isOrder(node)) return `${node.date} ${node.whom ?? ''}`;
    if (ast.isCoupon(node)) return `${node.sheet?.$refText} on ${node.laser?.$refText}`;
    if (ast.isWanted(node)) return node.recipe?.$refText ?? '';
    return undefined;
}

function keyOf(node: AstNode, name: string | undefined): string {
    const entry = entryKey(node);
    if (entry !== undefined) return entry;
    if (name !== undefined) return name;
    if (ast.isStep(node)) return JSON.stringify(knownAs(node));
    if (ast.isAllow(node)) return node.rule;
    if (ast.isArtUse(node)) return node.art?.$refText ?? '';
    if (ast.isBurnt(node)) return `${node.step?.$refText} of ${node.sheet?.$refText ?? ''}`;
    if (ast.isBurn(node) || ast.isCutTest(node))
        return [node.power, node.speed].map((each) => each?.$cstNode?.text ?? '').join(' ');
    if (ast.isWithout(node)) return node.$cstNode?.text ?? '';
    if (ast.isInserted(node)) return `${node.place} ${node.step?.$cstNode?.text ?? ''}`;
    return itemKey(node) ?? '';
}
