import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Art } from '../../shared/art/art';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area } from '../../shared/geometry/measure';

const said = ({ problems }: Art) => problems.map(({ kind, line, column }) => `${kind} ${line}:${column}`);
const root = 'width="10mm" height="10mm" viewBox="0 0 10 10"';

describe('files as they come', () => {
    for (const [name, text] of [
        ['without the namespace', `<svg ${root}><rect width="5" height="2"/></svg>`],
        ['with a prefix', `<a:svg xmlns:a="http://www.w3.org/2000/svg" ${root}><a:rect width="5" height="2"/></a:svg>`],
        ['with a prefix nobody declared', `<svg:svg ${root}><svg:rect width="5" height="2"/></svg:svg>`],
        [
            'with a byte order mark and a declaration',
            `\uFEFF<?xml version="1.0" encoding="UTF-8"?>\n<svg ${root}><rect width="5" height="2"/></svg>`,
        ],
        [
            'with a public DOCTYPE',
            `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd"><svg ${root}><rect width="5" height="2"/></svg>`,
        ],
        [
            'with entities, in namespaces too',
            `<!DOCTYPE svg [<!ENTITY ns "http://www.w3.org/2000/svg"><!ENTITY five "5"><!ENTITY w '&five;'>]><svg xmlns="&ns;" ${root}><rect width="&w;" height="&#50;"/></svg>`,
        ],
        [
            'with comments and other people’s elements between',
            `<svg ${root} xmlns:x="urn:x"><!-- <rect width="9" height="9"/> --><x:rect width="9" height="9"/><rect width="5" height="2" x:width="9"/></svg>`,
        ],
        [
            'with character data as a style sheet',
            `<svg ${root}><style><![CDATA[g > rect { fill: #000 } /* < & > */]]></style><g fill="#fff"><rect width="5" height="2"/></g></svg>`,
        ],
        [
            'with quotes inside values',
            `<svg ${root}><style>rect[id='"&amp;&lt;"'] { fill: #000 }</style><rect fill="#fff" id='"&amp;&lt;"' width="5" height="2"/></svg>`,
        ],
    ] as const) {
        it(name, () => {
            const art = readSvg(text);
            expect(area(painted(art, []))).toBeCloseTo(10, 6);
            expect(art.problems).toEqual([]);
        });
    }
});

describe('values survive the way through two readers', () => {
    it('whatever they hold, as long as XML can hold it', () => {
        const id = fc
            .string({ unit: 'binary', minLength: 1, maxLength: 80 })
            .filter((text) => !/[\p{Cc}\p{Cs}\ufffe\uffff]/u.test(text));
        fc.assert(
            fc.property(id, fc.constantFrom('', 'x'.repeat(600)), (written, tail) => {
                const value = written + tail;
                const escaped = value.replace(/[&<"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
                const art = readSvg(`<svg ${root}><rect width="5" height="2" id="${escaped}"/></svg>`);
                expect(art.parts[0]!.ids).toEqual([value]);
                expect(art.problems).toEqual([]);
            }),
            { numRuns: 300 },
        );
    });

    it('and places are right behind long ones', () => {
        const line = `<path d="M0 0${'h1v1'.repeat(500)}"/>`;
        const { problems } = readSvg(`<svg ${root}>${line}${line}<text/>\n${line}  <text/></svg>`);
        const column = `<svg ${root}>${line}${line}`.length + 1;
        const texts = problems.filter(({ kind }) => kind === 'text').map((problem) => [problem.line, problem.column]);
        expect(texts).toEqual([
            [1, column],
            [2, line.length + 3],
        ]);
    });
});

describe('broken files', () => {
    const good = `<svg ${root}>\n<rect width="5" height="2"/>`;
    for (const [name, text, ...problems] of [
        ['cut off between elements', good, 'unreadable 2:29'],
        ['cut off in a tag', `${good}<circle r="`, 'unreadable 2:40'],
        ['a closing tag of another name', `${good}</g></svg>`, 'unreadable 2:33'],
        ['an attribute without quotes', `${good}<circle r=3/></svg>`, 'unreadable 2:40'],
        ['an attribute twice', `${good}<circle r="1" r="1"/></svg>`, 'unreadable 2:50'],
        ['an entity nobody declared', `${good}<g id="&nbsp;"/></svg>`, 'unreadable 2:42'],
    ] as const) {
        it(`${name}: what came before is kept, and the place told`, () => {
            const art = readSvg(text);
            expect(area(painted(art, []))).toBeGreaterThan(9.9);
            expect(said(art).slice(0, problems.length)).toEqual(problems);
        });
    }

    for (const [name, text, kind] of [
        ['nothing', '', 'empty'],
        ['space', ' \n ', 'empty'],
        ['words', 'a heron', 'unreadable'],
        ['another kind of document', '<html><svg/></html>', 'unreadable'],
        ['a picture’s bytes', '\u0089PNG\r\n\u001a\n', 'unreadable'],
        ['packed bytes', '\u001f\u008b\b', 'unreadable'],
        ['UTF-16 read as something else', '<\0s\0v\0g\0/\0>\0', 'unreadable'],
        ['nothing painted', `<svg ${root}/>`, 'empty'],
    ] as const) {
        it(name, () => {
            const art = readSvg(text);
            expect(art.parts).toEqual([]);
            expect(art.problems.map((problem) => problem.kind)).toContain(kind);
        });
    }
});
