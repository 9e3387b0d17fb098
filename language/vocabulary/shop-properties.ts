import { measure, property, share } from './property';

const minute = 60;
const hour = 3600;
const day = 86400;

/** What a shop says of its hours, its rates and its currency. */
export const shopProperties = [
    property('Shop', 'currency', 'word', 'The currency of all prices: a code of ISO 4217.', 'currency EUR', {
        follows: 'a code of three letters, such as `EUR`',
        otherwise: 'needed',
    }),
    property('Shop', 'hourly', 'figure', 'What an hour of work costs, at the bench or beside the laser.', 'hourly 32', {
        measures: [measure('money')],
        otherwise: 'none: material alone is counted',
    }),
    property(
        'Shop',
        'laser hourly',
        'figure',
        'What an hour of the laser itself costs: power, wear, filters. The one who minds it comes on top.',
        'laser hourly 14',
        { measures: [measure('money')], otherwise: 'none' },
    ),
    property('Shop', 'overhead', 'figure', 'Rent, tools and light, as a part of material and work.', 'overhead 15 %', {
        measures: [measure('ratio', [0, 2], [0, 100])],
        otherwise: '0 %',
    }),
    property('Shop', 'markup', 'figure', 'What comes on top of the cost to make the price.', 'markup 60 %', {
        measures: [measure('ratio', [0, 5], [0, 100])],
        otherwise: '0 %',
    }),
    property(
        'Shop',
        'workday',
        'figure',
        'How long the bench is at work in a day; the rest of it things only wait.',
        'workday 8 h',
        {
            measures: [measure('time', [hour, 16 * hour], [minute, day])],
            otherwise: 'day and night',
        },
    ),
    property(
        'Shop',
        'temperature',
        'figure',
        'How warm the shop is: below 20 or above 25 degC pot life, open time, drying and cure are worked out for it.',
        'temperature 14 degC',
        { measures: [measure('temperature', [0, 40], [-50, 60])], otherwise: '20 to 25 degC' },
    ),
    property(
        'Shop',
        'humidity',
        'figure',
        'How damp its air is: decides how long water takes to dry, and which moisture wood comes to.',
        'humidity 55 %',
        { measures: [share([0.2, 0.9])], otherwise: '50 %' },
    ),
    property('Shop', 'price', 'phrase', 'What foil, tape or abrasive paper is bought for.', 'price 12 for 2.5 m2 of foil', {
        many: true,
        node: 'ShopPrice',
        otherwise: 'none',
    }),
];
