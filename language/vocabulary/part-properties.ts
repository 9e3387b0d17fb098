import { type Measure, measure, type NodeType, type Property, part, positive, share, signed } from './property';

const burn = 'burn 40 % at 400 mm/s gives 0.09 mm';
const tried = 'cut 95 % at 8 mm/s x 2 thickness 5.9 mm gives through kerf 0.18 mm back 0.14 mm';
const stripped = 'cut 95 % at 8 mm/s x 2 gives through strip 5.82 mm of 6 mm back 5.88 mm';
const middle = { takes: 'place', otherwise: 'the middle of the blank' } as const;
const place = [signed('length', [-4000, 4000])];
const days = 86400;

const parts: Property[] = [
    part('Wait', 'time', 'wait', 'How long to wait.', 'wait 12 h', [measure('time', [1, 120 * days])]),
    part('Do', 'time', 'for', 'How long it takes.', 'do "Wipe it clean" for 5 min', [measure('time', [1, 30 * days])], {
        otherwise: 'no time is counted',
    }),
    part(
        'Found',
        'exact',
        'within',
        'How far off the blank may lie at most, against where it lay before.',
        'found by pins of pegs within 0.1 mm',
        [measure('length', [0.01, 2], [0.001, 20])],
        { otherwise: 'as is common: pins 0.1 mm, a fence 0.2 mm, marks 0.3 mm, a frame as much as its kerf is wide' },
    ),
    part(
        'Flush',
        'then',
        'then',
        'How much of the face goes after it is flush.',
        'flush then 0.10 mm',
        [measure('length', [0, 5])],
        { otherwise: '0 mm' },
    ),
    part('Scan', 'angle', 'at', 'Angle of the scan lines against the width.', 'scan at 45 deg', [signed('angle', [-7, 7])], {
        otherwise: 'by the grain',
    }),
    part('Depth', 'value', 'depth', 'How deep it is to be.', 'depth 0.50 mm', [positive('length', [0.01, 30])]),
    part(
        'Depth',
        'sure',
        'sure',
        'How surely it is to come out at the back, where the board is thickest: 97.5 % where nothing is written.',
        'depth through sure 99 %',
        [measure('ratio', [0.8, 0.999], [0.5, 0.9999])],
        { otherwise: '97.5 %' },
    ),
    part(
        'Depth',
        'reached',
        'reached',
        'How deep the piece on the bench is after its first passes: what is left of the depth is worked out for the passes after them.',
        'depth 0.50 mm reached 0.31 mm after 2',
        [positive('length', [0.01, 30])],
        { otherwise: 'the whole depth is burnt' },
    ),
    part('Circle', 'diameter', 'circle', 'Diameter of the circle.', 'circle 156 mm', [positive('length', [0.2, 3000])]),
    part('Rectangle', 'size', 'rectangle', 'Size of the rectangle.', 'rectangle 80 x 40 mm', [positive('length', [0.2, 4000])], {
        takes: 'size',
    }),
    part('Grown', 'by', 'grown', 'How far around the shape.', 'grown 5 mm', [measure('length', [0.1, 1000])]),
    part('ArtUse', 'turn', 'turned', 'How far it is turned, clockwise.', 'turned 90 deg', [signed('angle', [-7, 7])], {
        otherwise: '0 deg',
    }),
    part('Shape', 'turn', 'turned', 'How far it is turned, clockwise.', 'turned 30 deg', [signed('angle', [-7, 7])], {
        otherwise: '0 deg',
    }),
    part('ArtUse', 'at', 'at', 'Where its middle lies, from the top left corner of the blank.', 'at 150, 100 mm', place, middle),
    part('Shape', 'at', 'at', 'Where its middle lies, from the top left corner of the blank.', 'at 150, 100 mm', place, middle),
    part(
        'Places',
        'at',
        'at',
        'Where the middle of the grid lies, or each place of a list, from the top left corner of the blank.',
        'places corners on tray at 20, 20 mm and 280, 20 mm',
        place,
        middle,
    ),
    part('Setpoint', 'setting', 'set', 'The setting, as a share of the whole.', 'set 20 % gives 6 W', [share()]),
    part('Setpoint', 'gives', 'gives', 'The power measured at the wood.', 'set 20 % gives 6 W', [measure('power', [0.05, 500])]),
    part(
        'Repeat',
        'step',
        'every',
        'From the middle of one copy to the middle of the next, to the right and down.',
        'repeat 4 x 3 every 40 x 30 mm',
        [measure('length', [0.5, 4000])],
        { takes: 'size' },
    ),
    part('CurvePoint', 'from', 'curve', 'Darkness in the picture: 0 % white, 100 % black.', 'curve 50 % gives 35 %', [share()]),
    part('CurvePoint', 'to', 'gives', 'How much of the wood is burnt there.', 'curve 50 % gives 35 %', [share()]),
    part('Burn', 'power', 'burn', 'Power of the square.', burn, [share(), measure('power', [0.05, 500])]),
    part('Burn', 'speed', 'at', 'Speed of the square.', burn, [measure('speed', [0.5, 5000])]),
    part(
        'Burn',
        'tone',
        'tone',
        'Tone judged in the square: 0 % bare, 100 % the darkest that does not dig.',
        'burn 10 % at 600 mm/s gives tone 60 %',
        [share()],
    ),
    part('Burn', 'depth', 'gives', 'Depth measured in the square.', burn, [measure('length', [0, 30])]),
    part('CutTest', 'power', 'cut', 'Power of the cut.', tried, [share(), measure('power', [0.05, 500])]),
    part('CutTest', 'speed', 'at', 'Speed of the cut.', tried, [measure('speed', [0.2, 500])]),
    part(
        'CutTest',
        'thickness',
        'thickness',
        'Thickness of the offcut, where it is not that of the sheet.',
        tried,
        [measure('length', [0.2, 50])],
        { otherwise: 'that of the sheet' },
    ),
    part('CutTest', 'gives', 'gives', 'How deep the cut went that did not come through.', 'cut 95 % at 20 mm/s gives 3.5 mm', [
        measure('length', [0.05, 50]),
    ]),
    part('CutTest', 'kerf', 'kerf', 'Width of the kerf on the face.', tried, [measure('length', [0.03, 1.5])], {
        otherwise: 'none',
    }),
    part('CutTest', 'back', 'back', 'Width of the kerf on the back.', tried, [measure('length', [0.01, 1.5])], {
        otherwise: 'none',
    }),
    part(
        'CutTest',
        'strip',
        'strip',
        'Width on the face of a strip that was cut out along its lines: what it lacks is the kerf.',
        stripped,
        [measure('length', [1, 100])],
        { otherwise: 'none' },
    ),
    part('CutTest', 'drawn', 'of', 'Width of that strip as it was drawn.', stripped, [measure('length', [1, 100])]),
    part('CutTest', 'stripBack', 'back', 'Width of that strip on its back.', stripped, [measure('length', [1, 100])], {
        otherwise: 'none',
    }),
    part(
        'CutTest',
        'fits',
        'fits',
        'How much larger all round than its opening the largest plug of a clearance ladder was drawn that still went in.',
        'cut 95 % at 8 mm/s x 2 gives through fits 0.20 mm',
        [measure('length', [0.02, 1.5])],
        { otherwise: 'none' },
    ),
    part('Over', 'after', 'after', 'How long that must have had before.', 'over drying-oil after 7 d', [
        measure('time', [60, 120 * days]),
    ]),
    part(
        'LaserBeam',
        'wavelength',
        'beam',
        'Wavelength of this source.',
        'beam co2 10.6 um',
        [measure('length', [2e-4, 1.2e-2])],
        { otherwise: 'that of the beam' },
    ),
];

