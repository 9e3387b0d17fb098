import { describe, expect, it } from 'vitest';
import { measuredEdits } from '../../language/coupon/measured';
import { openRows } from '../../language/coupon/open-rows';
import { readDepth } from '../../language/coupon/read-depth';
import { type Coupon, isCoupon, isFile } from '../../language/generated/ast';
import { lowerCoupons } from '../../language/lowering/coupons';
import { stockInSight } from '../../language/names/stock-in-sight';
import { burnRow, burnWords, openCouponFile } from '../../language/printing/coupon-block';
import { textFindings } from '../../language/text-findings';
import { open, services, start } from './services';

const stock = `laser shed { beam co2 power 45 W spot 0.15 mm }
board walnut-12 { wood black-walnut thickness 12 mm }
`;
const squares = [
    { number: 1, power: '20 %', speed: '400 mm/s', passes: 1 },
    { number: 2, power: '40 %', speed: '400 mm/s', passes: 1 },
    { number: 3, power: '40 %', speed: '400 mm/s', passes: 3 },
];
const coupon = { sheet: 'walnut-12', laser: 'shed', pitch: '0.1 mm' };

/** The text once measured rows are written into it. */
async function withMeasured(text: string, rows: readonly (readonly [string, string])[]): Promise<string> {
    const document = await open(text);
    const file = document.parseResult.value;
    const block = isFile(file) ? file.entries.find((entry): entry is Coupon => isCoupon(entry)) : undefined;
    const edits = measuredEdits(
        document,
        block,
        coupon,
        rows.map(([words, depth]) => ({ words, depth })),
    );
    return edits
        .toSorted((a, b) => b.offset - a.offset)
        .reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
}

async function depths(text: string): Promise<number[]> {
    const document = await open(text);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
    return lowerCoupons(document).flatMap((each) => each.coupon.burns.map((burn) => burn.depth.value));
}

