/** What one square was burnt with, as it is written in a recipe: `40 %`, `400 mm/s`; and the number burnt beside it. */
export interface SquareText {
    readonly number: number;
    readonly power: string;
    readonly speed: string;
    readonly passes: number;
}

export interface CouponText {
    readonly sheet: string;
    readonly laser: string;
    /** As it is written: `0.1 mm`. */
    readonly pitch: string;
}

/** A strip that is cut out of a drawn width. */
export interface StripText extends SquareText {
    /** As it is written: `6 mm`. */
    readonly drawn: string;
}

/** What stands in place of a depth that nobody has measured yet. */
const open = '… mm';

/** Plugs of a clearance ladder, all cut with the same settings. */
export interface LadderText extends Omit<SquareText, 'number'> {
    readonly first: number;
    readonly last: number;
}

/** A ladder whose plugs nobody has tried yet, as a comment. */
function openLadder({ first, last, ...settings }: LadderText): string {
    return `// ${burnWords(settings).replace(/^burn/, 'cut')} gives through fits ${open}  // plugs ${first} to ${last}`;
}

/** A strip that nobody has measured yet, as a comment. */
function openStrip({ number, drawn, ...settings }: StripText): string {
    const words = burnWords(settings).replace(/^burn/, 'cut');
    return `// ${words} gives through strip ${open} of ${drawn}  // strip ${number}`;
}

/** A square up to its depth: `burn 40 % at 400 mm/s x 3`. */
export function burnWords({ power, speed, passes }: Omit<SquareText, 'number'>): string {
    return `burn ${power} at ${speed}${passes > 1 ? ` x ${passes}` : ''}`;
}

/**
 * A measured square: `burn 40 % at 400 mm/s gives 0.09 mm`, and as a comment the number that is burnt beside it: `// square 7`.
 * With a number nothing may follow on the same line.
 */
export function burnRow(words: string, depth: string, number?: number): string {
    return `${words} gives ${depth}${number === undefined ? '' : `  // square ${number}`}`;
}

/** A coupon block as recipe text with these lines in it. */
export function couponBlock({ sheet, laser, pitch }: CouponText, lines: readonly string[]): string {
    return [`coupon ${sheet} on ${laser} {`, `  pitch ${pitch}`, ...lines.map((line) => `  ${line}`), '}', ''].join('\n');
}

/**
 * A recipe file that holds a coupon nobody has measured yet: each square is a comment, so that the file
 * can be read as it is, and becomes a row once a depth is written and the slashes are gone.
 */
export function openCouponFile(
    coupon: CouponText,
    squares: readonly SquareText[],
    uses: readonly string[],
    { strips = [], ladder }: { readonly strips?: readonly StripText[]; readonly ladder?: LadderText | undefined } = {},
): string {
    const head = uses.map((path) => `use "${path}"\n`).join('');
    const what = [
        '// Write the depth that you measured in place of the dots, and take the slashes before `burn` away.',
        ...(strips.length === 0
            ? []
            : [
                  '// Of a strip write the width that it came to, and `back 5.90 mm` behind it where its back was measured; of one that did not fall out `gives skin`.',
              ]),
        ...(ladder === undefined
            ? []
            : [
                  '// Of the plugs write how much larger all round the largest one is that went in; the page beside this file says it.',
              ]),
        '// What stays a comment is not measured and counts for nothing. The numbers are those burnt beside the squares.',
        '',
    ].join('\n');
    const words = squares.map(burnWords);
    const widest = Math.max(0, ...words.map(({ length }) => length));
    const rows = squares.map(({ number }, i) => `// ${burnRow((words[i] ?? '').padEnd(widest), open, number)}`);
    return `${head === '' ? '' : `${head}\n`}${what}${couponBlock(coupon, [...rows, ...strips.map(openStrip), ...(ladder === undefined ? [] : [openLadder(ladder)])])}`;
}
