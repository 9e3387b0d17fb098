/** Words that only join the parts of a line, by the type of the line. */
const words: Readonly<Record<string, string>> = {
    'Size x': 'Between width and height.',
    'Burnt of': 'Before the board or veneer it was burnt in.',
    'Burnt x': 'How many passes it was given.',
    'Repeat repeat': 'Copies on a grid about the same middle: how many beside one another, and how many below.',
    'Repeat x': 'Between columns and rows.',
    'Burn x': 'How many passes the square was given.',
    'Engrave on': 'Before the blank that is engraved.',
    'Cut on': 'Before the blank that is cut.',
    'Recipe based': 'Before the recipe of which this is a variant: only what differs is written.',
    'Recipe on': 'Before the recipe of which this is a variant: only what differs is written.',
    'Coupon on': 'Before the laser that burnt it.',
    'Seal with': 'Before the sealer.',
    'Fill with': 'Before the resin.',
    'Finish with': 'Before the oil, wax or lacquer.',
    'Inlay into': 'Before the pocket that the relief is glued into.',
    'FluidPrice of': 'Before what the price is for, where it is not the resin itself.',
    'FluidPrice pigment': 'The price is for its pigment.',
    'FluidPrice powder': 'The price is for its metal powder.',
    'ShopPrice of': 'Before what the price is for.',
    'ShopPrice foil': 'Foil tape behind veneer.',
    'ShopPrice tape': 'Masking tape, and tape behind veneer.',
    'ShopPrice abrasive': 'Abrasive paper, of any grit.',
    'Quantity sheet': 'As it is bought: whole sheets.',
    'WholeBlank blank': 'Up to the edge of the blank: all of it burns but the art.',
};

/** What a joining word stands before, or undefined where it is none. */
export function joiningWord(type: string, word: string): string | undefined {
    return words[`${type} ${word}`];
}

/** All words that may join the parts of a line of that type. */
export function joiningWords(type: string): string[] {
    return Object.keys(words).flatMap((key) =>
        key.startsWith(`${type} `) && key.length > type.length + 2 ? [key.slice(type.length + 1)] : [],
    );
}
