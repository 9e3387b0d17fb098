/** Words that only join the parts of a line, by the type of the line. */
const words: Readonly<Record<string, string>> = {
    'Size x': 'Between width and height.',
    'Burn x': 'How many passes the square was given.',
    'Engrave on': 'Before the blank that is engraved.',
    'Cut on': 'Before the blank that is cut.',
    'Coupon on': 'Before the laser that burnt it.',
    'Seal with': 'Before the sealer.',
    'Fill with': 'Before the resin.',
    'Finish with': 'Before the oil, wax or lacquer.',
    'Inlay into': 'Before the pocket that the relief is glued into.',
    'WholeBlank blank': 'Up to the edge of the blank: all of it burns but the art.',
};

/** What a joining word stands before, or undefined where it is none. */
export function joiningWord(type: string, word: string): string | undefined {
    return words[`${type} ${word}`];
}
