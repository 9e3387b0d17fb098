import { measure, property } from './property';
import { offcutOf, onHandOf } from './several-blocks';

/** What is known of one lot of a board or veneer. */
export const lotProperties = [
    property(
        'Lot',
        'bought',
        'day',
        'The day on which it was bought: a coupon from before it was burnt on another lot.',
        'bought 2026-03-14',
        { otherwise: 'none' },
    ),
    property(
        'Lot',
        'thickness',
        'figure',
        'Thickness as it was measured, in place of that of the board or veneer.',
        'thickness 11.8 mm +- 0.1 mm',
        {
            measures: [measure('length', [0.1, 80])],
            otherwise: 'that of the board or veneer',
        },
    ),
    property('Lot', 'moisture', 'figure', 'Moisture content as it was measured.', 'moisture 9 %', {
        measures: [measure('ratio', [0.03, 0.25], [0, 3])],
        otherwise: 'that of the board or veneer',
    }),
    onHandOf('Lot', 'on hand 2 sheet counted 2026-11-29'),
    offcutOf('Lot'),
];
