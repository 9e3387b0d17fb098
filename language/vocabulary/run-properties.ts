import { measure, type Property, part, property, share } from './property';

const line = 'pocket of walnut-12 80 % at 250 mm/s x 2 pitch 0.10 mm planned 0.80 mm +- 0.04 mm depth 0.79 mm';

const recipes = { otherwise: 'as the recipe says, where the run is of its present issue' };

export const runProperties = [
    property('Run', 'issue', 'count', 'The issue of the recipe that was followed.', 'issue 3', {
        before: 'revision',
        measures: [measure('count', [1, 1e4], [1, 1e6])],
        otherwise: 'that of the recipe as it is',
    }),
    property(
        'Run',
        'of plan',
        'phrase',
        'A fingerprint of what the recipe and its stock said when it was made, written by *Finish the Run*; comments, layout, prices, coupons and the issue do not count.',
        'of plan 7f3c2a91',
        { node: 'PlanOf', follows: 'the fingerprint that was written there', otherwise: 'none' },
    ),
    property('Run', 'laser', 'name', 'The laser it was burnt on; the recipe’s own where it is not written.', 'laser shed', {
        node: 'LaserUse',
        follows: 'the name of a laser',
        otherwise: 'that of the recipe',
    }),
    property('Run', 'temperature', 'figure', 'How warm the workshop was.', 'temperature 19 degC', {
        measures: [measure('temperature', [-10, 50], [-100, 200])],
        otherwise: 'none',
    }),
    property('Run', 'photo', 'text', 'A picture of the piece: its path from this file.', 'photo "runs/2026-11-28.jpg"', {
        many: true,
        follows: 'the path of a picture, in quotes',
        otherwise: 'none',
    }),
    property('Run', 'link', 'text', 'An address where more is kept of it.', 'link "https://example.org/heron-tray"', {
        many: true,
        follows: 'an address in quotes',
        otherwise: 'none',
    }),
    property('Run', 'made', 'count', 'How many pieces came out well.', 'made 6', {
        measures: [measure('count', [0, 1e4], [0, 1e6])],
        otherwise: 'not known',
    }),
    property('Run', 'spoiled', 'count', 'How many were spoiled.', 'spoiled 1', {
        measures: [measure('count', [0, 1e4], [0, 1e6])],
        otherwise: 'not known',
    }),
    property('Run', 'took', 'figure', 'Hours at the bench and beside the laser, waits left out.', 'took 5 h 20 min', {
        measures: [measure('time', [60, 200 * 3600], [1, 1e7])],
        otherwise: 'not known',
    }),
    property('Run', 'by', 'text', 'Who made it.', 'by "Ida"', {
        follows: 'a name in quotes',
        otherwise: 'none',
    }),
    property('Run', 'note', 'text', 'What went well or wrong.', 'note "Lens cleaned before the pocket."', {
        many: true,
        node: 'Note',
        follows: 'what went well or wrong, in quotes',
        otherwise: 'none',
    }),
];

/** What stands in an order besides the recipes that are wanted. */
export const orderProperties = [
    property('Order', 'delivered', 'day', 'The day on which it was handed over.', 'delivered 2026-12-17', {
        otherwise: 'it is open',
    }),
];

/** The numbers of a line that begins with the name of a recipe. */
export const wantedParts: readonly Property[] = [
    part('Wanted', 'due', 'due', 'The day by which it has to be ready.', 'heron-tray 6 due 2026-12-18', [], {
        takes: 'day',
        otherwise: 'whenever it is its turn',
    }),
];

/** The numbers of a line that begins with the name of a step. */
export const burntParts: readonly Property[] = [
    part('Burnt', 'power', 'power', 'Power it was burnt with.', line, [share(), measure('power', [0.05, 500])], recipes),
    part('Burnt', 'speed', 'at', 'Speed it was burnt with.', line, [measure('speed', [0.5, 5000])], recipes),
    part(
        'Burnt',
        'pitch',
        'pitch',
        'Distance of the scan lines it was burnt with.',
        line,
        [measure('length', [0.01, 1])],
        recipes,
    ),
    part('Burnt', 'planned', 'planned', 'Depth that the plan gave when it was made.', line, [measure('length', [0, 30])], {
        otherwise: 'none',
    }),
    part(
        'Burnt',
        'depths',
        'depth',
        'Depth that was measured; after each pass with commas between them, the last one after all of them.',
        line,
        [measure('length', [0, 30])],
        { otherwise: 'none' },
    ),
    part('Burnt', 'tone', 'tone', 'How dark it came out: 0 % bare, 100 % the darkest.', line, [share()], { otherwise: 'none' }),
    part(
        'Burnt',
        'widths',
        'width',
        'Width that was measured at the face; after a comma at the floor, which tells how the walls of a deep pocket lean.',
        line,
        [measure('length', [0.05, 3000])],
        { otherwise: 'none' },
    ),
];
