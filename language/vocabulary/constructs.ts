// biome-ignore-all lint/suspicious/noTemplateCurlyInString: these are snippets in the editor's own syntax.
import type { NodeType } from './property';

/** Whether lines in braces have to follow a statement, may follow it, or cannot. */
export type Braces = 'needed' | 'possible' | 'none';

/** A statement with a word of its own: an entry of a file, a part of stock or of a recipe, or a step. */
export interface Construct {
    /** Type in the syntax tree. */
    readonly type: NodeType;
    readonly word: string;
    readonly where: 'file' | 'stock' | 'recipe' | 'step';
    readonly what: string;
    readonly example: string;
    readonly braces: Braces;
    /** Body for completion, in the editor's snippet syntax. */
    readonly snippet: string;
}

function entry(type: NodeType, word: string, braces: Braces, what: string, example: string, snippet: string): Construct {
    return { type, word, where: 'file', braces, what, example, snippet };
}

function part(type: NodeType, word: string, braces: Braces, what: string, example: string, snippet: string): Construct {
    return { type, word, where: 'recipe', braces, what, example, snippet };
}

function step(type: NodeType, word: string, braces: Braces, what: string, example: string, snippet: string): Construct {
    return { type, word, where: 'step', braces, what, example, snippet };
}

/** What a lot is, in the words of the block and of the line that it is. */
export const aboutLots = 'What was bought on one day and measured: a blank or a run can say which lot of the board it is of.';

