/** A square that was burnt and not yet measured: a comment `// burn 40 % at 400 mm/s gives … mm` in a coupon block. */
export interface OpenRow {
    /** `burn 40 % at 400 mm/s x 3`, with single blanks. */
    readonly words: string;
    /** The comment in the text, slashes included. */
    readonly offset: number;
    readonly length: number;
}

/** No digit behind `gives`: with one it is a row that somebody took out. */
const openRow = /\/\/[ \t]*(burn[ \t][^\r\n]*?)[ \t]+gives\b[^\r\n\d]*$/gm;

/** The open rows of a text between two offsets. */
export function openRows(text: string, from = 0, to = text.length): OpenRow[] {
    return [...text.slice(from, to).matchAll(openRow)].map((found) => ({
        words: (found[1] ?? '').trim().replaceAll(/\s+/g, ' '),
        offset: from + found.index,
        length: found[0].length,
    }));
}
