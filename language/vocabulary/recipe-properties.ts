import { flipAxes, paces, placeFinders } from '../../shared/recipe/step';
import { measure, type NodeType, positive, property, share } from './property';
import { allow, beamWork, coats, countOf, hardeningIn, rest, without } from './step-lines';

const recipe = [
    property('Recipe', 'issue', 'count', 'Number of this issue of the recipe: counted up when it is changed.', 'issue 3', {
        ...countOf(0, 10000),
        before: 'revision',
        otherwise: '1',
    }),
    property('Recipe', 'make', 'count', 'How many pieces are made at once.', 'make 4', {
        ...countOf(1, 10000),
        otherwise: '1',
    }),
    property('Recipe', 'laser', 'name', 'The laser it is burnt on.', 'laser shed', {
        node: 'LaserUse',
        follows: 'the name of a laser',
        otherwise: 'needed',
    }),
    allow('Recipe'),
];

const art = [
    without('Art', 'without dither'),
    property('Art', 'width', 'figure', 'Real width of the art.', 'width 140 mm', {
        measures: [measure('length', [1, 3000])],
        otherwise: 'by the file',
    }),
    property('Art', 'height', 'figure', 'Real height of the art.', 'height 90 mm', {
        measures: [measure('length', [1, 3000])],
        otherwise: 'by the file',
    }),
    property('Art', 'threshold', 'figure', 'How dark paint has to be to burn.', 'threshold 50 %', {
        measures: [share()],
        otherwise: '50 %',
    }),
    property(
        'Art',
        'dither',
        'word',
        'Burns the greys of a picture as dots on the scan lines, the closer the darker: error diffusion as published, or an ordered screen.',
        'dither floyd-steinberg',
        { choices: ['floyd-steinberg', 'jarvis-judice-ninke', 'ordered'], otherwise: 'dark burns whole' },
    ),
    property(
        'Art',
        'curve',
        'phrase',
        'Tone curve of a picture: how much of the wood is burnt for a darkness in it. Between the points it runs smoothly.',
        'curve 0 % gives 0 %, 50 % gives 35 %, 100 % gives 90 %',
        { node: 'Curve', otherwise: 'as it is drawn' },
    ),
];

const blank = [
    without('Blank', 'without backing'),
    property('Blank', 'of', 'name', 'The board or veneer it is cut from.', 'of walnut-12', {
        node: 'Material',
        follows: 'the name of a board or veneer',
        otherwise: 'needed',
    }),
    property('Blank', 'size', 'size', 'Width and height, as it lies on the bed.', 'size 300 x 200 mm', {
        measures: [measure('length', [5, 4000])],
        otherwise: 'needed',
    }),
    property('Blank', 'grain', 'phrase', 'The side along which the grain runs.', 'grain along width', {
        choices: ['along width', 'along height'],
        node: 'Grain',
        otherwise: 'none',
    }),
    property('Blank', 'backing', 'phrase', 'What it is stuck to while it is burnt.', 'backing foil', {
        choices: ['foil', 'tape'],
        otherwise: 'none',
        node: 'Backing',
    }),
    property(
        'Blank',
        'touched by',
        'word',
        'What touches its face in use: food, hands and cloths, or nobody who only looks at it.',
        'touched by food',
        { choices: ['food', 'hands', 'nobody'], otherwise: 'not known' },
    ),
    property(
        'Blank',
        'kept',
        'word',
        'Where the piece is kept in use: decides how dry its wood has to be and how far it moves.',
        'kept outdoors',
        { choices: ['indoors', 'outdoors'], otherwise: 'indoors' },
    ),
];

const engrave = [
    ...beamWork('Engrave'),
    property(
        'Engrave',
        'depth',
        'phrase',
        'How deep: solved into power, speed and passes from the coupon. Or `depth through`: 97.5 % sure at the thick end of the sheet, where `depth through sure 99 %` says no other share. A burn that was measured after some passes goes on from there, `through` too: `reached 0.31 mm after 2`.',
        'depth 0.50 mm',
        { measures: [positive('length', [0.01, 30])], node: 'Depth', otherwise: 'needed, or a tone or settings' },
    ),
    property('Engrave', 'tone', 'figure', 'How dark, without digging: 0 % bare, 100 % the darkest.', 'tone 60 %', {
        measures: [share()],
        otherwise: 'none',
    }),
    property('Engrave', 'pitch', 'figure', 'Distance of the scan lines.', 'pitch 0.10 mm', {
        measures: [positive('length', [0.01, 1])],
        otherwise: 'worked out',
    }),
    property(
        'Engrave',
        'scan',
        'phrase',
        'Which way the scan lines run; `one way` behind it burns all of them in the same direction. `scan along outline` leaves the area as it is and follows its edge alone, as often as `passes` says.',
        'scan across grain',
        {
            choices: ['across grain', 'along grain', 'along outline'],
            node: 'Scan',
            otherwise: 'across grain',
            hinted: true,
        },
    ),
    property(
        'Engrave',
        'pace',
        'word',
        'Which settings are chosen of those that give the depth: `fast` the fewest passes, up to 0.4 mm deep each, at doses that the coupon has measured; `gentle` passes of 0.12 mm at most, which char least.',
        'pace fast',
        { choices: [...paces], otherwise: 'passes of 0.25 mm' },
    ),
    property(
        'Engrave',
        'outline',
        'count',
        'Passes along the outline after the area, for a crisp edge, with settings of their own.',
        'outline 1',
        {
            ...countOf(0, 20),
            otherwise: '0',
        },
    ),
];

