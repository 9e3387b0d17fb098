import { measure, type NodeType, positive, property, share, signed } from './property';

// Lines that several kinds of steps can have, each written once.

export const countOf = (low: number, high: number) => ({ measures: [measure('count', [low, high], [low, 1e6])] });

export const allow = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'allow',
        'phrase',
        'Silences one rule here, with the reason beside it.',
        'allow not-mirrored because "the leaf is symmetrical"',
        { many: true, node: 'Allow', follows: 'the id of a rule', otherwise: 'none' },
    );

const power = <Block extends NodeType>(block: Block) =>
    property(block, 'power', 'figure', 'Share of full power; worked out from the coupon when it is not written.', 'power 40 %', {
        measures: [share(), measure('power', [0.05, 500])],
        otherwise: 'worked out',
    });
const speed = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'speed',
        'figure',
        'How fast the head moves; worked out from the coupon when it is not written.',
        'speed 300 mm/s',
        {
            measures: [positive('speed', [0.5, 5000])],
            otherwise: 'worked out',
        },
    );
const offset = <Block extends NodeType>(block: Block) =>
    property(block, 'offset', 'figure', 'Grows the shape outwards, or with a minus sign inwards.', 'offset 0.05 mm', {
        measures: [signed('length', [-5, 5])],
        otherwise: '0 mm',
    });
const passes = <Block extends NodeType>(block: Block) =>
    property(block, 'passes', 'count', 'How often the area is gone over.', 'passes 3', {
        ...countOf(1, 60),
        otherwise: 'worked out',
    });
export const coats = <Block extends NodeType>(block: Block) =>
    property(block, 'coats', 'count', 'How many coats.', 'coats 2', { ...countOf(1, 20), otherwise: '1', hinted: true });

/** In which climate what a step lays hardens. */
export const hardeningIn = <Block extends NodeType>(block: Block) => [
    property(
        block,
        'temperature',
        'figure',
        'How warm shop and piece are kept until it has hardened, in place of the shop’s temperature.',
        'temperature 22 degC',
        { measures: [measure('temperature', [0, 40], [-50, 60])], otherwise: 'that of the shop' },
    ),
    property(
        block,
        'humidity',
        'figure',
        'How damp the air is until it has hardened, in place of the shop’s humidity.',
        'humidity 50 %',
        { measures: [share([0.2, 0.9])], otherwise: 'that of the shop' },
    ),
];

export const without = <Block extends NodeType>(block: Block, example: string) =>
    property(
        block,
        'without',
        'phrase',
        'Says no to it. In a variant it leaves out a line of the base, so that it is worked out again or not done.',
        example,
        { many: true, otherwise: 'none' },
    );

/** What a step can say in braces that has no lines of its own. */
export const rest = <Block extends NodeType>(block: Block) => [allow(block), without(block, 'without allow oily-rags')];

/** What both engraving and cutting can say about where the beam goes. */
export const beamWork = <Block extends NodeType>(block: Block) => [
    property(
        block,
        'art',
        'phrase',
        'The art to burn, which parts of it, and where its middle lies on the blank. `inverse within` an outline burns what lies around it instead.',
        'art heron at 150, 100 mm',
        { many: true, node: 'ArtUse', follows: 'the name of art in this recipe', otherwise: 'needed, or a circle or rectangle' },
    ),
    property(block, 'circle', 'phrase', 'A circle by its diameter, instead of art.', 'circle 80 mm at 100, 100 mm', {
        many: true,
        otherwise: 'none',
    }),
    property(block, 'rectangle', 'phrase', 'A rectangle by its size, instead of art.', 'rectangle 80 x 40 mm', {
        many: true,
        otherwise: 'none',
    }),
    property(block, 'mirror', 'flag', 'Turns everything in this step over, left to right.', 'mirror', {
        otherwise: 'as it is drawn',
    }),
    property(
        block,
        'was',
        'phrase',
        'What the step was called before it was renamed: the runs of that name stay its own.',
        'was hollow',
        { node: 'Was', follows: 'a name that this step had before', otherwise: 'none' },
    ),
    property(block, 'air', 'phrase', 'Air assist: on to cut, off to engrave, where `without air` says it.', 'air on', {
        choices: ['on'],
        node: 'Air',
        otherwise: block === 'Cut' ? 'on' : 'off',
        hinted: true,
    }),
    power(block),
    speed(block),
    passes(block),
    offset(block),
    allow(block),
    without(block, 'without mirror'),
];
