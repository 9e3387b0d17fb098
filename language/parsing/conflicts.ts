/**
 * A place that git could not merge, between its markers, as git-merge(1) writes them: `<<<<<<<`, with the base in some styles
 * `|||||||`, `=======`, `>>>>>>>`, each at the start of a line.
 */
export interface Conflict {
    /** From the first marker up to the line behind the last. */
    readonly offset: number;
    readonly end: number;
    /** The first marker's line. */
    readonly marker: string;
    /** What stood on either side, whole lines. */
    readonly first: Side;
    readonly second: Side;
}

interface Side {
    readonly offset: number;
    readonly text: string;
    /** What git calls it: a branch, a commit; may be empty. */
    readonly name: string;
}

const whole =
    /^<{7}(?<firstName>(?: [^\r\n]*)?)\r?\n(?<first>(?:(?!<{7}|>{7}|={7}|\|{7}).*\r?\n)*)(?:\|{7}.*\r?\n(?:(?!<{7}|>{7}|={7}).*\r?\n)*)?={7}\r?\n(?<second>(?:(?!<{7}|>{7}|={7}).*\r?\n)*)>{7}(?<secondName>(?: [^\r\n]*)?)(?:\r?\n|$)/gm;

/** The conflicts of a text in order. Markers that do not belong together are left to the parser. O(n). */
export function conflictsIn(text: string): Conflict[] {
    if (!text.includes('<<<<<<<')) return [];
    return [...text.matchAll(whole)].map((match) => {
        const { first = '', second = '', firstName = '', secondName = '' } = match.groups ?? {};
        const firstAt = match.index + match[0].indexOf('\n') + 1;
        const last = match[0].lastIndexOf('>>>>>>>');
        return {
            offset: match.index,
            end: match.index + match[0].length,
            marker: `<<<<<<<${firstName}`,
            first: { offset: firstAt, text: first, name: firstName.trim() },
            second: { offset: match.index + last - second.length, text: second, name: secondName.trim() },
        };
    });
}

/**
 * The text as it is read, every place where it was: of a conflict nothing, or where its sides open or close a block the
 * braces and what is between them of the first, since the lines behind it count on them. What is said of those is dropped.
 */
export function withoutConflicts(text: string, conflicts: readonly Conflict[]): string {
    let read = text;
    for (const { offset, end, first } of conflicts) {
        const kept = isBalanced(first.text) ? '' : first.text;
        const before = blank(text.slice(offset, first.offset));
        const after = blank(text.slice(first.offset + kept.length, end));
        read = read.slice(0, offset) + before + kept + after + read.slice(end);
    }
    return read;
}

function blank(text: string): string {
    return text.replaceAll(/[^\r\n]/g, ' ');
}

function isBalanced(text: string): boolean {
    let depth = 0;
    for (const [brace] of text.replaceAll(/"[^"\n]*"|\/\/.*/g, '').matchAll(/[{}]/g)) {
        depth += brace === '{' ? 1 : -1;
        if (depth < 0) return false;
    }
    return depth === 0;
}
