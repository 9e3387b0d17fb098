import { films, materials, treatments } from '../../shared/recipe/stock';
import { aboutLots } from './constructs';
import { couponProperties } from './coupon-properties';
import { laserProperties } from './laser-properties';
import { lotProperties } from './lot-properties';
import { measure, type NodeType, property, share } from './property';
import {
    caution,
    cure,
    day,
    dry,
    fluidDensity,
    food,
    hour,
    kind,
    leastTemperature,
    minute,
    offcutOf,
    onHandOf,
    over,
    priceOf,
    setsBy,
    spread,
    weather,
} from './several-blocks';
import { shopProperties } from './shop-properties';

const beam = [
    property('Beam', 'wavelength', 'figure', 'Wavelength of the light.', 'wavelength 10.6 um', {
        measures: [measure('length', [2e-4, 1.2e-2])],
        otherwise: 'needed',
    }),
    property('Beam', 'foil', 'word', 'Whether thin foil tape stops this beam.', 'foil stops', {
        choices: ['stops', 'fails'],
        otherwise: 'not known',
    }),
    caution('Beam'),
];

const wood = [
    kind('Wood', 'oily-wood'),
    property('Wood', 'density', 'figure', 'Density at 12 % moisture content.', 'density 616 kg/m3', {
        measures: [measure('density', [1e-4, 1.4e-3])],
        otherwise: 'none',
    }),
    property('Wood', 'radial', 'figure', 'Change of width along the rays for each per cent of moisture.', 'radial 0.190 %', {
        measures: [share([2e-4, 8e-3])],
        otherwise: 'none',
    }),
    property(
        'Wood',
        'tangential',
        'figure',
        'Change of width along the rings for each per cent of moisture.',
        'tangential 0.274 %',
        { measures: [share([2e-4, 8e-3])], otherwise: 'none' },
    ),
    property('Wood', 'pores', 'word', 'How the pores lie: open ones carry a wet fill along the grain.', 'pores ring', {
        choices: ['diffuse', 'semi-ring', 'ring', 'softwood'],
        otherwise: 'none',
    }),
    property('Wood', 'bleed', 'word', 'Whether an unsealed fill creeps along the grain.', 'bleed yes', {
        choices: ['yes', 'no'],
        otherwise: 'yes',
    }),
    property('Wood', 'dust', 'word', 'Whether its dust colours a pale wood beside it.', 'dust stains', {
        choices: ['stains', 'harmless'],
        otherwise: 'harmless',
    }),
    property('Wood', 'colour', 'colour', 'Colour of the planed face.', 'colour #6a4a36', { otherwise: '#c8a878' }),
    property('Wood', 'char', 'colour', 'Colour of the burnt face.', 'char #2a1a12', { before: 'burnt', otherwise: '#3a2416' }),
    caution('Wood'),
];

const sheet = <Block extends NodeType>(block: Block, thickness: readonly [number, number], example: string) => [
    property(block, 'wood', 'name', 'The wood it is made of.', 'wood black-walnut', {
        node: 'WoodOf',
        follows: 'the name of a wood',
        otherwise: 'needed, or `made of`',
    }),
    property(
        block,
        'made of',
        'word',
        'What it is made of where it is not solid wood, or where its name could mislead: decides whether it may be burnt.',
        'made of plywood',
        { choices: [...materials], otherwise: 'solid wood' },
    ),
    property(
        block,
        'treated with',
        'word',
        'What it was treated with before it was bought: decides whether it may be burnt.',
        'treated with preservative',
        { choices: [...treatments], otherwise: 'by its name' },
    ),
    property(
        block,
        'sawn',
        'word',
        'How the rings lie to its face: `quarter` stands them upright, so that it moves least across; of `end` the face is end grain.',
        'sawn quarter',
        { choices: ['quarter', 'rift', 'flat', 'end'], otherwise: 'flat' },
    ),
    property(block, 'thickness', 'figure', 'Thickness, best with the tolerance it was bought or planed to.', example, {
        measures: [measure('length', thickness)],
        otherwise: 'needed',
    }),
    property(block, 'moisture', 'figure', 'Moisture content when it is worked.', 'moisture 8 %', {
        measures: [measure('ratio', [0.03, 0.25], [0, 3])],
        otherwise: 'none',
    }),
    property(
        block,
        'varies',
        'figure',
        'How far boards of it differ from the one that the coupon was burnt on, in the depth of the same settings: two of three come out within it (one standard deviation).',
        'varies 5 %',
        {
            measures: [measure('ratio', [0, 0.3], [0, 3])],
            otherwise: '8 % (common practice), or what four days of runs say',
        },
    ),
    property(
        block,
        'bought',
        'day',
        'The day on which what is in the rack was bought: a coupon from before it was burnt on another lot.',
        'bought 2026-03-14',
        { otherwise: 'none' },
    ),
    property(block, 'lot', 'phrase', aboutLots, 'lot spring { bought 2026-03-14  thickness 11.8 mm +- 0.1 mm }', {
        many: true,
        node: 'Lot',
        follows: 'a name for what was bought together',
        otherwise: 'none',
    }),
    property(block, 'sheet', 'size', 'Size in which it is bought.', 'sheet 600 x 300 mm', {
        measures: [measure('length', [20, 5000])],
        otherwise: 'none',
    }),
    priceOf(block, 'SheetPrice', 'price 48 for 1 sheet'),
    onHandOf(block, 'on hand 3 sheet counted 2026-11-29'),
    offcutOf(block),
];

