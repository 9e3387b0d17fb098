import { describe, expect, it } from 'vitest';
import { pngOf } from '../art/pictures';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { all, of, recipe, workshop } from './harness';

const rows = Uint8Array.from({ length: 20 * 41 }, (_, i) => (i % 41 > 20 ? 255 : 0));
const svg = (width: number, height: number, body: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${body}</svg>`;
workshop({
    'photo.png': pngOf({ columns: 40, rows: 20, depth: 8, colour: 0 }, rows),
    'slab.svg': svg(20, 10, '<path d="M0 0h20v10h-20z"/>'),
    // A slab with one line of 0.3 mm, 1.2 % of it all, and one with three of them.
    'line.svg': svg(40, 30, '<path d="M2 2h20v24h-20z"/><path d="M24 4h14v0.4h-14z"/>'),
    'lines.svg': svg(40, 30, '<path d="M2 2h14v12h-14z"/><path d="M24 4h14v0.3h-14z"/><path d="M24 8h14v0.3h-14z"/>'),
    'wide.svg': svg(90, 20, '<path d="M1 1h88v18h-80z"/>'),
});

const board = 'blank b { of walnut-12 size 100 x 80 mm grain along width }';
const engraved = (body: string, head = '') => recipe(`${head} ${board} engrave e on b { ${body} air off }`);
const inlaid = (relief: string, head = '') => inlayRecipe({ head, pocket: 'art slab depth 0.55 mm air off', relief });
const slab = 'art slab "slab.svg"';
const photo = (width: string, more = '') => `art photo "photo.png" { width ${width} ${more} }`;
const cutThen = (part: string) =>
    recipe(`${board} cut rim on b { rectangle 20 x 40 mm at 50, 40 mm } engrave e on b { ${part} tone 60 % air off }`);
const again = (at: string) =>
    fillRecipe({
        pocket: 'rectangle 20 x 20 mm at 50, 50 mm depth 1.2 mm air off',
        after: `engrave e on disc { rectangle 4 x 4 mm at ${at} mm tone 60 % air off }`,
    });
const crossed = (width: string) =>
    inlayRecipe({
        head: `art wide "wide.svg" { width ${width} }`,
        blanks: 'blank tray { of walnut-12 size 300 x 200 mm grain along width } blank bird { of maple-06 size 200 x 160 mm grain along height backing foil }',
        pocket: 'art wide depth 0.55 mm air off',
        relief: 'art wide inverse within grown 6 mm mirror depth through air off',
    });
const filledWith = (file: string) => fillRecipe().replace('"flag.svg"', `"${file}"`);
const mixed = (count: number) =>
    fillRecipe().replace('make 2', `make ${count}`).replace('kind slow-epoxy', 'kind slow-epoxy mix 2 : 1 by volume');

/** What a rule speaks of, and what lies just on the other side of its limit. */
const limits: readonly (readonly [rule: string, speaks: string, silent: string])[] = [
    [
        'beyond-boundary',
        inlaid('art slab inverse within rectangle 19.99 x 30 mm mirror depth through air off', slab),
        inlaid('art slab inverse within rectangle 19.997 x 30 mm mirror depth through air off', slab),
    ],
    ['off-blank', engraved('art slab at 90.01, 40 mm tone 60 %', slab), engraved('art slab at 90.003, 40 mm tone 60 %', slab)],
    ['coarse-pitch', engraved('art flag depth 0.4 mm pitch 0.125 mm'), engraved('art flag depth 0.4 mm pitch 0.12 mm')],
    [
        'fine-pitch',
        engraved('rectangle 90 x 70 mm depth 0.4 mm pitch 0.035 mm'),
        engraved('rectangle 90 x 70 mm depth 0.4 mm pitch 0.055 mm'),
    ],
    [
        'fine-pitch',
        engraved('rectangle 20 x 20 mm depth 0.4 mm pitch 0.03 mm'),
        engraved('rectangle 11 x 11 mm depth 0.4 mm pitch 0.03 mm'),
    ],
    [
        'veneer-thin',
        inlayRecipe({ after: 'sand tray { flush then 0.36 mm grits 120, 180, 240 }' }),
        inlayRecipe({ after: 'sand tray { flush then 0.25 mm grits 120, 180, 240 }' }),
    ],
    [
        'dotted-depth',
        engraved('art photo depth 0.12 mm', photo('8 mm', 'dither floyd-steinberg')),
        engraved('art photo depth 0.09 mm', photo('8 mm', 'dither floyd-steinberg')),
    ],
    [
        'picture-resolution',
        engraved('art photo tone 80 % pitch 0.1 mm', photo('13 mm')),
        engraved('art photo tone 80 % pitch 0.1 mm', photo('11 mm')),
    ],
    ['cut-too-early', cutThen('rectangle 20 x 10 mm at 67.6, 40 mm'), cutThen('rectangle 20 x 10 mm at 68.4, 40 mm')],
    ['laser-on-resin', again('61.5, 50'), again('61.8, 50')],
    ['narrow-slots', filledWith('lines.svg'), filledWith('line.svg')],
    ['small-mix', mixed(2), mixed(4)],
    [
        'thin-floor',
        fillRecipe({ pocket: 'art flag depth 1 mm air off', wood: 'thin' }).replace(
            'recipe c',
            'board thin { wood white-ash thickness 1.9 mm }\nrecipe c',
        ),
        fillRecipe({ pocket: 'art flag depth 1 mm air off', wood: 'walnut-12' }),
    ],
    [
        // Wenge across maple strains by about one per cent, maple along walnut by less than half of one.
        'movement-across-inlay',
        crossed('60 mm')
            .replace('of maple-06', 'of wenge-06')
            .replace('recipe tray', 'veneer wenge-06 { wood wenge thickness 0.6 mm }\nrecipe tray'),
        crossed('80 mm').replace('grain along height', 'grain along width'),
    ],
    ['movement-across-inlay', crossed('22 mm'), crossed('15 mm')],
];

describe('limits', () => {
    it.each(limits)('%s speaks on one side of its limit and is silent on the other', async (rule, speaks, silent) => {
        expect(await said(speaks, rule), 'speaks').not.toEqual([]);
        expect(await said(silent, rule), 'is silent').toEqual([]);
        const broken = (await all(silent)).filter((each) => /syntax|unknown|unit/.test(each.rule));
        expect(broken.map(({ message }) => message)).toEqual([]);
    });
});

async function said(text: string, rule: string): Promise<string[]> {
    return (await of(text, rule)).map(({ message }) => message);
}
