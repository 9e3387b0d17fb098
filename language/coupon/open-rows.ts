/** A square that was burnt and not yet measured: a comment `// burn 40 % at 400 mm/s gives … mm  // square 7` in a coupon block. */
export interface OpenRow {
    /** `burn 40 % at 400 mm/s x 3`, with single blanks. */
    readonly words: string;
    /** The number burnt beside the square, where it is written. */
    readonly number?: number;
    /** The comment in the text, slashes and number included. */
    readonly offset: number;
    readonly length: number;
}

/** No digit behind `gives` but the square's number: with a depth it is a row that somebody took out. */
const openRow = /\/\/[ \t]*(burn[ \t][^\r\n]*?)[ \t]+gives\b[^\r\n\d]*?(?:\/\/[ \t]*square[ \t]+(\d{1,4})[ \t]*)?$/gm;

/** The open rows of a text between two offsets. */
export function openRows(text: string, from = 0, to = text.length): OpenRow[] {
    return [...text.slice(from, to).matchAll(openRow)].map((found) => ({
        words: (found[1] ?? '').trim().replaceAll(/\s+/g, ' '),
        ...(found[2] === undefined ? {} : { number: Number(found[2]) }),
        offset: from + found.index,
        length: found[0].length,
    }));
}