const resin = [
    kind('Resin', 'slow-epoxy'),
    property(
        'Resin',
        'mix',
        'phrase',
        'Parts of resin to parts of hardener, `by volume` or `by weight`.',
        'mix 2 : 1 by volume',
        { node: 'Mix', otherwise: 'that of its kind' },
    ),
    property('Resin', 'pot life', 'figure', 'How long the mixed resin can be poured.', 'pot life 40 min', {
        measures: [measure('time', [5, 12 * hour])],
        otherwise: 'that of its kind',
    }),
    cure('Resin'),
    property(
        'Resin',
        'recoat',
        'figure',
        'When after a pour the next one bonds to it by itself: sooner it is too soft, later it has to be sanded dull first.',
        'recoat 4 .. 10 h',
        { measures: [measure('time', [10 * minute, 3 * day])], otherwise: 'that of its kind' },
    ),
    property('Resin', 'deepest pour', 'figure', 'The deepest that may be poured at once.', 'deepest pour 6 mm', {
        measures: [measure('length', [0.2, 150])],
        otherwise: 'that of its kind',
    }),
    property(
        'Resin',
        'largest mix',
        'figure',
        'The most in one cup for which its pot life holds: more warms itself up and sets sooner.',
        'largest mix 100 g',
        { measures: [measure('mass', [10, 5000])], otherwise: 'that of its kind' },
    ),
    property(
        'Resin',
        'narrowest slot',
        'figure',
        'The narrowest slot that it runs into without trapping air.',
        'narrowest slot 0.4 mm',
        { measures: [measure('length', [0.02, 10])], otherwise: 'that of its kind' },
    ),
    fluidDensity('Resin'),
    property(
        'Resin',
        'pigment',
        'figure',
        'Pigment as a share of the whole, by mass: of resin, hardener, pigment and metal powder together.',
        'pigment 3 %',
        {
            measures: [share([0, 0.3])],
            otherwise: 'that of its kind',
        },
    ),
    property(
        'Resin',
        'powder',
        'figure',
        'Metal, stone or mica powder as a share of the whole by mass: 75 g to 100 g of mixed resin is 43 %. Packed dry and wetted with thin glue it is said `by volume`.',
        'powder 30 %',
        {
            measures: [share([0, 0.8])],
            otherwise: 'that of its kind',
        },
    ),
    property(
        'Resin',
        'solid density',
        'figure',
        'Of the solid grains: brass 8.5 g/cm3, aluminium 2.7. With it the room that the powder takes is worked out.',
        'solid density 8.5 g/cm3',
        { measures: [measure('density', [1.5e-3, 2e-2])], otherwise: 'that of its kind' },
    ),
    property('Resin', 'opacity', 'figure', 'How much of what lies under it a millimetre hides.', 'opacity 90 %', {
        measures: [share()],
        otherwise: 'that of its kind',
    }),
    property('Resin', 'colour', 'colour', 'Colour when cured.', 'colour #1f6f8b', { otherwise: 'that of its kind' }),
    priceOf('Resin', 'FluidPrice', 'price 42 for 1.5 kg', true),
    onHandOf('Resin', 'on hand 400 g counted 2026-11-29'),
    caution('Resin'),
    over('Resin', 'over shellac after 1 h once sanded'),
    setsBy('Resin'),
    leastTemperature('Resin'),
    food('Resin'),
];

