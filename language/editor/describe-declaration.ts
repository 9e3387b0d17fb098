import { type AstNode, AstUtils } from 'langium';
import { isBuiltIn } from '../built-in';
import {
    type Coat,
    type Glue,
    isCoat,
    isGlue,
    isKind,
    isLaser,
    isMasking,
    isResin,
    isSealer,
    isWood,
    type Masking,
    type Resin,
    type Sealer,
    type Wood,
} from '../generated/ast';
import { aboutOf, commentLinesAbove } from '../lowering/about';
import { foldKey, kindReference } from '../lowering/kinds';
import { describeLaser } from './describe-laser';

/** Longer declarations are cut: a hover is read at a glance. */
const mostLines = 24;

/** What a name stands for: its declaration as it is written, what it is like, and the comment above it. */
export function describeDeclaration(node: AstNode): string {
    const parts = [codeBlock(declarationText(node))];
    const comment = commentAbove(node);
    if (comment !== '') parts.push(comment);
    parts.push(...sources(AstUtils.streamContents(node)));
    if (hasKind(node)) parts.push(...inherited(node));
    if (isLaser(node)) parts.push(describeLaser(node));
    return parts.join('\n\n');
}

/** Where the figures of built-in stock come from: what stands above each, under its word. */
function sources(items: Iterable<AstNode>): string[] {
    const lines = [...items].flatMap((item) => {
        const comment = isBuiltIn(AstUtils.getDocument(item).uri.toString()) ? commentAbove(item) : '';
        const [word] = item.$cstNode?.text.split(/\s/, 1) ?? [];
        return comment === '' || word === undefined ? [] : [`- \`${word}\`: ${comment}`];
    });
    return lines.length === 0 ? [] : [lines.join('\n')];
}

type OfKind = Resin | Sealer | Glue | Coat | Masking | Wood;

function hasKind(node: AstNode | undefined): node is OfKind {
    return isWood(node) || isResin(node) || isSealer(node) || isGlue(node) || isCoat(node) || isMasking(node);
}

/** The lines that hold here because of its kind, nearest kind first. A circle of kinds ends where it closes. */
function inherited(node: OfKind): string[] {
    const seen = new Set<AstNode>([node]);
    const written = new Set(keysOf(node));
    const parts: string[] = [];
    for (let base = kindReference(node)?.ref; hasKind(base) && !seen.has(base); base = kindReference(base)?.ref) {
        seen.add(base);
        const lines = base.items.filter((item) => !isKind(item) && !written.has(foldKey(item) ?? ''));
        for (const key of keysOf(base)) written.add(key);
        const text = lines.map(({ $cstNode }) => $cstNode?.text ?? '').join('\n');
        if (text !== '') parts.push(`Like \`${base.name}\` where nothing else is written:`, codeBlock(text), ...sources(lines));
    }
    return parts;
}

function keysOf({ items }: OfKind): string[] {
    return items.flatMap((item) => foldKey(item) ?? []);
}

/** What of a line stands before its comment: two slashes in a text in quotes begin none. */
const beforeComment = /^((?:[^"/]|"(?:\\.|[^"\\])*"|\/(?!\/))*)\/\/.*$/;

/** The declaration without the comments inside it, its lines moved to the left edge. */
function declarationText(node: AstNode): string {
    const lines = (node.$cstNode?.text ?? '')
        .split(/\r?\n/)
        .map((line) => line.replace(beforeComment, '$1').trimEnd())
        .filter((line, index) => index === 0 || line.trim() !== '');
    const indent = Math.min(...lines.slice(1).map((line) => line.length - line.trimStart().length), 80);
    const moved = lines.map((line, index) => (index === 0 ? line.trim() : line.slice(indent)));
    return moved.length <= mostLines ? moved.join('\n') : [...moved.slice(0, mostLines), '…'].join('\n');
}

/** What is said of a declaration for others, else the comment above it; for built-in stock that names the source. */
function commentAbove(node: AstNode): string {
    const own = commentLinesAbove(node).map((line) => line.replace(/^\/\/+/, '').trim());
    return escaped(aboutOf(node) ?? own.join(' '));
}

/** A maker's own words as Markdown that says just those, a paragraph a line. */
export function escaped(text: string): string {
    return text.replace(/[\\`*_<>[\]#]/g, '\\$&').replaceAll('\n', '\n\n');
}

function codeBlock(text: string): string {
    return `\`\`\`kerfbook\n${text.replaceAll('```', "'''")}\n\`\`\``;
}
