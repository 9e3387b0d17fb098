import type { Rung } from '../burn/coupon-rungs';
import type { CouponSheet, CouponSquare } from '../burn/coupon-sheet';
import { originSentence } from '../plan/origin';
import { showLength, showNumber } from '../quantity/show';
import type { Laser } from '../recipe/stock';
import { chosenWords } from './chosen-words';
import { couponShapes } from './coupon-svg';
import { escapeMarkup as text } from './escape';
import { benchPagePolicyTag } from './page-policy';

/**
 * A page to take to the bench: the ladder of the coupon at its real size, and beside it a table from the burnt
 * number over the settings to a box for the measured depth. Black on white, needs nothing from anywhere else.
 */
export function couponPage(sheet: CouponSheet, title: string, cautions: readonly string[], laser: Laser): string {
    const size = `${showNumber(sheet.width)}mm`;
    return [
        '<!doctype html>',
        '<html lang="en">',
        '<head>',
        '<meta charset="utf-8">',
        benchPagePolicyTag,
        '<meta name="viewport" content="width=device-width">',
        `<title>${text(title)}</title>`,
        `<style>${style}</style>`,
        '</head>',
        '<body><main>',
        `<h1>${text(title)}</h1>`,
        `<p>Pitch ${text(showLength(sheet.pitch))}, air off, focus on the face, scanned across the grain. Burn it on an offcut of the same board, brush the squares out, and measure each from the face beside it. In the machine file ${text(originSentence(laser, 'coupon'))}.</p>`,
        '<p>Write board, laser and day on the offcut: without this page the numbers say nothing.</p>',
        `<ul>${cautions.map((caution) => `<li>${text(caution)}</li>`).join('')}</ul>`,
        ...chosenPart(sheet),
        '<div class="ladder">',
        `<svg style="width:${size}" viewBox="0 0 ${showNumber(sheet.width)} ${showNumber(sheet.height)}" role="img" aria-label="The coupon at its real size">`,
        ...couponShapes(sheet),
        '</svg>',
        table(sheet),
        '</div>',
        ...stripPart(sheet),
        ...ladderPart(sheet),
        `<p>${sheet.chosen?.guess === false ? 'The grey figure in each box is what the squares so far make likely, in mm.' : 'The grey figure in each box is a guess from the wood’s density, in mm; half of it or twice as much may come out.'} A square that only colours gets a tone instead, such as tone 45 %. Leave out what burnt through.</p>`,
        '</main></body>',
        '</html>',
        '',
    ].join('\n');
}

const style = `
@page { margin: 14mm }
body { font: 11pt/1.35 Georgia, 'Times New Roman', serif; color: #000; background: #fff; max-width: 186mm; margin: 0 auto; padding: 4mm }
h1 { font-size: 18pt; margin: 0 } p { margin: 2mm 0 } ul { margin: 0 0 4mm; padding-left: 5mm; font-size: 9pt }
.ladder { display: flex; flex-wrap: wrap; gap: 8mm; align-items: flex-start } svg { display: block; flex: none; max-width: 100%; overflow: visible }
table { border-collapse: collapse; font-variant-numeric: tabular-nums } thead { display: table-header-group } tr { break-inside: avoid }
th, td { padding: 0.8mm 3mm; text-align: right; white-space: nowrap } thead th { font-size: 8pt; font-weight: normal; vertical-align: bottom } tbody tr { border-top: 0.1mm solid #999 }
td.measured { border: 0.2mm solid #000; width: 26mm; height: 6mm; vertical-align: bottom; font-size: 8pt; color: #555; padding: 0.5mm 1mm }
`;

function table({ squares }: CouponSheet): string {
    const heads = ['square', 'power', 'speed', 'passes', 'measured (mm)'].map((head) => `<th scope="col">${head}</th>`);
    return `<table><thead><tr>${heads.join('')}</tr></thead><tbody>${squares.map(row).join('')}</tbody></table>`;
}

/** What the squares were chosen for. */
function chosenPart({ chosen }: CouponSheet): string[] {
    if (chosen === undefined) return [];
    return [
        '<p>What these squares bring:</p>',
        `<ul>${chosenWords(chosen)
            .map((each) => `<li>${text(each)}</li>`)
            .join('')}</ul>`,
    ];
}

/** The strips, with boxes for what is measured of them. */
function stripPart({ strips }: CouponSheet): string[] {
    if (strips === undefined) return [];
    const heads = ['strip', 'power', 'speed', 'passes', 'through?', 'face (mm)', 'back (mm)'];
    return [
        `<p>The strips are drawn ${showNumber(strips[0]!.drawn)} mm wide and cut along their lines, air on, with room below for the beam to leave. Measure each that falls out by itself across the middle, with a calliper: at its face, and at its back where that is wider. What it lacks is the kerf. Of one that does not fall out write skin.</p>`,
        `<table><thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join('')}</tr></thead><tbody>`,
        ...strips.map(
            (strip) =>
                `<tr><th scope="row">${strip.number}</th>${settingCells(strip)}<td class="measured"></td><td class="measured"></td><td class="measured"></td></tr>`,
        ),
        '</tbody></table>',
    ];
}

/** The plugs, with boxes for which of them goes in. */
function ladderPart({ ladder }: CouponSheet): string[] {
    if (ladder === undefined) return [];
    const { settings, plugs } = ladder;
    const heads = ['plug', 'power', 'speed', 'passes', 'larger all round (mm)', 'goes in?'];
    return [
        '<p>The plugs are drawn larger than the opening all round and everything is cut along its lines, air on. Brush the edges, turn each plug over, as wide end of opening and plug are then the same side, and try it with the thumb from the smallest number on. Stop at the first that does not go all the way in, and write how much larger the one before it is: what a part may be drawn larger and still goes in.</p>',
        `<table><thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join('')}</tr></thead><tbody>`,
        ...plugs.map(
            ({ number, larger }) =>
                `<tr><th scope="row">${number}</th>${settingCells(settings)}<td>${showNumber(larger, 3)}</td><td class="measured"></td></tr>`,
        ),
        '</tbody></table>',
    ];
}

function settingCells({ powerRatio, speed, passes }: Rung): string {
    const cells = [`${showNumber(powerRatio * 100, 1)} %`, `${showNumber(speed)} mm/s`, passes > 1 ? `× ${passes}` : ''];
    return cells.map((cell) => `<td>${cell}</td>`).join('');
}

function row(square: CouponSquare): string {
    const { number, expected } = square;
    const guess = expected === undefined ? '' : showNumber(expected.value, 2);
    return `<tr><th scope="row">${number}</th>${settingCells(square)}<td class="measured">${guess}</td></tr>`;
}
