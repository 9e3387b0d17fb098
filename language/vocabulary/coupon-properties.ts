import { measure, property } from './property';

/** What is said of a burnt and measured offcut. */
export const couponProperties = [
    property('Coupon', 'pitch', 'figure', 'Distance of the scan lines with which the coupon was burnt.', 'pitch 0.10 mm', {
        measures: [measure('length', [0.01, 1])],
        otherwise: 'needed',
    }),
    property('Coupon', 'burnt', 'day', 'The day on which the coupon was burnt.', 'burnt 2026-05-02', { otherwise: 'none' }),
    property(
        'Coupon',
        'burn',
        'phrase',
        'One square of the coupon: its settings and the depth measured in it.',
        'burn 40 % at 400 mm/s gives 0.09 mm',
        { many: true, node: 'Burn', otherwise: 'needed' },
    ),
    property(
        'Coupon',
        'cut',
        'phrase',
        'One cut that was tried: its settings, and whether it came through, left a skin, or how deep it went. `thickness` of the offcut where it was not the sheet’s own; the width of the kerf where it was measured, or what a strip that was cut out of a drawn width came to; `fits` where plugs were tried in an opening.',
        'cut 95 % at 8 mm/s x 2 gives through kerf 0.18 mm',
        { many: true, node: 'CutTest', otherwise: 'none' },
    ),
];
