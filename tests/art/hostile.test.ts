import { describe, expect, it } from 'vitest';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area } from '../../shared/geometry/measure';

const svg = (content: string) =>
    `<svg width="100mm" height="100mm" viewBox="0 0 100 100"><rect width="10" height="10"/>${content}</svg>`;

function many(count: number, make: (i: number) => string): string {
    return Array.from({ length: count }, (_, i) => make(i)).join('');
}

let seed = 1;
function random(): number {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return seed / 2_147_483_648;
}

const letter = (i: number) => String.fromCharCode(97 + i);

/**
 * Files made to hurt: each must be answered within `seconds` (of a busy machine), with the first
 * square still there where the file can be read at all, and say what was left out.
 */
const files: Readonly<Record<string, readonly [text: () => string, kinds: readonly string[], seconds: number]>> = {
    'entities made of entities': [
        () => {
            const entities = many(20, (i) => `<!ENTITY ${letter(i + 1)} "${`&${letter(i)};`.repeat(10)}">`);
            return `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">${entities}]>${svg('<g id="&u;"/>')}`;
        },
        ['too-large'],
        5,
    ],
    'one long entity many times': [
        () => `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(100_000)}">]>${svg('<g id="&a;"/>'.repeat(1000))}`,
        ['too-large'],
        5,
    ],
    'an entity of itself': [() => `<!DOCTYPE svg [<!ENTITY a "&b;"><!ENTITY b "&a;">]>${svg('<g id="&a;"/>')}`, ['too-large'], 5],
    'a hundred thousand deep': [() => svg('<g>'.repeat(100_000) + '</g>'.repeat(100_000)), ['too-large'], 20],
    'a hundred thousand deep and never closed': [
        () => svg('').replace('</svg>', '<g>'.repeat(100_000)),
        ['too-large', 'unreadable'],
        20,
    ],
    'a use of ten uses of ten uses': [
        () =>
            svg(
                `<g id="g0"><rect width="1" height="1"/></g>${many(12, (i) => `<g id="g${i + 1}">${`<use href="#g${i}"/>`.repeat(10)}</g>`)}`,
            ),
        ['too-large'],
        60,
    ],
    'clip paths clipped by clip paths': [
        () =>
            svg(
                `${many(12, (i) => `<clipPath id="c${i + 1}">${`<rect width="9" height="9" clip-path="url(#c${i})"/>`.repeat(10)}</clipPath>`)}<clipPath id="c0"><rect width="9" height="9"/></clipPath><rect width="90" height="90" clip-path="url(#c12)"/>`,
            ),
        [],
        10,
    ],
    'numbers beyond numbers': [
        () =>
            svg(
                '<path d="M0 0L1e308 0L1e308 1e308z"/><path d="M1e400 0L1 1"/><circle r="1e300"/><path d="M0 0A1e300 1 0 0 1 1e200 1e200"/><path d="M0 0L50 50" stroke="#000" stroke-width="1e308"/><rect width="9" height="9" transform="scale(1e300)"/><rect width="9" height="9" transform="matrix(NaN 0 0 0 0 0)"/><path d="M0 0C1e308 1e308 -1e308 1e308 9 9"/>',
            ),
        ['too-large', 'unreadable'],
        10,
    ],
    'a line through a hundred thousand random points': [
        () => svg(`<path d="M0 0L${many(100_000, () => `${(100 * random()).toFixed(2)} ${(100 * random()).toFixed(2)} `)}"/>`),
        ['too-large'],
        30,
    ],
    'a thick stroke along a tiny scribble': [
        () =>
            svg(
                `<path fill="none" stroke="#000" stroke-width="8" d="M50 50${many(3000, () => `c1 2-2 1 ${random().toFixed(2)}-.5`)}"/>`,
            ),
        ['too-large'],
        30,
    ],
    'two million corners': [() => svg(`<path d="M0 0${'h1v1'.repeat(1_100_000)}"/>`), ['too-large'], 60],
    'dashes without end': [
        () =>
            svg(
                '<path d="M0 50h1e30" stroke="#000" stroke-dasharray="1"/><path d="M0 60h100" stroke="#000" stroke-dasharray="1e-9"/>',
            ),
        ['too-large'],
        10,
    ],
    'a style sheet of errors': [() => svg(`<style>${'{}'.repeat(500_000)}</style>`), ['unreadable'], 20],
    'a style sheet of brackets': [
        () => svg(`<style>${'g{'.repeat(50_000)}${':not('.repeat(50_000)}</style>`),
        ['unreadable'],
        20,
    ],
    'selectors that look at everything': [
        () =>
            svg(
                `<style>${many(2000, (i) => `* > *:nth-of-type(${i}n+7) ~ *{fill:#000} `)}</style>${'<rect width="1" height="1"/>'.repeat(5000)}`,
            ),
        ['too-large'],
        60,
    ],
    'half a million elements': [() => svg('<g/>'.repeat(500_000)), ['too-large'], 60],
    'masks masked by masks': [
        () =>
            svg(
                `${many(12, (i) => `<mask id="m${i + 1}">${`<rect width="9" height="9" fill="#fff" mask="url(#m${i})"/>`.repeat(10)}</mask>`)}<mask id="m0"><rect width="9" height="9" fill="#777"/></mask><rect width="90" height="90" mask="url(#m12)"/>`,
            ),
        [],
        20,
    ],
    'gradients in many shades on many corners': [
        () => {
            const stops = many(60, (i) => `<stop offset="${i / 60}" stop-color="${i % 2 === 0 ? '#000' : '#fff'}"/>`);
            const teeth = many(20_000, (i) => `M${i / 250} 20v60h.002v-60z`);
            return svg(
                `<linearGradient id="g" x1="0" x2="1" spreadMethod="reflect">${stops}</linearGradient>${`<path fill="url(#g)" d="${teeth}"/>`.repeat(5)}`,
            );
        },
        ['unsupported'],
        60,
    ],
    'a gradient that turns without end': [
        () =>
            svg(
                '<radialGradient id="g" gradientUnits="userSpaceOnUse" cx="50" cy="50" r="1e-9" spreadMethod="repeat"><stop stop-color="#000"/><stop offset="1" stop-color="#fff"/></radialGradient><rect y="20" width="90" height="60" fill="url(#g)"/><linearGradient id="h" x2="1e-300" spreadMethod="reflect"><stop stop-color="#000"/><stop offset="1" stop-color="#fff"/></linearGradient><rect y="20" width="90" height="60" fill="url(#h)"/>',
            ),
        ['unsupported'],
        20,
    ],
    'a chain of gradients': [
        () =>
            svg(
                `${many(5000, (i) => `<linearGradient id="g${i}" href="#g${i + 1}"/>`)}<rect width="9" height="9" fill="url(#g0)"/>`,
            ),
        [],
        10,
    ],
    'paints in paints': [() => svg(`<rect width="9" height="9" fill="${'url(#a) '.repeat(20_000)}"/>`), ['unreadable'], 10],
    'values of spaces, digits and brackets': [
        () => {
            const spaces = ' '.repeat(100_000);
            const digits = '1'.repeat(100_000);
            const values = [
                `url(${spaces}`,
                `url("${spaces}`,
                `a${spaces}b`,
                `rgb(${digits}`,
                `#${digits}`,
                `${digits}!`,
                `${digits}.${digits}e`,
            ];
            const names = [
                'fill',
                'stroke-width',
                'stroke-dasharray',
                'transform',
                'clip-path',
                'style',
                'class',
                'd',
                'opacity',
                'marker-end',
                'width',
            ];
            return svg(values.flatMap((value) => names.map((name) => `<path ${name}='${value}'/>`)).join(''));
        },
        ['unreadable'],
        20,
    ],
    'more text than is read': [() => svg(`<!-- ${'x'.repeat(60_000_000)} -->`), ['too-large'], 10],
};

describe('files made to hurt', () => {
    for (const [name, [text, kinds, seconds]] of Object.entries(files)) {
        it(name, { timeout: 2000 * seconds }, () => {
            const file = text();
            const started = performance.now();
            const art = readSvg(file);
            const burnt = area(painted(art, []));
            expect(performance.now() - started).toBeLessThan(1000 * seconds);
            if (file.length < 60_000_000) expect(burnt).toBeGreaterThan(99);
            for (const kind of kinds) expect(art.problems.map((problem) => problem.kind)).toContain(kind);
            expect(art.problems.length).toBeLessThan(250);
        });
    }
});
