import { describe, expect, it } from 'vitest';
import type { ArtPart } from '../../shared/art/art';
import { readSvg } from '../../shared/art/read-svg';

function read(content: string): readonly ArtPart[] {
    return readSvg(`<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${content}</svg>`)
        .parts;
}

/** The colour of the first thing painted. */
const colour = (content: string) => read(content)[0]?.colour;
const rect = (attributes: string) => `<rect width="9" height="9" ${attributes}/>`;

describe('the cascade (CSS Cascading and Inheritance 4)', () => {
    for (const [name, content, expected] of [
        ['a rule beats an attribute', `<style>rect{fill:red}</style>${rect('fill="lime"')}`, '#ff0000'],
        ['a style attribute beats a rule', `<style>#a{fill:red}</style>${rect('id="a" style="fill:lime"')}`, '#00ff00'],
        [
            'an important rule beats a style attribute',
            `<style>rect{fill:red!important}</style>${rect('style="fill:lime"')}`,
            '#ff0000',
        ],
        [
            'an important style attribute beats an important rule',
            `<style>rect{fill:red!important}</style>${rect('style="fill:lime!important"')}`,
            '#00ff00',
        ],
        [
            'a class beats a name, wherever it stands',
            `<style>.a{fill:red} rect{fill:lime}</style>${rect('class="b a"')}`,
            '#ff0000',
        ],
        [
            'an id beats many classes',
            `<style>#a{fill:red} .a.b.c.d{fill:lime}</style>${rect('id="a" class="a b c d"')}`,
            '#ff0000',
        ],
        [
            'of two alike the later wins, over several sheets',
            `<style>rect{fill:lime}</style>${rect('')}<style>rect{fill:red}</style>`,
            '#ff0000',
        ],
        [
            'a value that is none leaves the next one',
            `<style>rect{fill:red} .a{fill:heron}</style>${rect('class="a"')}`,
            '#ff0000',
        ],
        ['inherit takes the parent’s', `<g fill="red"><rect width="9" height="9" fill="inherit"/></g>`, '#ff0000'],
        ['initial takes SVG’s own', `<g fill="red">${rect('fill="initial"')}</g>`, '#000000'],
        [
            'currentColor is looked up where it is used',
            `<g color="red" fill="currentColor"><g color="lime">${rect('')}</g></g>`,
            '#00ff00',
        ],
        ['upper and lower case of properties do not matter', `<style>rect{FILL:red}</style>${rect('')}`, '#ff0000'],
        ['a sheet for print does not count', `<style media="print">rect{fill:red}</style>${rect('fill="lime"')}`, '#00ff00'],
        [
            '@media screen does',
            `<style>@media print{rect{fill:lime}} @media screen, print{rect{fill:red}}</style>${rect('')}`,
            '#ff0000',
        ],
        ['a use hands its style down', `<defs>${rect('id="a"')}</defs><use href="#a" fill="red"/>`, '#ff0000'],
        ['what is used keeps its own', `<defs>${rect('id="a" fill="lime"')}</defs><use href="#a" fill="red"/>`, '#00ff00'],
        [
            'context-fill is the fill of what refers',
            `<defs>${rect('id="a" fill="context-fill"')}</defs><use href="#a" fill="red"/>`,
            '#ff0000',
        ],
    ] as const) {
        it(name, () => expect(colour(content)).toBe(expected));
    }
});

describe('selectors (CSS Selectors 4)', () => {
    const scene =
        '<g id="g" class="a b"><rect id="r" width="9" height="9" data-kind="bird-small"/><circle r="9"/><rect width="9" height="9"/></g>';
    for (const [selector, hits] of [
        ['*', 3],
        ['rect', 2],
        ['svg rect', 2],
        ['svg > rect', 0],
        ['g > rect', 2],
        ['.a.b > #r', 1],
        ['.a.c rect', 0],
        ['rect + circle', 1],
        ['rect ~ rect', 1],
        ['circle + rect, circle', 2],
        ['[data-kind]', 1],
        ['[data-kind="bird-small"]', 1],
        ['[data-kind|=bird]', 1],
        ['[data-kind^=bird]', 1],
        ['[data-kind$=small]', 1],
        ['[data-kind*="rd-s"]', 1],
        ['[data-kind="BIRD-SMALL" i]', 1],
        ['[data-kind=""]', 0],
        ['rect:first-child', 1],
        ['rect:last-child', 1],
        ['rect:nth-child(odd)', 2],
        ['rect:nth-child(2n)', 0],
        [':nth-child(2)', 1],
        ['rect:nth-of-type(2)', 1],
        ['rect:nth-last-of-type(2)', 1],
        ['circle:only-of-type', 1],
        ['g > :not(rect)', 1],
        ['g > :not(rect, circle)', 0],
        [':is(circle, #r)', 2],
        ['rect:hover', 0],
        ['g:root rect', 0],
        [':root rect', 2],
    ] as const) {
        it(`${selector} paints ${hits}`, () => {
            const parts = read(`${scene}<style>svg { fill: #fff } ${selector} { fill: red }</style>`);
            expect(parts.filter((part) => part.colour === '#ff0000').length).toBe(hits);
        });
    }

    it('a long sheet costs little: rules are found by what they end in', () => {
        const rules = Array.from(
            { length: 5000 },
            (_, i) => `.c${i} { fill: #${(i % 4096).toString(16).padStart(3, '0')} }`,
        ).join('');
        const shapes = Array.from({ length: 5000 }, (_, i) => `<rect class="c${i}" width="1" height="1"/>`).join('');
        const parts = read(`<style>${rules}</style>${shapes}`);
        expect(parts[0xf]?.colour).toBe('#0000ff');
        expect(parts.length).toBe(5000);
    });
});

