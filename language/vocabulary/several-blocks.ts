import { hardenings } from '../../shared/recipe/stock';
import { measure, type NodeType, property } from './property';

/* What several kinds of stock can say, each for the block that says it. */

export const minute = 60;
export const hour = 3600;
export const day = 86400;

export const caution = <Block extends NodeType>(block: Block) =>
    property(block, 'caution', 'text', 'A danger to be shown wherever this is used.', 'caution "Wear gloves."', {
        many: true,
        follows: 'the warning in quotes',
        otherwise: 'none',
    });
export const food = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'food',
        'text',
        'Whose word says that food may touch it once it has cured: the maker’s declaration, with its date.',
        'food "The maker’s declaration of March 2026, 30 days after the last coat."',
        { follows: 'whose word says so, in quotes', otherwise: 'nobody says so' },
    );
export const kind = <Block extends NodeType>(block: Block, example: string) =>
    property(block, 'kind', 'name', 'What it is like: every figure not written here is taken from there.', `kind ${example}`, {
        node: 'Kind',
        follows: 'the name of what it is like',
        otherwise: 'none: its figures stand here',
    });
export const dry = <Block extends NodeType>(block: Block) =>
    property(block, 'dry', 'figure', 'How long one coat dries before the next step.', 'dry 1 h', {
        measures: [measure('time', [minute, 3 * day])],
        otherwise: 'that of its kind',
    });
export const cure = <Block extends NodeType>(block: Block) =>
    property(block, 'cure', 'figure', 'How long until it may be sanded, stressed or used.', 'cure 24 h', {
        measures: [measure('time', [10, 90 * day])],
        otherwise: 'that of its kind',
    });
export const over = <Block extends NodeType>(block: Block, example: string) =>
    property(
        block,
        'over',
        'phrase',
        'What it may lie on, after how long and once what has been done to that; or on what it never holds.',
        example,
        {
            many: true,
            node: 'Over',
            follows: 'the name of what lies below',
            otherwise: 'not known',
        },
    );
export const setsBy = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'sets by',
        'word',
        'By what it becomes hard: decides what a cold or damp shop makes of its times.',
        'sets by water',
        { choices: [...hardenings], otherwise: 'that of its kind' },
    );
export const leastTemperature = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'least temperature',
        'figure',
        'The coldest at which it may be used: below, it stays soft or turns to chalk.',
        'least temperature 10 degC',
        { measures: [measure('temperature', [-5, 25], [-50, 100])], otherwise: 'that of its kind' },
    );
export const spread = <Block extends NodeType>(block: Block) =>
    property(block, 'spread', 'figure', 'How much goes on an area, one coat or one face.', 'spread 150 g/m2', {
        measures: [measure('spread', [2e-6, 6e-4])],
        otherwise: 'that of its kind',
    });
export const fluidDensity = <Block extends NodeType>(block: Block) =>
    property(block, 'density', 'figure', 'Mass of a volume, ready to use.', 'density 1.1 g/cm3', {
        measures: [measure('density', [6e-4, 3e-3])],
        otherwise: 'that of its kind',
    });

export const weather = <Block extends NodeType>(block: Block) =>
    property(block, 'weather', 'word', 'Whether it lasts on a piece that is kept outdoors.', 'weather stands', {
        choices: ['stands', 'fails'],
        otherwise: 'that of its kind, or not known',
    });

export const priceOf = <Block extends NodeType>(block: Block, node: NodeType, example: string, many = false) =>
    property(block, 'price', 'phrase', 'What is paid for how much of it, in the currency of the shop.', example, {
        node,
        many,
        otherwise: 'none',
    });

export const onHandOf = <Block extends NodeType>(block: Block, example: string) =>
    property(
        block,
        'on hand',
        'phrase',
        'What was counted in the evening of a day: the last count holds. Runs of later days are taken off, and `kerfbook week` buys only what is short.',
        example,
        { node: 'OnHand', many: true, follows: 'how much there is', otherwise: 'not known: all is bought' },
    );
export const offcutOf = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'offcut',
        'phrase',
        'A piece that is left over: `kerfbook week` cuts blanks out of it before it takes a sheet. The grain runs along its longer side where nothing is said.',
        'offcut 320 x 150 mm counted 2026-11-29',
        { node: 'Offcut', many: true, follows: 'its size', otherwise: 'none' },
    );
