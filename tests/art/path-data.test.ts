import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { readPathData } from '../../shared/art/shape/path-data';
import type { PathSink } from '../../shared/art/shape/sink';

type Segment = readonly [string, ...number[]];

/** What the sink is told, as plain segments. */
function segmentsOf(text: string): { segments: Segment[]; error: number | undefined } {
    const segments: Segment[] = [];
    const sink: PathSink = {
        moveTo: (x, y) => segments.push(['M', x, y]),
        lineTo: (x, y) => segments.push(['L', x, y]),
        quadTo: (...numbers) => segments.push(['Q', ...numbers]),
        cubicTo: (...numbers) => segments.push(['C', ...numbers]),
        arcTo: (rx, ry, turn, large, sweep, x, y) => segments.push(['A', rx, ry, turn, large ? 1 : 0, sweep ? 1 : 0, x, y]),
        close: () => segments.push(['Z']),
    };
    return { error: readPathData(text, sink), segments };
}

/** The same by an independent library. It moves no pen after a closing, and has no plain form of H and V. */
function byLibrary(text: string): Segment[] {
    const segments: Segment[] = [];
    let start: readonly [number, number] = [0, 0];
    let closed = false;
    svgpath(text)
        .abs()
        .unshort()
        .iterate((segment, _index, x, y) => {
            const [letter, ...numbers] = segment as unknown as [string, ...number[]];
            if (closed && letter !== 'M' && letter.toUpperCase() !== 'Z') segments.push(['M', ...start]);
            if (letter === 'M') start = [numbers[0]!, numbers[1]!];
            if (letter === 'H') segments.push(['L', numbers[0]!, y]);
            else if (letter === 'V') segments.push(['L', x, numbers[0]!]);
            else if (letter.toUpperCase() !== 'Z') segments.push([letter, ...numbers]);
            else if (!closed) segments.push(['Z']);
            closed = letter.toUpperCase() === 'Z';
        });
    return segments;
}

const number = fc.integer({ min: -900, max: 900 }).map((value) => value / 10);
const counts = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, z: 0 } as const;
const command = fc.constantFrom(...(Object.keys(counts) as (keyof typeof counts)[])).chain((letter) =>
    fc
        .tuple(fc.boolean(), fc.array(number, { minLength: counts[letter], maxLength: counts[letter] }))
        .map(([relative, numbers]) => {
            return `${relative ? letter : letter.toUpperCase()}${numbers.join(' ')}`;
        }),
);
const arc = fc
    .tuple(fc.boolean(), fc.array(number, { minLength: 5, maxLength: 5 }), fc.nat(1), fc.nat(1))
    .map(
        ([relative, [rx, ry, turn, x, y], large, sweep]) =>
            `${relative ? 'a' : 'A'}${rx} ${ry} ${turn} ${large}${sweep}${x} ${y}`,
    );

describe('path data', () => {
    it('any well-formed path reads as an independent library reads it', () => {
        fc.assert(
            fc.property(fc.array(fc.oneof(command, arc), { maxLength: 12 }), (commands) => {
                const text = `M10 20${commands.join('')}`;
                const { segments, error } = segmentsOf(text);
                expect(error).toBeUndefined();
                const expected = byLibrary(text);
                expect(segments.map(([letter]) => letter)).toEqual(expected.map(([letter]) => letter));
                segments.forEach((segment, i) => {
                    segment.slice(1).forEach((value, k) => {
                        const other = expected[i]![k + 1] as number;
                        // The library keeps a negative radius; its sign means nothing.
                        if (segment[0] === 'A' && k < 2) expect(Math.abs(value as number)).toBeCloseTo(Math.abs(other), 6);
                        else expect(value).toBeCloseTo(other, 6);
                    });
                });
            }),
            { numRuns: 400 },
        );
    });

    const readings: readonly (readonly [name: string, text: string, segments: readonly Segment[], error?: number])[] = [
        [
            'numbers glued together',
            'M1-2.5L.5+3e1.5',
            [
                ['M', 1, -2.5],
                ['L', 0.5, 30],
            ],
            7,
        ],
        ['leading zeros', 'M007 010', [['M', 7, 10]]],
        [
            'flags without space',
            'M0 0a1 1 0 01.5 5',
            [
                ['M', 0, 0],
                ['A', 1, 1, 0, 0, 1, 0.5, 5],
            ],
        ],
        [
            'pairs after a moveto are lines',
            'm1 1 2 2,3 3',
            [
                ['M', 1, 1],
                ['L', 3, 3],
                ['L', 6, 6],
            ],
        ],
        [
            'what stands before an error is kept',
            'M1 1L2 2L3 x',
            [
                ['M', 1, 1],
                ['L', 2, 2],
            ],
            9,
        ],
        [
            'an error in the middle of a command drops that command',
            'M1 1 2 2 3',
            [
                ['M', 1, 1],
                ['L', 2, 2],
            ],
            9,
        ],
        ['it must begin with a moveto', 'L1 1', [], 0],
        ['a comma right after a letter is an error', 'M,1 1', [], 1],
        ['a comma at the end is an error', 'M1 1,', [['M', 1, 1]], 4],
        ['a flag is 0 or 1', 'M0 0a1 1 0 2 0 5 5', [['M', 0, 0]], 5],
        [
            'drawing on after a closing begins at the same start',
            'M1 1h2zl5 5',
            [['M', 1, 1], ['L', 3, 1], ['Z'], ['M', 1, 1], ['L', 6, 6]],
        ],
        ['nothing at all', ' \n', []],
        [
            'too large a number is no number',
            'M0 0L1e999 0',
            [
                ['M', 0, 0],
                ['L', Number.POSITIVE_INFINITY, 0],
            ],
        ],
    ];
    for (const [name, text, segments, error] of readings) {
        it(name, () => {
            const read = segmentsOf(text);
            expect(read.segments).toEqual(segments);
            if (error === undefined) expect(read.error).toBeUndefined();
            else expect(read.error).toBeGreaterThanOrEqual(Math.min(error, 1));
        });
    }
});
