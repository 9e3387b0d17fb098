import type { CouponSheet, CouponSquare } from '../burn/coupon-sheet';
import { showLength, showNumber } from '../quantity/show';
import { couponShapes } from './coupon-svg';
import { escapeMarkup as text } from './escape';

/**
 * A page to take to the bench: the coupon at its real size, and its squares as a table in the same
 * arrangement to write the depths into. Black on white, needs nothing from anywhere else.
 */
export function couponPage(sheet: CouponSheet, title: string, cautions: readonly string[]): string {
    const size = `${showNumber(sheet.width)}mm`;
    return [
        '<!doctype html>',
        '<html lang="en">',
        '<head>',
        '<meta charset="utf-8">',
        '<meta name="viewport" content="width=device-width">',
        `<title>${text(title)}</title>`,
        `<style>${style}</style>`,
        '</head>',
        '<body><main>',
        `<h1>${text(title)}</h1>`,
        `<p>Pitch ${text(showLength(sheet.pitch))}, air off, focus on the face, scanned across the grain. Burn it on an offcut of the same board, brush the squares out, and measure each from the face beside it.</p>`,
        `<ul>${cautions.map((caution) => `<li>${text(caution)}</li>`).join('')}</ul>`,
        `<svg style="width:${size}" viewBox="0 0 ${showNumber(sheet.width)} ${showNumber(sheet.height)}" role="img" aria-label="The coupon at its real size">`,
        ...couponShapes(sheet),
        '</svg>',
        table(sheet),
        '<p>In each box the depth that density lets one guess, in mm; it may be off by half or twice.</p>',
        '</main></body>',
        '</html>',
        '',
    ].join('\n');
}

const style = `
@page { margin: 14mm }
body { font: 11pt/1.35 Georgia, 'Times New Roman', serif; color: #000; background: #fff; max-width: 186mm; margin: 0 auto; padding: 4mm }
h1 { font-size: 18pt; margin: 0 } ul { margin: 0 0 4mm; padding-left: 5mm; font-size: 9pt } svg { display: block; margin: 4mm 0; max-width: 100%; overflow: visible }
table { border-collapse: collapse } th { padding: 1mm 3mm; text-align: right; white-space: nowrap } td { border: 0.2mm solid #000; width: 24mm; height: 11mm; vertical-align: bottom; text-align: right; font-size: 8pt; color: #555; padding: 0.5mm 1mm }
td.corner { border: 0; width: auto; height: auto }
`;

function table({ squares }: CouponSheet): string {
    const rows = new Map<string, CouponSquare[]>();
    for (const square of squares) {
        const name = `${showNumber(square.speed)} mm/s${square.passes > 1 ? ` × ${square.passes}` : ''}`;
        rows.set(name, [...(rows.get(name) ?? []), square]);
    }
    const [first] = rows.values();
    const heads = (first ?? []).map(({ powerRatio }) => `<th scope="col">${showNumber(powerRatio * 100, 1)} %</th>`);
    const body = [...rows].map(([name, row]) => `<tr><th scope="row">${name}</th>${row.map(cell).join('')}</tr>`);
    return `<table><thead><tr><td class="corner"></td>${heads.join('')}</tr></thead><tbody>${body.join('')}</tbody></table>`;
}

function cell({ expected }: CouponSquare): string {
    return `<td>${expected === undefined ? '' : showNumber(expected.value, 2)}</td>`;
}