const masking = [
    kind('Masking', 'paper-tape'),
    property('Masking', 'made of', 'word', 'What the film is made of: decides whether it may be burnt.', 'made of paper', {
        choices: [...films],
        otherwise: 'that of its kind, or not known',
    }),
    property('Masking', 'stays', 'figure', 'How long it may stay on before its gum stays behind.', 'stays 14 d', {
        measures: [measure('time', [hour, 90 * day])],
        otherwise: 'that of its kind, or 3 d for ordinary tape',
    }),
    property(
        'Masking',
        'takes',
        'figure',
        'What the first pass spends on it: the least dose at which it just comes through. A tone needs that much more.',
        'takes 0.12 J/mm2',
        { measures: [measure('dose', [0.005, 2])], otherwise: 'not known' },
    ),
    caution('Masking'),
    over('Masking', 'over lacquer after 7 d'),
];

const glue = [
    kind('Glue', 'wood-glue'),
    property('Glue', 'film', 'figure', 'Thickness of what stays in the joint.', 'film 0.06 mm', {
        measures: [measure('length', [2e-3, 1])],
        otherwise: 'that of its kind',
    }),
    property('Glue', 'open', 'figure', 'How long there is to close the joint.', 'open 5 min', {
        measures: [measure('time', [2, 4 * hour])],
        otherwise: 'that of its kind',
    }),
    property('Glue', 'clamp', 'figure', 'How long it stays pressed before anything else is done to the piece.', 'clamp 60 min', {
        measures: [measure('time', [10, 2 * day])],
        otherwise: 'that of its kind',
    }),
    cure('Glue'),
    spread('Glue'),
    fluidDensity('Glue'),
    priceOf('Glue', 'FluidPrice', 'price 9 for 500 g'),
    onHandOf('Glue', 'on hand 400 g counted 2026-11-29'),
    caution('Glue'),
    over('Glue', 'over teak once wiped'),
    setsBy('Glue'),
    weather('Glue'),
    leastTemperature('Glue'),
    food('Glue'),
];

export const stockProperties = [
    ...beam,
    ...wood,
    property('Abrasive', 'particle', 'figure', 'Median size of its particles.', 'particle 125 um', {
        before: 'grain',
        measures: [measure('length', [1e-3, 2])],
        otherwise: 'needed',
    }),
    ...sheet('Board', [1.5, 80], 'thickness 12 mm +- 0.3 mm'),
    ...sheet('Veneer', [0.1, 4], 'thickness 0.6 mm +- 0.05 mm'),
    ...lotProperties,
    ...laserProperties,
    ...resin,
    kind('Sealer', 'shellac'),
    dry('Sealer'),
    spread('Sealer'),
    fluidDensity('Sealer'),
    priceOf('Sealer', 'FluidPrice', 'price 16 for 0.5 l'),
    onHandOf('Sealer', 'on hand 400 g counted 2026-11-29'),
    caution('Sealer'),
    over('Sealer', 'over drying-oil after 24 h'),
    setsBy('Sealer'),
    food('Sealer'),
    ...glue,
    kind('Coat', 'drying-oil'),
    dry('Coat'),
    cure('Coat'),
    spread('Coat'),
    fluidDensity('Coat'),
    priceOf('Coat', 'FluidPrice', 'price 22 for 1 l'),
    onHandOf('Coat', 'on hand 400 g counted 2026-11-29'),
    property('Coat', 'rags', 'word', 'Whether rags wet with it heat up and catch fire by themselves.', 'rags ignite', {
        choices: ['ignite', 'harmless'],
        otherwise: 'that of its kind',
    }),
    caution('Coat'),
    over('Coat', 'over drying-oil after 7 d'),
    setsBy('Coat'),
    weather('Coat'),
    leastTemperature('Coat'),
    food('Coat'),
    ...masking,
    ...shopProperties,
    ...couponProperties,
];