describe('a coupon as recipe text', () => {
    it('can be read as it is, and becomes rows when the slashes go', async () => {
        const text = openCouponFile(coupon, squares, []) + stock;
        const before = await open(text);
        expect(textFindings(before, services).map(({ rule }) => rule)).toEqual(['missing-property']);
        expect(await depths(text.replaceAll('// burn', 'burn').replaceAll('…', '0.2'))).toEqual([0.2, 0.2, 0.2]);
    });
    it('names the files it needs', () => {
        expect(openCouponFile(coupon, squares, ['../../workshop.kerf'])).toMatch(/^use "\.\.\/\.\.\/workshop\.kerf"\n\n\/\//);
    });
    it('knows its open rows, and no others', () => {
        const text = `${openCouponFile(coupon, squares, [])}
// burn 10 % at 100 mm/s gives 0.3 mm
// burn it all, he said
//burn  10 %   at 9 mm/s  gives ? mm`;
        expect(openRows(text).map(({ words }) => words)).toEqual([...squares.map(burnWords), 'burn 10 % at 9 mm/s']);
        expect(openRows(text).map(({ number }) => number)).toEqual([1, 2, 3, undefined]);
        for (const { offset, length } of openRows(text)) {
            expect(text.slice(offset, offset + length)).toMatch(/^\/\/ ?burn.* mm( {2}\/\/ square \d)?$/);
        }
    });
});

describe('measured squares', () => {
    it('take the place of their open rows, and leave those that were skipped', async () => {
        const text = openCouponFile(coupon, squares, []) + stock;
        const now = await withMeasured(text, [
            ['burn 20 % at 400 mm/s', '0.03 mm'],
            ['burn 40 % at 400 mm/s x 3', '12 thou'],
        ]);
        expect(now).toBe(
            text
                .replace('// burn 20 % at 400 mm/s     gives … mm', 'burn 20 % at 400 mm/s gives 0.03 mm')
                .replace('// burn 40 % at 400 mm/s x 3 gives … mm', 'burn 40 % at 400 mm/s x 3 gives 12 thou'),
        );
        expect(openRows(now)).toHaveLength(1);
        expect(await depths(now)).toEqual([0.03, expect.closeTo(0.3048, 9)]);
    });
    it('are added to a block on several lines and to one on a single line', async () => {
        const many = `${stock}coupon walnut-12 on shed {\n    pitch 0.1 mm\n    burn 10 % at 90 mm/s gives 0.1 mm // good\n}\n`;
        const rows = [
            ['burn 20 % at 400 mm/s', '0.03 mm'],
            ['burn 40 % at 400 mm/s', '0.1 mm'],
        ] as const;
        const now = await withMeasured(many, rows);
        expect(now).toContain(
            '// good\n  burn 20 % at 400 mm/s gives 0.03 mm\n  burn 40 % at 400 mm/s gives 0.1 mm\n}\n'.replaceAll(
                '\n  burn',
                '\n    burn',
            ),
        );
        expect(await depths(now)).toEqual([0.1, 0.03, 0.1]);
        const one = `${stock}coupon walnut-12 on shed { pitch 0.1 mm }`;
        expect(await withMeasured(one, rows)).toBe(
            `${stock}coupon walnut-12 on shed { pitch 0.1 mm  ${burnRow(...rows[0])}  ${burnRow(...rows[1])} }`,
        );
    });
    it('make a block where there is none, with the line breaks of the file', async () => {
        const now = await withMeasured(stock.replaceAll('\n', '\r\n'), [['burn 20 % at 400 mm/s', '0.03 mm']]);
        expect(now).toContain(
            '}\r\n\r\ncoupon walnut-12 on shed {\r\n  pitch 0.1 mm\r\n  burn 20 % at 400 mm/s gives 0.03 mm\r\n}\r\n',
        );
        expect(await depths(now)).toEqual([0.03]);
    });
    it('keep the number that is burnt beside them, except where it would hide what follows on the line', async () => {
        const row = { words: 'burn 20 % at 400 mm/s', depth: '0.03 mm', number: 7 };
        const written = async (text: string): Promise<string> => {
            const document = await open(text);
            const file = document.parseResult.value;
            const block = isFile(file) ? file.entries.find((entry): entry is Coupon => isCoupon(entry)) : undefined;
            const [edit] = measuredEdits(document, block, coupon, [row]);
            return text.slice(0, edit!.offset) + edit!.text + text.slice(edit!.offset + edit!.length);
        };
        const line = 'burn 20 % at 400 mm/s gives 0.03 mm';
        for (const text of [
            await written(stock),
            await written(`${stock}coupon walnut-12 on shed {\n  pitch 0.1 mm\n}`),
            await written(
                `${stock}coupon walnut-12 on shed {\n  pitch 0.1 mm\n  // burn 20 % at 400 mm/s gives … mm // square 7\n}`,
            ),
        ]) {
            expect(text).toContain(`\n  ${line}  // square 7\n}`);
            expect(await depths(text)).toEqual([0.03]);
        }
        const one = await written(`${stock}coupon walnut-12 on shed { pitch 0.1 mm }`);
        expect(one).toContain(`{ pitch 0.1 mm  ${line} }`);
        expect(await depths(one)).toEqual([0.03]);
        // A bracket that is not closed yet: nothing that follows on the line may be hidden.
        expect(await written(`${stock}coupon walnut-12 on shed`)).not.toContain('// square');
    });
    it('change nothing when there are none', async () => expect(await withMeasured(stock, [])).toBe(stock));
});

describe('a typed depth', () => {
    it.each([
        ['0.31', '0.31 mm'],
        ['0,31', '0.31 mm'],
        [' 0.31 mm ', '0.31 mm'],
        ['12 thou', '12 thou'],
        ['1/64 in', '1/64 in'],
        ['0', '0 mm'],
        ['0.31 +- 0.02', '0.31 mm +- 0.02 mm'],
        ['0.3 .. 0.4 mm', '0.3 .. 0.4 mm'],
    ])('%s is %s', async (typed, depth) => {
        await start();
        expect(readDepth(typed, services)).toMatchObject({ depth });
    });
    it.each([
        '',
        'deep',
        '-1',
        '3 s',
        '1e999',
        '1/0 in',
        '0.3 mm }',
        '0.3 mm burn 2 % at 1 mm/s gives 1',
        '0.3 mm // x',
        '9'.repeat(400),
        '\0',
    ])('%j is none', async (typed) => {
        await start();
        expect(readDepth(typed, services)).toEqual({ problem: expect.stringContaining('such as 0.31 mm') });
    });
});

describe('the stock that a file can name', () => {
    it('holds its own and that of the files it uses, each name once', async () => {
        await open(`${stock}coupon walnut-12 on shed { pitch 0.1 mm }`, 'file:///shop/sight-stock.kerf');
        const document = await open(
            'use "sight-stock.kerf"\nboard walnut-12 { wood black-walnut thickness 9 mm }',
            'file:///shop/sight.kerf',
        );
        const sight = stockInSight(document, services);
        expect(sight.sheets.map(({ name }) => name)).toEqual(['walnut-12']);
        expect(sight.sheets[0]!.$document ?? sight.sheets[0]!.$container.$document).toBe(document);
        expect(sight.lasers.map(({ name }) => name)).toEqual(['shed']);
        expect(sight.coupons).toHaveLength(1);
    });
});
