import type { NodeType } from './property';

/** A word inside a statement, or the one that begins it: what it stands for, and what comes right behind it. */
interface Joint {
    /** The kind of statement: a type in the syntax tree. */
    readonly type: NodeType;
    readonly word: string;
    /** Absent for the first word, which the statement's own entry explains. */
    readonly what?: string;
    /** In a maker's words: `the name of a blank`. */
    readonly follows?: string;
    /** What holds where it is not written. */
    readonly otherwise: string;
}

function joint(type: NodeType, word: string, what: string, follows?: string, otherwise = 'needed'): Joint {
    return { type, word, what, otherwise, ...(follows !== undefined && { follows }) };
}

function head(type: NodeType, word: string, follows: string): Joint {
    return { type, word, follows, otherwise: 'needed' };
}

const aBlank = 'the name of a blank';

/** Words that join the parts of a line, and the first words of statements that a name or a text follows. */
export const joints: readonly Joint[] = [
    head('File', 'edition', 'the year of the edition, such as `2026`'),
    head('Use', 'use', 'a path in quotes, such as `"workshop.kerf"`'),
    joint(
        'Recipe',
        'based',
        'Before the recipe of which this is a variant: only what differs is written.',
        undefined,
        'it stands by itself',
    ),
    joint(
        'Recipe',
        'on',
        'Before the recipe of which this is a variant: only what differs is written.',
        'the name of the recipe it is based on',
    ),
    head('Lot', 'lot', 'a name for what was bought together'),
    joint(
        'Material',
        'lot',
        'Before the lot of the board or veneer: its measured thickness counts.',
        'the name of a lot of it',
        'what is said of the board or veneer itself',
    ),
    joint(
        'Burnt',
        'lot',
        'Before the lot of the board or veneer that was burnt.',
        'the name of a lot of it',
        'what is said of the board or veneer itself',
    ),
    head('Coupon', 'coupon', 'the name of a board or veneer'),
    joint('Coupon', 'on', 'Before the laser that burnt it.', 'the name of a laser'),
    head('Run', 'run', 'the name of a recipe'),
    head('Routine', 'routine', 'a name for this routine'),
    joint('Routine', 'for', 'Before the name that stands for the blank in the steps below.', 'a name such as `piece`'),
    head('Follow', 'follow', 'the name of a routine'),
    joint('Follow', 'on', 'Before the blank on which the steps of the routine are done.', aBlank),
    head('Engrave', 'engrave', 'a name for this step'),
    joint('Engrave', 'on', 'Before the blank that is engraved.', aBlank),
    head('Cut', 'cut', 'a name for this step'),
    joint('Cut', 'on', 'Before the blank that is cut.', aBlank),
    head('Seal', 'seal', aBlank),
    joint('Seal', 'with', 'Before the sealer.', 'the name of a sealer'),
    head('Fill', 'fill', 'the name of the engraving to fill'),
    joint('Fill', 'with', 'Before the resin.', 'the name of a resin'),
    head('Inlay', 'inlay', 'the name of the engraving or cut that goes in'),
    joint('Inlay', 'into', 'Before the pocket or cut-through opening.', 'the name of the engraving or cut it goes into'),
    head('Peel', 'peel', aBlank),
    head('Sand', 'sand', aBlank),
    head('Finish', 'finish', aBlank),
    joint('Finish', 'with', 'Before the oil, wax or lacquer.', 'the name of a finish'),
    head('Mask', 'mask', aBlank),
    joint('Mask', 'with', 'Before the tape or film.', 'the name of a masking', 'ordinary masking tape'),
    head('Flip', 'flip', aBlank),
    joint(
        'Found',
        'of',
        'Before the step that burnt or cut it.',
        'the name of an engraving or cut',
        'it is none of this recipe’s work',
    ),
    head('Check', 'check', 'the name of the step to measure'),
    head('Do', 'do', 'what is to be done, in quotes'),
    ...(
        ['StepAt', 'Seal', 'Fill', 'Inlay', 'Wait', 'Peel', 'Sand', 'Finish', 'Mask', 'Flip', 'Check', 'Do', 'Follow'] as const
    ).map((step) =>
        joint(
            step,
            'called',
            'Before a name of this one step, by which a variant can point at it.',
            'a name for this step',
            'none',
        ),
    ),
    joint(
        'ArtUse',
        'but',
        'Before the parts that are left out of what is picked.',
        'a part such as `#keel` or `.sky`',
        'nothing is left out',
    ),
    joint('Size', 'x', 'Between width and height.'),
    head('Places', 'places', 'a name for these places'),
    joint('Places', 'on', 'Before the blank on which they lie.', aBlank, 'that of each line that uses them'),
    joint('Places', 'and', 'Before one more place.', 'a place such as `280, 20 mm`', 'none'),
    joint(
        'Repeat',
        'repeat',
        'Copies on a grid about the same middle: how many beside one another, and how many below.',
        undefined,
        'one',
    ),
    joint('Repeat', 'x', 'Between columns and rows.'),
    joint('Burn', 'x', 'How many passes the square was given.', undefined, '1'),
    joint('Depth', 'after', 'How many passes it was given so far, with the settings that the recipe gives the whole depth.'),
    joint('CutTest', 'x', 'How many passes the cut was given.', undefined, '1'),
    joint('CutTest', 'through', 'The cut came through all along.'),
    joint('CutTest', 'skin', 'The cut left a skin, somewhere at least.'),
    joint(
        'Burnt',
        'engrave',
        'Before the name of an engraving that is called like a word of the run.',
        'the name of a step',
        'none',
    ),
    joint('Burnt', 'cut', 'Before the name of a cut that is called like a word of the run.', 'the name of a step', 'none'),
    joint(
        'Burnt',
        'of',
        'Before the board or veneer it was burnt in.',
        'the name of a board or veneer',
        'as the recipe says, where the run is of its present issue',
    ),
    joint('Burnt', 'through', 'Whether it came through: `yes` or `no`.', undefined, 'none'),
    joint('Burnt', 'x', 'How many passes it was given.', undefined, '1'),
    joint('Over', 'never', 'It does not hold on that, however long one waits.'),
    joint('Over', 'once', 'Before what has to be done to that first.', '`sanded` or `wiped`', 'nothing'),
    joint('Over', 'sanded', 'It is sanded or scuffed dull.', undefined, 'nothing'),
    joint(
        'Over',
        'wiped',
        'It is wiped clean with a solvent: a `do` step before says so, `do "wipe with acetone" for 5 min`.',
        undefined,
        'nothing',
    ),
    joint('Figure', 'by', 'Before `volume`, of powder: its share of the room that it fills.', '`volume`', 'of the whole by mass'),
    joint('Figure', 'volume', 'The powder’s share of the room that it fills.', undefined, 'of the whole by mass'),
    joint('FluidPrice', 'of', 'Before what the price is for, where it is not the resin itself.', undefined, 'the resin itself'),
    joint('FluidPrice', 'pigment', 'The price is for its pigment.', undefined, 'the resin itself'),
    joint('FluidPrice', 'powder', 'The price is for its metal powder.', undefined, 'the resin itself'),
    joint('OnHand', 'of', 'Before the part of the resin that is meant.', undefined, 'the resin itself'),
    joint('OnHand', 'hardener', 'The second part of the mix.', undefined, 'the resin itself'),
    joint('OnHand', 'pigment', 'Its pigment.', undefined, 'the resin itself'),
    joint('OnHand', 'powder', 'Its metal powder.', undefined, 'the resin itself'),
    joint('Offcut', 'grain', 'Before the side along which its grain runs.', '`along width` or `along height`', 'the longer side'),
    joint('Offcut', 'along', 'Before the side along which its grain runs.', '`width` or `height`', 'the longer side'),
    joint('Offcut', 'width', 'Its grain runs along its width.', undefined, 'the longer side'),
    joint('Offcut', 'height', 'Its grain runs along its height.', undefined, 'the longer side'),
    joint('ShopPrice', 'of', 'Before what the price is for.'),
    joint('ShopPrice', 'foil', 'Foil tape behind veneer.'),
    joint('ShopPrice', 'tape', 'Masking tape, and tape behind veneer.'),
    joint('ShopPrice', 'abrasive', 'Abrasive paper, of any grit.'),
    joint('Quantity', 'sheet', 'As it is bought: whole sheets.', undefined, 'an area'),
    joint('WholeBlank', 'blank', 'Up to the edge of the blank: all of it burns but the art.'),
    head('Allow', 'because', 'the reason in quotes'),
];

const byPlace = new Map(joints.map((each) => [`${each.type} ${each.word}`, each]));

/** What a joining word stands before, or undefined where it is none. */
export function joiningWord(type: string, word: string): string | undefined {
    return byPlace.get(`${type} ${word}`)?.what;
}

/** All words that may join the parts of a line of that type. */
export function joiningWords(type: string): string[] {
    return joints.flatMap((each) => (each.type === type && each.what !== undefined && each.word.length > 1 ? [each.word] : []));
}

/** What comes behind a word of a statement of that type. */
export function comesBehind(type: string, word: string): string | undefined {
    return byPlace.get(`${type} ${word}`)?.follows;
}