export const constructs: readonly Construct[] = [
    entry(
        'File',
        'edition',
        'none',
        'For which edition of the language the file is written: its first line, where it is written at all.',
        'edition 2026',
        'edition ${1:2026}',
    ),
    entry('Use', 'use', 'none', 'Makes the stock of another file known here.', 'use "workshop.kerf"', 'use "$1"'),
    entry(
        'Recipe',
        'recipe',
        'needed',
        'How a piece is made: its laser, art, blanks, and the steps in the order of the work.',
        'recipe heron-tray "Heron serving tray" { … }',
        'recipe ${1:name} "${2:Title}" {\n\tissue 1\n\tmake ${3:1}\n\tlaser $4\n\n\t$0\n}',
    ),
    entry(
        'Board',
        'board',
        'needed',
        'A board the shop owns.',
        'board walnut-12 { wood black-walnut  thickness 12 mm +- 0.3 mm }',
        'board ${1:name} {\n\twood $2\n\tthickness ${3:12 mm +- 0.3 mm}\n\tmoisture ${4:8 %}\n}',
    ),
    entry(
        'Veneer',
        'veneer',
        'needed',
        'A veneer the shop owns.',
        'veneer maple-06 { wood sugar-maple  thickness 0.6 mm +- 0.05 mm }',
        'veneer ${1:name} {\n\twood $2\n\tthickness ${3:0.6 mm +- 0.05 mm}\n}',
    ),
    entry(
        'Laser',
        'laser',
        'needed',
        'A laser the shop owns.',
        'laser shed { beam co2  power 45 W  spot 0.15 mm }',
        'laser ${1:name} {\n\tbeam ${2:co2}\n\tpower ${3:45 W}\n\tspot ${4:0.15 mm}\n\tfield ${5:600 x 400 mm}\n\ttop speed ${6:600 mm/s}\n\tacceleration ${7:6000 mm/s2}\n}',
    ),
    entry(
        'Coupon',
        'coupon',
        'needed',
        'A burnt and measured offcut: what one laser does to one board. Depths are worked out from it.',
        'coupon walnut-12 on shed { pitch 0.10 mm  burn 40 % at 400 mm/s gives 0.09 mm }',
        'coupon ${1:board} on ${2:laser} {\n\tpitch ${3:0.10 mm}\n\tburn ${4:40 %} at ${5:400 mm/s} gives ${6:0.09 mm}\n}',
    ),
    entry(
        'Run',
        'run',
        'needed',
        'How a recipe went on one day: what its steps were burnt with and what was measured. Feeds the fit like rows of a coupon.',
        'run heron-tray 2026-11-20 { issue 3  pocket 80 % at 250 mm/s x 2 depth 0.79 mm  note "…" }',
        'run ${1:recipe} ${2:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE} {\n\tissue ${3:1}\n\t$0\n}',
    ),
    entry(
        'Order',
        'order',
        'needed',
        'What somebody ordered on a day. `kerfbook week` plans all orders together.',
        'order 2026-12-03 "ferry office" { heron-tray 6 due 2026-12-18 }',
        'order ${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE} "$2" {\n\t${3:recipe} ${4:1} due $5\n}',
    ),
    entry(
        'Routine',
        'routine',
        'needed',
        'Finishing steps said once, for whatever blank: recipes follow it. The name behind `for` stands for the blank.',
        'routine wax-finish for piece { sand piece { take 0.05 mm  grits 180, 240 }  finish piece with bench-wax  wait 24 h }',
        'routine ${1:name} for ${2:piece} {\n\t$0\n}',
    ),
    entry(
        'Resin',
        'resin',
        'needed',
        'A casting resin.',
        'resin tide-blue { kind slow-epoxy  mix 2 : 1 by volume  colour #1f6f8b }',
        'resin ${1:name} {\n\tkind ${2:slow-epoxy}\n\tmix ${3:2 : 1} by ${4|volume,weight|}\n\tcolour ${5:#1f6f8b}\n}',
    ),
    entry(
        'Sealer',
        'sealer',
        'needed',
        'What closes the pores before a fill.',
        'sealer shed-shellac { kind shellac  dry 1 h }',
        'sealer ${1:name} {\n\tkind $2\n\tdry ${3:1 h}\n}',
    ),
    entry(
        'Glue',
        'glue',
        'needed',
        'A glue.',
        'glue bench-glue { kind wood-glue  film 0.06 mm }',
        'glue ${1:name} {\n\tkind ${2:wood-glue}\n}',
    ),
    entry(
        'Coat',
        'finish',
        'needed',
        'A finish for the piece: oil, wax, lacquer.',
        'finish tray-oil { kind drying-oil }',
        'finish ${1:name} {\n\tkind $2\n}',
    ),
    entry(
        'Masking',
        'masking',
        'needed',
        'What the face is masked with before it is burnt: tape or film.',
        'masking blue-tape { kind painters-tape  stays 14 d }',
        'masking ${1:name} {\n\tkind ${2:paper-tape}\n\tstays ${3:3 d}\n}',
    ),
    entry(
        'Wood',
        'wood',
        'needed',
        'A species of wood.',
        'wood black-walnut { density 616 kg/m3  tangential 0.274 % }',
        'wood ${1:name} {\n\tdensity ${2:600 kg/m3}\n\tradial ${3:0.19 %}\n\ttangential ${4:0.27 %}\n\tpores ${5|diffuse,semi-ring,ring,softwood|}\n}',
    ),
    entry(
        'Beam',
        'beam',
        'needed',
        'A kind of laser source.',
        'beam co2 { wavelength 10.6 um  foil stops }',
        'beam ${1:name} {\n\twavelength $2\n\tfoil ${3|stops,fails|}\n}',
    ),
    entry(
        'Abrasive',
        'abrasive',
        'needed',
        'A grit and the size of its particles.',
        'abrasive 120 { particle 125 um }',
        'abrasive ${1:120} {\n\tparticle ${2:125 um}\n}',
    ),
    entry(
        'Shop',
        'shop',
        'needed',
        'What the shop works with: its currency, what an hour costs, and how long it works in a day.',
        'shop estuary { currency EUR  hourly 32  workday 8 h }',
        'shop ${1:name} {\n\tcurrency ${2:EUR}\n\thourly ${3:32}\n\tlaser hourly ${4:14}\n\toverhead ${5:15 %}\n\tmarkup ${6:60 %}\n\tworkday ${7:8 h}\n}',
    ),

    {
        type: 'Lot',
        word: 'lot',
        where: 'stock',
        braces: 'needed',
        what: aboutLots,
        example: 'lot spring { bought 2026-03-14  thickness 11.8 mm +- 0.1 mm }',
        snippet:
            'lot ${1:name} {\n\tbought ${2:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}\n\tthickness ${3:11.8 mm +- 0.1 mm}\n}',
    },

    part(
        'Art',
        'art',
        'possible',
        'A drawing or picture, by its file. What looks dark burns.',
        'art heron "art/heron.svg" { width 140 mm }',
        'art ${1:name} "$2"',
    ),
    part(
        'Blank',
        'blank',
        'needed',
        'A piece of board or veneer, cut to size for this recipe.',
        'blank tray { of walnut-12  size 300 x 200 mm  grain along width }',
        'blank ${1:name} { of $2  size ${3:300 x 200 mm}  grain along ${4|width,height|} }',
    ),
    part(
        'Places',
        'places',
        'none',
        'Where several copies go, said once: a grid about the middle of the blank or about `at`, or each place by itself. Lines say `at` and its name.',
        'places slots on strip 6 x 4 every 46 x 40 mm',
        'places ${1:name} on ${2:blank} ${3:4} x ${4:3} every ${5:40 x 30 mm}',
    ),
    part(
        'Without',
        'without',
        'none',
        'Leaves out a step, a blank, art, places or an exception of the base; in a block it says no to a line.',
        'without peel bird',
        'without $0',
    ),
    part(
        'Inserted',
        'after',
        'needed',
        'Puts new steps behind one of the base.',
        'after inlay relief { wait 1 h "the squeeze-out sets" }',
        'after ${1:step} {\n\t$0\n}',
    ),
    part(
        'Inserted',
        'before',
        'needed',
        'Puts new steps in front of one of the base.',
        'before engrave pocket { mask tray }',
        'before ${1:step} {\n\t$0\n}',
    ),

    step(
        'Engrave',
        'engrave',
        'needed',
        'Burns areas into a blank, to a depth or to a tone.',
        'engrave pocket on tray { art heron  depth 0.50 mm }',
        'engrave ${1:name} on ${2:blank} {\n\tart $3\n\tdepth ${4:0.50 mm}\n}',
    ),
    step(
        'Cut',
        'cut',
        'needed',
        'Cuts along outlines, all the way through. What comes loose and no later step works on is waste from then on; `tabs` hold it.',
        'cut edge on tray { rectangle 280 x 180 mm  air on }',
        'cut ${1:name} on ${2:blank} {\n\tart $3\n}',
    ),
    step(
        'Seal',
        'seal',
        'possible',
        'Closes the pores, so that a fill does not bleed along the grain.',
        'seal tray with shellac { coats 2 }',
        'seal ${1:blank} with ${2:sealer}',
    ),
    step(
        'Fill',
        'fill',
        'possible',
        'Floods an engraving with resin.',
        'fill pocket with tide-blue { overfill 15 % }',
        'fill ${1:engraving} with ${2:resin}',
    ),
    step(
        'Inlay',
        'inlay',
        'possible',
        'Glues a veneer half, turned over, or a cut-out part into its pocket; a part is turned over where `mirror` says so.',
        'inlay relief into pocket { clearance 0.05 mm  glue wood-glue }',
        'inlay ${1:relief} into ${2:pocket} {\n\tclearance ${3:0.05 mm}\n\tglue ${4:wood-glue}\n\tmarks ${5:3}\n}',
    ),
    step('Wait', 'wait', 'possible', 'Lets something dry, cure or cool.', 'wait 12 h', 'wait ${1:12 h}'),
    step('Peel', 'peel', 'possible', 'Takes tape and backing off a blank.', 'peel bird', 'peel ${1:blank}'),
    step(
        'Sand',
        'sand',
        'needed',
        'Takes off what stands proud, then some of the face.',
        'sand tray { flush then 0.10 mm  grits 120, 180, 240 }',
        'sand ${1:blank} { flush then ${2:0.10 mm}  grits ${3:120, 180, 240} }',
    ),
    step(
        'Finish',
        'finish',
        'possible',
        'Oils, waxes or lacquers a blank.',
        'finish tray with drying-oil { coats 2 }',
        'finish ${1:blank} with ${2:finish}',
    ),
    step('Mask', 'mask', 'possible', 'Covers the face with tape before it is burnt.', 'mask tray', 'mask ${1:blank}'),
    step('Flip', 'flip', 'possible', 'Turns a blank over: what follows is done on its other face.', 'flip tray', 'flip $1'),
    step(
        'Check',
        'check',
        'needed',
        'Something to measure or to look at before going on.',
        'check pocket { depth 0.5 mm }',
        'check ${1:step} { depth ${2:0.5 mm} }',
    ),
    step(
        'Do',
        'do',
        'possible',
        'Anything else, in your own words.',
        'do "Wipe the face clean" for 5 min',
        'do "$1" for ${2:5 min}',
    ),
    step(
        'Follow',
        'follow',
        'possible',
        'Does the steps of a routine on a blank.',
        'follow wax-finish on tray',
        'follow ${1:routine} on ${2:blank}',
    ),
];

const byType = new Map<string, Construct>(constructs.map((each) => [each.type, each]));

export function constructOf(type: string): Construct | undefined {
    return byType.get(type);
}

/** The words with which a step begins. */
export const stepWords: readonly string[] = constructs.filter(({ where }) => where === 'step').map(({ word }) => word);

/** Steps that need nothing of a recipe but a blank. */
export const routineWords: readonly string[] = ['seal', 'wait', 'peel', 'sand', 'finish', 'mask', 'flip', 'do', 'follow'];

/** What can stand directly in a recipe: its parts and its steps. */
export const recipeWords: readonly string[] = constructs
    .filter(({ where }) => where === 'recipe' || where === 'step')
    .map(({ word }) => word);

export const fileWords: readonly string[] = constructs.filter(({ where }) => where === 'file').map(({ word }) => word);

/** The words of the statements of one kind; of those only that need their braces, can have them, or cannot, where that is said. */
export function wordsOf(where: Construct['where'], braces?: Braces): string[] {
    return constructs.filter((each) => each.where === where && (braces ?? each.braces) === each.braces).map(({ word }) => word);
}