const money = (block: NodeType, example: string, amounts: readonly Measure[]): Property[] => [
    part(block, 'paid', 'price', 'What is paid, in the currency of the shop.', example, [measure('money')]),
    part(block, 'amount', 'for', 'What that buys.', example, amounts),
];
const fluids = [measure('mass', [0, 1e5]), measure('volume', [0, 1e8])];
const flats = [measure('sheets', [0, 1000]), measure('area', [0, 1e8])];

const prices: Property[] = [
    ...money('SheetPrice', 'price 48 for 1 sheet', flats),
    ...money('FluidPrice', 'price 42 for 1.5 kg', fluids),
    ...money('ShopPrice', 'price 12 for 2.5 m2 of foil', flats),
];

const counts: Property[] = [
    part('OnHand', 'amount', 'on hand', 'How much there is.', 'on hand 3 sheet counted 2026-11-29', [
        measure('sheets', [0, 1000]),
        measure('mass', [0, 1e5]),
        measure('volume', [0, 1e8]),
    ]),
    part('OnHand', 'counted', 'counted', 'The day in whose evening it was counted.', 'on hand 3 sheet counted 2026-11-29', [], {
        takes: 'day',
    }),
    part('Offcut', 'size', 'offcut', 'Its size.', 'offcut 320 x 150 mm counted 2026-11-29', [positive('length', [20, 5000])], {
        takes: 'size',
    }),
    part('Offcut', 'counted', 'counted', 'The day on which it lay there.', 'offcut 320 x 150 mm counted 2026-11-29', [], {
        takes: 'day',
    }),
];

/** The numbers inside lines of recipes and stock. */
export const partProperties: readonly Property[] = [...parts, ...prices, ...counts];