const foundBy = <Block extends NodeType>(block: Block) =>
    property(
        block,
        'found by',
        'word',
        'How the blank is laid where it lay before, for what is burnt next: against a `fence` with stops, on `pins`, by `marks` that were burnt before, or back into the `frame` that a cut left. Behind it, `of` names the step that made it, and `within` says how exactly: `found by pins of pegs within 0.1 mm`.',
        'found by fence within 0.2 mm',
        {
            choices: [...placeFinders],
            node: 'Found',
            follows: '`fence`, `pins`, `marks` or `frame`',
            otherwise: 'not known',
        },
    );

const steps = [
    ...engrave,
    ...beamWork('Cut'),
    property('Cut', 'tabs', 'count', 'Bridges left standing so that the part does not fall.', 'tabs 4', {
        ...countOf(0, 200),
        otherwise: '0',
    }),
    property(
        'Cut',
        'lead-in',
        'figure',
        'How far out in the waste the beam begins, so that its first burn is not on the edge.',
        'lead-in 2 mm',
        { measures: [measure('length', [0.2, 20], [0, 100])], otherwise: '0 mm' },
    ),
    property(
        'Cut',
        'sure',
        'figure',
        'How surely it is to come through where the sheet is thickest, by the cut tests of its coupon.',
        'sure 99 %',
        { measures: [measure('ratio', [0.8, 0.999], [0.5, 0.9999])], otherwise: '97.5 %' },
    ),
    property(
        'Cut',
        'kerf',
        'figure',
        'How wide the cut is on the face. The beam runs half of it out in the waste, so that what is kept comes out as it is drawn; `without kerf` has it follow the line itself.',
        'kerf 0.24 mm',
        { measures: [measure('length', [0.05, 1], [0.001, 20])], otherwise: 'as measured in the coupon, or a guess' },
    ),
    coats('Seal'),
    ...hardeningIn('Seal'),
    allow('Seal'),
    without('Seal', 'without coats'),
    property('Fill', 'overfill', 'figure', 'How much more is mixed than the hollow holds.', 'overfill 15 %', {
        measures: [measure('ratio', [0, 1], [0, 10])],
        otherwise: '10 %',
        hinted: true,
    }),
    ...hardeningIn('Fill'),
    allow('Fill'),
    without('Fill', 'without overfill'),
    property('Inlay', 'glue', 'name', 'The glue that holds it.', 'glue wood-glue', {
        node: 'GlueUse',
        follows: 'the name of a glue',
        otherwise: 'none',
    }),
    property(
        'Inlay',
        'clearance',
        'figure',
        'Gap wanted along each edge of a part, before it is pressed in.',
        'clearance 0.05 mm',
        {
            measures: [measure('length', [0, 1])],
            otherwise: '0 mm',
        },
    ),
    property(
        'Inlay',
        'marks',
        'count',
        'Marks on both halves by which they are laid together, outside the art: small holes in the one, light discs on the other.',
        'marks 3',
        { ...countOf(0, 12), otherwise: '0' },
    ),
    ...hardeningIn('Inlay'),
    allow('Inlay'),
    without('Inlay', 'without marks'),
    ...rest('Wait'),
    ...rest('Peel'),
    property(
        'Sand',
        'flush',
        'phrase',
        'Down to the face of the wood; `then` says how much of the face goes too.',
        'flush then 0.10 mm',
        { node: 'Flush', otherwise: 'none' },
    ),
    property('Sand', 'take', 'figure', 'How much comes off the face.', 'take 0.10 mm', {
        measures: [measure('length', [0, 5])],
        otherwise: '0 mm',
    }),
    property('Sand', 'grits', 'name', 'The papers, coarse to fine.', 'grits 120, 180, 240', {
        node: 'Grits',
        follows: 'a grit such as `120`',
        otherwise: 'none',
    }),
    allow('Sand'),
    without('Sand', 'without flush'),
    coats('Finish'),
    ...hardeningIn('Finish'),
    allow('Finish'),
    without('Finish', 'without coats'),
    ...rest('Mask'),
    property(
        'Flip',
        'about',
        'word',
        'About which line it is turned: `upright`, like the page of a book, so that left and right change places; or `level`, so that the far side and the near side do.',
        'about level',
        { choices: [...flipAxes], otherwise: 'upright' },
    ),
    foundBy('Flip'),
    allow('Flip'),
    without('Flip', 'without about'),
    property('Check', 'depth', 'figure', 'The depth that should be measured.', 'depth 0.5 mm', {
        measures: [measure('length', [0.01, 30])],
        otherwise: 'none',
    }),
    property('Check', 'width', 'figure', 'The width that should be measured.', 'width 12 mm', {
        measures: [measure('length', [0.05, 3000])],
        otherwise: 'none',
    }),
    property('Check', 'tone', 'figure', 'How dark it should look: 0 % bare, 100 % the darkest.', 'tone 80 %', {
        measures: [share()],
        otherwise: 'none',
    }),
    property('Check', 'through', 'flag', 'Whether it came through is looked at.', 'through', { otherwise: 'none' }),
    allow('Check'),
    without('Check', 'without width'),
    property(
        'Do',
        'taken off',
        'flag',
        'The piece is taken off the bed for it: its set-up ends here, and what is burnt later has a file of its own.',
        'taken off',
        { otherwise: 'it stays where it is' },
    ),
    foundBy('Do'),
    allow('Do'),
    without('Do', 'without taken off'),
    ...rest('Follow'),
];

export const recipeProperties = [...recipe, ...art, ...blank, ...steps];
