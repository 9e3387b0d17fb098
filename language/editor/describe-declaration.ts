import type { AstNode } from 'langium';
import { isCoat, isGlue, isResin, isSealer } from '../generated/ast';
import { kindReference } from '../lowering/stock';

/** Longer declarations are cut: a hover is read at a glance. */
const mostLines = 24;

/** What a name stands for: its declaration as it is written, what it is like, and the comment above it. */
export function describeDeclaration(node: AstNode): string {
    const parts = [codeBlock(declarationText(node))];
    const comment = commentAbove(node);
    if (comment !== '') parts.push(comment);
    if (isResin(node) || isSealer(node) || isGlue(node) || isCoat(node)) {
        const base = kindReference(node)?.ref;
        if (base !== undefined && base !== node)
            parts.push(`Like \`${base.name}\` where nothing else is written:`, codeBlock(declarationText(base)));
    }
    return parts.join('\n\n');
}

/** The declaration without the comments inside it, its lines moved to the left edge. */
function declarationText(node: AstNode): string {
    const lines = (node.$cstNode?.text ?? '')
        .split(/\r?\n/)
        .map((line) => line.replace(/\s*\/\/.*$/, ''))
        .filter((line, index) => index === 0 || line.trim() !== '');
    const indent = Math.min(...lines.slice(1).map((line) => line.length - line.trimStart().length), 80);
    const moved = lines.map((line, index) => (index === 0 ? line.trim() : line.slice(indent)));
    return moved.length <= mostLines ? moved.join('\n') : [...moved.slice(0, mostLines), '…'].join('\n');
}

/** The lines of comment right above a declaration; for built-in stock they name the source. */
function commentAbove(node: AstNode): string {
    const cst = node.$cstNode;
    if (cst === undefined) return '';
    const before = cst.root.fullText.slice(0, cst.offset).split(/\r?\n/);
    before.pop(); // what stands before it on its own line
    const comment: string[] = [];
    for (let line = before.pop()?.trim(); line?.startsWith('//'); line = before.pop()?.trim())
        comment.unshift(line.slice(2).trim());
    return comment.join(' ').replace(/[\\`*_<>[\]#]/g, '\\$&');
}

function codeBlock(text: string): string {
    return `\`\`\`kerf\n${text.replaceAll('```', "'''")}\n\`\`\``;
}
