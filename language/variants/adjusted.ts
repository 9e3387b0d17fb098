import type { AstNode } from 'langium';
import { KeptOn } from '../../shared/plan/kept';
import { isAllow, isPlaces, isWithout, type Without } from '../generated/ast';
import { itemKey } from '../vocabulary/item-key';
import { saysNo } from '../vocabulary/no';

type Block = AstNode & { readonly items?: readonly AstNode[] };

const sources = new KeptOn<AstNode, { readonly own: AstNode; readonly base: AstNode }>();
const burnt = new Set(['art', 'circle', 'rectangle']);

/**
 * A block of a variant laid over the one of its base: it reads like a node of the tree, stands where
 * the variant's stands, and says what the base says wherever the variant says nothing.
 */
export function adjusted<T extends AstNode>(own: T, base: T): T {
    const node: T = Object.create(own);
    const said = isPlaces(own) && (own.grid !== undefined || own.at.length > 0) ? ['grid', 'at'] : [];
    for (const key of fieldsOf(base)) {
        if (!isGiven(field(own, key)) && !said.includes(key)) put(node, key, field(base, key));
    }
    put(node, 'items', lines((own as Block).items ?? [], (base as Block).items ?? []));
    sources.set(node, { own, base });
    return node;
}

/** What a block says besides its lines, also where it was itself laid over another. */
function fieldsOf(node: AstNode): string[] {
    const names: string[] = [];
    for (const key in node) if (!key.startsWith('$') && key !== 'items') names.push(key);
    return names;
}

function field(node: AstNode, key: string): unknown {
    return (node as unknown as Record<string, unknown>)[key];
}

function put(node: AstNode, key: string, value: unknown): void {
    Object.defineProperty(node, key, { value, enumerable: true });
}

function isGiven(value: unknown): boolean {
    return value !== undefined && !(Array.isArray(value) && value.length === 0);
}

/** The node that really wrote a field of a block: the variant's, or the one of a base. */
export function writerOf<T extends AstNode>(node: T, key: string): T {
    const from = sources.get(node);
    if (from === undefined) return node;
    return isGiven(field(from.own, key)) ? (from.own as T) : writerOf(from.base as T, key);
}

/** The blocks that a block is made of: what the variant writes before what it is laid over. */
export function writersOf(node: AstNode): readonly AstNode[] {
    const from = sources.get(node);
    return from === undefined ? [node] : [...writersOf(from.own), ...writersOf(from.base)];
}

/** The lines of both: those of the variant, and of the base what is neither said anew nor left out. */
function lines(own: readonly AstNode[], base: readonly AstNode[]): AstNode[] {
    const said = new Set(own.filter((line) => !isWithout(line)).flatMap(saidBy));
    const leftOut = new Set(own.filter(isWithout).flatMap(saidBy));
    const kept = base.filter(
        (line) => !saidBy(line).some((key) => said.has(key)) && !(leftOut.size > 0 && isLeftOut(line, leftOut)),
    );
    return [...own.filter((line) => !isWithout(line) || saysNo(line)), ...kept];
}

/** Whether a line of a variant that leaves something out finds it in the block of its base. */
export function findsWhatItLeavesOut(line: Without, base: AstNode): boolean {
    const leftOut = new Set(saidBy(line));
    return ((base as Block).items ?? []).some((each) => isLeftOut(each, leftOut));
}

/** By its own word alone: `take` is a figure of its own, though `flush` settles it, too, and so are depth and tone. */
function isLeftOut(line: AstNode, leftOut: ReadonlySet<string>): boolean {
    const [own = ''] = saidBy(line);
    return leftOut.has(own);
}

/** What a line settles, its own word first: of what is burnt all together, of exceptions one by one. */
function saidBy(line: AstNode): string[] {
    if (isAllow(line)) return [`allow ${line.rule}`];
    if (isWithout(line)) return [line.rule === undefined ? (line.key ?? '') : `allow ${line.rule}`];
    const key = itemKey(line);
    if (key === undefined) return [];
    if (burnt.has(key)) return ['art'];
    if (key === 'depth') return ['depth', 'tone'];
    if (key === 'tone') return ['tone', 'depth'];
    return key === 'flush' ? ['flush', 'take'] : [key];
}
