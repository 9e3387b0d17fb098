import type { Rung } from '../burn/coupon-rungs';
import type { CouponSheet } from '../burn/coupon-sheet';
import type { ClearanceLadder, KerfStrip, Plug } from '../burn/kerf-strip';
import { showNumber } from '../quantity/show';
import type { Laser } from '../recipe/stock';
import { escapeMarkup } from './escape';
import { pageSentence } from './page-sentence';

/** A coupon at its real size: squares filled, numbers as the strokes that are burnt. One unit is one millimetre. */
export function couponSvg(sheet: CouponSheet, title: string, laser: Laser): string {
    return [
        '<?xml version="1.0" encoding="UTF-8"?>',
        `<svg xmlns="http://www.w3.org/2000/svg" width="${num(sheet.width)}mm" height="${num(sheet.height)}mm" viewBox="0 0 ${num(sheet.width)} ${num(sheet.height)}">`,
        `  <title>${escapeMarkup(title)}</title>`,
        `  <desc>${escapeMarkup(pageSentence(laser, sheet, 'coupon'))}</desc>`,
        ...couponShapes(sheet).map((line) => `  ${line}`),
        '</svg>',
        '',
    ].join('\n');
}

/** The shapes inside the drawing, also for a sheet that shows it. */
export function couponShapes({ squares, strips, ladder, labels }: CouponSheet): string[] {
    return [
        '<g id="squares" fill="#000">',
        ...squares.map(
            (square) =>
                `  <rect x="${num(square.x)}" y="${num(square.y)}" width="${num(square.size)}" height="${num(square.size)}"><desc>${escapeMarkup(`${square.number}: ${squareSettings(square)}`)}</desc></rect>`,
        ),
        '</g>',
        ...(strips === undefined
            ? []
            : ['<g id="strips" fill="none" stroke="#000" stroke-width="0.1">', ...strips.map(stripShape), '</g>']),
        ...(ladder === undefined ? [] : ladderShapes(ladder)),
        `<path id="numbers" fill="none" stroke="#000" stroke-width="0.1" d="${labels.map(strokeData).join('')}"/>`,
    ];
}

function stripShape(strip: KerfStrip): string {
    return outlined({ ...strip, width: strip.drawn }, `${strip.number}: ${squareSettings(strip)}`);
}

function ladderShapes({ settings, opening, plugs }: ClearanceLadder): string[] {
    const all = squareSettings(settings);
    return [
        '<g id="ladder" fill="none" stroke="#000" stroke-width="0.1">',
        outlined(opening, `opening: ${all}`),
        ...plugs.map((plug) => outlined(plug, `${plug.number}: ${num(plug.larger)} mm larger all round, ${all}`)),
        '</g>',
    ];
}

function outlined({ x, y, length, width }: Omit<Plug, 'number' | 'larger'>, says: string): string {
    return `  <rect x="${num(x)}" y="${num(y)}" width="${num(length)}" height="${num(width)}"><desc>${escapeMarkup(says)}</desc></rect>`;
}

/** "40 % at 400 mm/s", "40 % at 400 mm/s x 3". */
function squareSettings({ powerRatio, speed, passes }: Rung): string {
    return `${num(powerRatio * 100)} % at ${num(speed)} mm/s${passes > 1 ? ` x ${passes}` : ''}`;
}

function strokeData(points: Float64Array): string {
    const corners: string[] = [];
    for (let i = 0; i + 1 < points.length; i += 2) corners.push(`${num(points[i]!)} ${num(points[i + 1]!)}`);
    return `M${corners.join('L')}`;
}

function num(value: number): string {
    return showNumber(value, 3);
}