describe('darkness, as a grey print would show it', () => {
    for (const [fill, darkness] of [
        ['#000', 1],
        ['#fff', 0],
        ['#f00', 0.7874],
        ['#0f0', 0.2848],
        ['#00f', 0.9278],
        ['#808080', 0.498],
        ['rgb(0 0 0 / 25%)', 0.25],
        ['color(srgb 0.5 0.5 0.5)', 0.5],
        ['lab(0 0 0)', 1],
        ['oklch(1 0 0)', 0],
        ['hwb(0 50% 50%)', 0.5],
        ['HSL(0deg 0% 50%)', 0.5],
        ['#cd853f icc-color(a, 1, 2)', 0.4382],
    ] as const) {
        it(`${fill} is ${darkness} dark`, () => expect(read(rect(`fill="${fill}"`))[0]!.darkness).toBeCloseTo(darkness, 3));
    }

    it('opacities multiply', () => {
        const [part] = read(`<g opacity="0.5">${rect('fill-opacity="50%" opacity="0.5"')}</g>`);
        expect(part!.opacity).toBeCloseTo(0.125, 12);
        expect(part!.darkness).toBeCloseTo(0.125, 12);
        expect(part!.colour).toBe('#dfdfdf');
    });

    it('a gradient that is looked through has the mean of its stops, weighed by how far they reach', () => {
        const stops =
            '<stop offset="0" stop-color="#000"/><stop offset="0.5" stop-color="#000"/><stop offset="1" stop-color="#fff"/>';
        const [part] = read(`<linearGradient id="g">${stops}</linearGradient>${rect('fill="url(#g)" fill-opacity=".5"')}`);
        expect(part!.darkness).toBeCloseTo(0.375, 12);
    });
});

describe('transforms by style (CSS Transforms 1)', () => {
    for (const [style, attributes] of [
        [
            'transform: rotate(30deg) translate(10px, -20%); transform-origin: 30px 60px',
            'transform="translate(30 60) rotate(30) translate(10 -20) translate(-30 -60)"',
        ],
        ['transform: translateX(1cm) scaleY(50%)', 'transform="translate(37.795275590551) scale(1 .5)"'],
        ['transform: skewX(0.1turn) rotate(0.5rad)', 'transform="skewX(36) rotate(28.64788975654116)"'],
        ['transform: scale(2); transform-origin: center', 'transform="translate(50 50) scale(2) translate(-50 -50)"'],
        ['transform: scale(2); transform-origin: right bottom', 'transform="translate(100 100) scale(2) translate(-100 -100)"'],
        ['transform: none', ''],
    ] as const) {
        it(style, () => {
            const [byStyle] = read(`<rect x="60" y="55" width="9" height="9" style="${style}"/>`);
            const [byAttribute] = read(`<rect x="60" y="55" width="9" height="9" ${attributes}/>`);
            const numbers = [...byAttribute!.region.rings[0]!];
            expect(byStyle!.region.rings[0]!.length).toBe(numbers.length);
            for (const [i, value] of byStyle!.region.rings[0]!.entries()) expect(value).toBeCloseTo(numbers[i]!, 6);
        });
    }
});

describe('parts', () => {
    it('carry their own ids and classes and those around them, innermost first', () => {
        const [part] = read(`<g id="tray" class="deep"><g class="wing left">${rect('id="feather" class="f"')}</g></g>`);
        expect(part!.ids).toEqual(['feather', 'tray']);
        expect(part!.classes).toEqual(['f', 'wing', 'left', 'deep']);
    });

    it('through a use carry the id of both', () => {
        expect(read(`<defs>${rect('id="a"')}</defs><use id="u" href="#a"/>`)[0]!.ids).toEqual(['a', 'u']);
    });

    it('come in painter’s order, the fill before the stroke', () => {
        const parts = read(`${rect('fill="red" stroke="lime"')}${rect('fill="blue"')}`);
        expect(parts.map((part) => part.colour)).toEqual(['#ff0000', '#00ff00', '#0000ff']);
    });

    it('say whether a fill was left open', () => {
        const paths = ['M0 0h9v9', 'M0 0h9v9z', 'M0 0h9v9L0 0', 'M0 0h9'];
        expect(paths.map((d) => read(`<path d="${d}" stroke="red"/>`).some(({ open }) => open))).toEqual([
            true,
            false,
            false,
            false,
        ]);
    });
});
