import type { AstNode } from 'langium';
import { writersOf } from '../variants/adjusted';

/**
 * What a maker says of a thing for others to read: the lines that begin with `///` right above it, as paragraphs. A block of a variant
 * says what its base says where it says nothing itself. Undefined where nothing is said.
 */
export function aboutOf(node: AstNode): string | undefined {
    for (const each of writersOf(node)) {
        const text = paragraphs(commentLinesAbove(each).flatMap((line) => aboutLine(line) ?? []));
        if (text !== '') return text;
    }
    return undefined;
}

/** The words of a line of comment that is meant for others; undefined for one that is private. */
export function aboutLine(line: string): string | undefined {
    const found = /^\/\/\/(?!\/)\s?(.*)$/.exec(line);
    return found?.[1]?.trim();
}

/** The lines of comment right above a node, as they are written, without what stands before them. */
export function commentLinesAbove(node: AstNode): string[] {
    const cst = node.$cstNode;
    if (cst === undefined) return [];
    const text = cst.root.fullText;
    const start = text.lastIndexOf('\n', cst.offset - 1);
    if (text.slice(start + 1, cst.offset).trim() !== '') return [];
    const comment: string[] = [];
    // Backwards, a line at a time: what stands far above is of no interest.
    for (let end = start; end > 0; ) {
        const before = text.lastIndexOf('\n', end - 1);
        const line = text.slice(before + 1, end).trim();
        if (!line.startsWith('//')) break;
        comment.unshift(line);
        end = before;
    }
    return comment;
}

function paragraphs(lines: readonly string[]): string {
    const out: string[] = [];
    for (const line of lines) {
        if (line === '') out.push('');
        else if (out.length === 0 || out.at(-1) === '') out.push(line);
        else out.push(`${out.pop()} ${line}`);
    }
    return out.filter((each) => each !== '').join('\n');
}
