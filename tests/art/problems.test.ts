import { describe, expect, it } from 'vitest';
import { readSvg } from '../../shared/art/read-svg';

/** A drawing with a square that is always read, then one more line: what is told is about line 3. */
function told(content: string, attributes = ''): string[] {
    const art = readSvg(
        `<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10" ${attributes}>\n<rect width="1" height="1"/>\n${content}\n</svg>`,
    );
    expect(art.parts.length).toBeGreaterThan(0);
    return art.problems.map(({ kind, subject, line, column }) => `${kind} ${subject} ${line}:${column}`);
}

describe('nothing is dropped in silence', () => {
    for (const [content, ...problems] of [
        ['<text x="1" y="1">heron</text>', 'text text 3:1'],
        ['  <image href="#x" width="2" height="2"/>', 'unsupported image 3:3'],
        [
            '<foreignObject width="2" height="2"><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>',
            'unsupported foreignObject 3:1',
        ],
        ['<script>alert(1)</script>', 'unsupported script 3:1'],
        ['<rect width="2" height="2"><animate attributeName="x"/></rect>', 'unsupported animate 3:28'],
        ['<animateTransform attributeName="x"/>', 'unsupported animateTransform 3:1'],
        ['<video/>', 'unsupported video 3:1'],
        ['<g filter="url(#f)"><rect width="2" height="2"/></g>', 'unsupported filter 3:1'],
        ['<g mask="linear-gradient(#000, #fff)"><rect width="2" height="2"/></g>', 'unsupported mask 3:1'],
        ['<rect width="2" height="2" style="mix-blend-mode:multiply"/>', 'unsupported mix-blend-mode 3:1'],
        ['<pattern id="p"/><rect width="2" height="2" fill="url(#p)"/>', 'unsupported pattern 3:18'],
        [
            '<linearGradient id="p"><stop stop-color="red"/><stop offset="1"/></linearGradient><rect width="2" height="2" fill="url(#p)"/>',
            'unsupported linearGradient 3:1',
        ],
        [
            '<radialGradient id="p" gradientUnits="userSpaceOnUse" cx="2" cy="2" r="1" fx="5" fy="2"><stop stop-color="red"/><stop offset="1"/></radialGradient><rect width="2" height="2" fill="url(#p)"/>',
            'unsupported focal point 3:1',
            'unsupported radialGradient 3:1',
        ],
        ['<rect width="2" height="2" style="--a: red; fill: var(--a)"/>', 'unsupported var() 3:1'],
        ['<rect width="2" height="2" fill="heron"/>', 'unreadable fill 3:1'],
        ['<rect width="calc(1px + 1px)" height="2"/>', 'unreadable rect 3:1'],
        ['<path d="M0 0h2v2z h"/>', 'unreadable path 3:1'],
        ['<polygon points="0 0 1 0 1 x"/>', 'unreadable polygon 3:1'],
        ['<rect width="2" height="2" transform="turn(3)"/>', 'unreadable rect 3:1'],
        ['<use href="#nowhere"/>', 'unreadable use 3:1'],
        ['<rect width="2" height="2" clip-path="circle(1px)"/>', 'unsupported clip-path 3:1'],
        ['<style>@supports (x: y) { rect { fill: red } }</style>', 'unsupported @supports 3:1'],
        ['<style><![CDATA[rect { fill: #000; & g { fill: red } }]]></style>', 'unsupported style 3:1'],
        ['<style>rect:heron { fill: red }</style>', 'unsupported style 3:1'],
        ['<style>rect { fill }</style>', 'unreadable style 3:1'],
        ['<path d="M0 0h2v2"/>', 'open-path path 3:1'],
        ['<rect x="20" width="2" height="2"/>', 'off-page rect 3:1'],
        ['<path d="M0 0h1e999"/>', 'too-large path 3:1'],
        ['<g id="a"><use href="#a"/></g>', 'refused use 3:11'],
        [
            '<clipPath id="c" clip-path="url(#c)"><rect width="9" height="9"/></clipPath><rect width="2" height="2" clip-path="url(#c)"/>',
            'refused clipPath 3:1',
        ],
        [
            '<clipPath id="c"><g/><rect width="9" height="9"/></clipPath><rect width="2" height="2" clip-path="url(#c)"/>',
            'unsupported g 3:18',
        ],
    ] as const) {
        it(content, () => expect(told(content)).toEqual(problems));
    }

    it('what has no look of its own, and what belongs to others, is not spoken of', () => {
        const content =
            '<title>x</title><desc/><metadata><a:b xmlns:a="urn:a"><a:c/></a:b></metadata><defs><text>x</text></defs><b:view xmlns:b="urn:b"/><symbol id="s"><text/></symbol>';
        expect(told(content)).toEqual([]);
    });
});

describe('nothing outside the file is opened', () => {
    for (const [content, ...problems] of [
        ['<use href="other.svg#a"/>', 'refused use 3:1'],
        ['<use href="http://example.org/a.svg#a"/>', 'refused use 3:1'],
        ['<use href="file:///etc/passwd"/>', 'refused use 3:1'],
        ['<image href="data:image/png;base64,AAAA" width="2" height="2"/>', 'refused image 3:1'],
        ['<rect width="2" height="2" fill="url(http://example.org/a#b)"/>', 'refused rect 3:1'],
        ['<rect width="2" height="2" clip-path="url(a.svg#b)"/>', 'refused rect 3:1'],
        ['<style>@import url("a.css");</style>', 'refused @import 3:1'],
        ['<linearGradient id="p" href="a.svg#b"/><rect width="2" height="2" fill="url(#p)"/>', 'refused linearGradient 3:1'],
    ] as const) {
        it(content, () => expect(told(content)).toEqual(problems));
    }

    it('nor a style sheet or an entity that the file is said to need', () => {
        const svg =
            '<?xml-stylesheet href="a.css"?><!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]><svg width="9mm" height="9mm"><rect width="1" height="1"/></svg>';
        expect(readSvg(svg).problems.map(({ kind, subject }) => `${kind} ${subject}`)).toEqual([
            'refused xml-stylesheet',
            'refused a',
        ]);
    });
});

describe('many problems', () => {
    it('are counted after the first ten of a message', () => {
        const { problems } = readSvg(
            `<svg width="9mm" height="9mm"><rect width="1" height="1"/>${'<text/>\n'.repeat(1234)}</svg>`,
        );
        expect(problems.length).toBe(10);
        expect(problems.map(({ more }) => more)).toEqual([...Array.from({ length: 9 }), 1224]);
        expect(problems[9]).toMatchObject({ line: 10, column: 1 });
    });

    it('are counted for the message that they have, not for others of its sort', () => {
        const hat = '<path d="M0 0h1v1z" transform="turn(3)"/>';
        const open = '<path d="M0 0h2v2z h"/>';
        const { problems } = readSvg(`<svg width="9mm" height="9mm">${hat.repeat(12)}${open.repeat(3)}</svg>`);
        const messages = [...new Set(problems.map(({ message }) => message))];
        expect(messages).toHaveLength(2);
        const counts = messages.map((message) =>
            problems.filter((problem) => problem.message === message).reduce((sum, { more = 0 }) => sum + 1 + more, 0),
        );
        expect(counts).toEqual([12, 3]);
    });

    it('one shape drawn many times is told of once', () => {
        const svg = `<svg width="9mm" height="9mm"><path id="p" d="M0 0h1v1"/>${'<use href="#p"/>'.repeat(50)}</svg>`;
        expect(readSvg(svg).problems.map(({ kind }) => kind)).toEqual(['open-path']);
    });
});
