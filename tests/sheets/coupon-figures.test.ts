/** The same squares, strips and plugs in table and drawing, read back by number. */
import { describe, expect, it } from 'vitest';
import type { CouponSheet } from '../../shared/burn/coupon-sheet';
import { couponShapes } from '../../shared/sheets/coupon-svg';
import { couponTable } from '../../shared/sheets/coupon-table';
import { csv } from '../../shared/sheets/csv';

const rung = (powerRatio: number, speed: number, passes: number) => ({ powerRatio, power: 45 * powerRatio, speed, passes });
const expected = { value: 0.456, low: 0.123, high: 0.789 };
const sheet = {
    ...{ width: 120, height: 90, pitch: 0.0825 },
    squares: [
        { number: 1, x: 10, y: 5, size: 8, ...rung(0.2, 400, 1), expected },
        { number: 2, x: 20.5, y: 5, size: 8, ...rung(0.333, 62.5, 3) },
    ],
    strips: [{ number: 3, x: 10, y: 30, length: 40, drawn: 6, ...rung(0.9, 12, 2) }],
    ladder: {
        settings: rung(0.85, 9, 1),
        opening: { x: 70, y: 30, length: 20, width: 10 },
        plugs: [0.05, 0.125].map((larger, at) => ({
            ...{ number: 4 + at, larger, x: 70, y: 50 + 20 * at },
            ...{ length: 20 + 2 * larger, width: 10 + 2 * larger },
        })),
    },
    labels: [Float64Array.from([1, 2, 3, 4.5]), Float64Array.from([5, 6, 7, 8, 9, 10])],
} as unknown as CouponSheet;

/** CSV by RFC 4180, read by states. */
function readCsv(text: string): string[][] {
    const rows: string[][] = [[]];
    let field = '';
    let quoted = false;
    for (let at = 0; at < text.length; at++) {
        const letter = text[at]!;
        if (quoted && letter === '"' && text[at + 1] === '"') field += text[at++];
        else if (letter === '"') quoted = !quoted;
        else if (!quoted && (letter === ',' || letter === '\n')) {
            rows.at(-1)!.push(field.replace(/\r$/, ''));
            field = '';
            if (letter === '\n') rows.push([]);
        } else field += letter;
    }
    return rows.slice(0, -1);
}

describe('the table of a coupon', () => {
    const [head, ...rows] = readCsv(couponTable(sheet));
    const column = (name: string) => rows.map((row) => row[head!.indexOf(name)]!);

    it('has a row for each square, strip and plug, as wide as its head, with the last field left free', () => {
        expect(rows.map((row) => row.length)).toEqual([10, 10, 10, 10, 10]);
        expect(column('square').map((name) => Number(/\d+/.exec(name)![0]))).toEqual([1, 2, 3, 4, 5]);
        expect(new Set(column('measured mm'))).toEqual(new Set(['']));
    });

    it('has power in per cent and in watts of the same beam, and the passes of each', () => {
        const watts = column('power W').map(Number);
        for (const [index, percent] of column('power %').map(Number).entries())
            expect(watts[index]! / 45).toBeCloseTo(percent / 100, 4);
        expect(column('power %')).toEqual(['20', '33.3', '90', '85', '85']);
        expect(column('speed mm/s')).toEqual(['400', '62.5', '12', '9', '9']);
        expect(column('passes')).toEqual(['1', '3', '2', '1', '1']);
        expect(column('pitch mm')).toEqual(['0.0825', '0.0825', '', '', '']);
    });

    it('has a guess with its range only where there is one', () => {
        expect(column('guess mm')).toEqual(['0.46', '', '', '', '']);
        expect([column('from mm')[0], column('to mm')[0]]).toEqual(['0.12', '0.79']);
    });
});

describe('the shapes of a coupon', () => {
    const shapes = couponShapes(sheet);
    const rects = shapes.flatMap((line) => {
        const found = /<rect x="(\S+)" y="(\S+)" width="(\S+)" height="(\S+)"><desc>([^<]*)</.exec(line);
        return found === null ? [] : [{ box: found.slice(1, 5).map(Number), says: found[5]! }];
    });

    it('are where the layout has them, each as long and as wide', () => {
        expect(rects.map(({ box }) => box)).toEqual([
            [10, 5, 8, 8],
            [20.5, 5, 8, 8],
            [10, 30, 40, 6],
            [70, 30, 20, 10],
            [70, 50, 20.1, 10.1],
            [70, 70, 20.25, 10.25],
        ]);
    });

    it('say their settings, and passes only where there is more than one', () => {
        expect(rects.map(({ says }) => / x (\d+)/.exec(says)?.[1])).toEqual([
            undefined,
            '3',
            '2',
            undefined,
            undefined,
            undefined,
        ]);
        expect(rects.map(({ says }) => /([\d.]+) %/.exec(says)![1])).toEqual(['20', '33.3', '90', '85', '85', '85']);
        // A plug's all round is half of what it is longer than the opening.
        for (const { box, says } of rects.slice(4))
            expect(Number(/([\d.]+) mm larger/.exec(says)![1])).toBeCloseTo((box[2]! - 20) / 2, 9);
    });

    it('have the numbers as strokes through all their points', () => {
        const data = / d="([^"]*)"/.exec(shapes.at(-1)!)![1]!;
        expect(data.match(/-?[\d.]+/g)!.map(Number)).toEqual([1, 2, 3, 4.5, 5, 6, 7, 8, 9, 10]);
        expect([data.match(/M/g)!.length, data.match(/L/g)!.length]).toEqual([2, 3]);
    });

    it('of a coupon without strips and plugs are squares and numbers alone', () => {
        const { strips: _, ladder: __, ...bare } = sheet;
        expect(couponShapes(bare as CouponSheet).filter((line) => line.includes('<rect'))).toHaveLength(2);
        expect(readCsv(couponTable(bare as CouponSheet))).toHaveLength(3);
    });
});

describe('rows as CSV', () => {
    it('come back as they were, whatever is in them', () => {
        const rows = [
            ['a', 'b,c', 'say "x"', 'two\nlines', ''],
            ['-12.5', '+3', '7', ' space ', '""'],
        ];
        expect(readCsv(csv(rows))).toEqual(rows);
        expect(csv([['plain', '-12.5']])).toBe('plain,-12.5\r\n');
    });

    it('begin with nothing that a spreadsheet carries out, but numbers stay numbers', () => {
        for (const text of ['=1', '+a', '-b', '@c', '\td']) expect(readCsv(csv([[text]]))[0]![0]).toBe(`'${text}`);
        for (const text of ['a=1', '-1', '+2.5']) expect(readCsv(csv([[text]]))[0]![0]).toBe(text);
    });
});
