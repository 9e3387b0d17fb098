import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { encode } from 'fast-png';
import { expect, test } from 'vitest';
import type { Art } from '../../shared/art/art';
import { readBitmap } from '../../shared/art/bitmap';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area } from '../../shared/geometry/measure';
import { drawings } from '../art/drawings';
import { jpegOf, withChunk } from '../art/pictures';

/** How many files of each kind; `npm run fuzz` sets it higher. Seeds are printed by fast-check when a file fails. */
const runs = Number(process.env.FUZZ_RUNS ?? 60);

/** ms for one small file, on a machine that has other things to do. */
const longest = 10_000;

const files = [
    ...Object.values(drawings),
    ...readdirSync('samples/art', { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.svg'))
        .map((name) => readFileSync(`samples/art/${name}`, 'utf8')),
];
const file = fc.constantFrom(...files);

/** Numbers, names and signs that readers stumble over. */
const splinter = fc.constantFrom(
    ...[
        '1e308',
        '-1e308',
        '1e-320',
        'NaN',
        'Infinity',
        '0',
        '-1',
        '"',
        "'",
        '<',
        '>',
        '</g>',
        '<g>',
        '<!--',
        '-->',
        ']]>',
        '<![CDATA[',
        '&',
        '&#0;',
    ],
    ...[
        '&amp;',
        '%',
        'url(#c)',
        'url(',
        '#',
        'M',
        'z',
        'a1 1 0 11',
        ',',
        '{',
        '}',
        '!important',
        'em',
        '<style>',
        '<use href="#a"/>',
        '\0',
        '\uFFFF',
    ],
    ...[
        'constructor',
        '__proto__',
        'toString',
        'transform="',
        'style="',
        ' clip-path="url(#c)" ',
        ' opacity=".5" ',
        'inherit',
        '\uE0000',
        '😀',
    ],
);

/** Holds for whatever was read: nothing thrown, all numbers finite, regions inside the page, a word where nothing is painted. */
function check(art: Art, started: number): void {
    expect(performance.now() - started).toBeLessThan(longest);
    const { width, height } = art.page;
    expect(Number.isFinite(width) && Number.isFinite(height)).toBe(true);
    if (art.parts.length === 0) expect(art.problems.length).toBeGreaterThan(0);
    for (const part of art.parts) {
        expect(part.darkness >= 0 && part.darkness <= 1 + 1e-9 && part.opacity > 0 && part.opacity <= 1).toBe(true);
        expect(part.colour).toMatch(/^#[0-9a-f]{6}$/);
        const covered = area(part.region);
        expect(covered).toBeGreaterThan(0);
        expect(covered).toBeLessThanOrEqual(width * height * (1 + 1e-6) + 1e-3);
    }
    for (const { line, column, message } of art.problems) {
        expect(message.length).toBeLessThan(300);
        if (line !== undefined) expect(line > 0 && column! > 0).toBe(true);
    }
    const burnt = area(painted(art, []));
    expect(burnt >= 0 && burnt <= width * height * (1 + 1e-6) + 1e-3).toBe(true);
    expect(performance.now() - started).toBeLessThan(2 * longest);
}

function readAndCheck(text: string, wish = {}): void {
    const started = performance.now();
    check(readSvg(text, wish), started);
}

test('any text', { timeout: 600_000 }, () => {
    fc.assert(
        fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => readAndCheck(text)),
        { numRuns: runs },
    );
});

test('any words in any order inside an svg', { timeout: 600_000 }, () => {
    const anything = fc.array(fc.oneof(splinter, fc.string({ maxLength: 5 })), { maxLength: 40 });
    fc.assert(
        fc.property(anything, (words) => readAndCheck(`<svg width="9mm" height="9mm">${words.join('')}`)),
        { numRuns: runs },
    );
});

test('drawings with pieces cut out, doubled and put in', { timeout: 600_000 }, () => {
    const cut = fc.record({
        at: fc.double({ min: 0, max: 1, noNaN: true }),
        length: fc.nat(30),
        put: fc.oneof(splinter, fc.constant('')),
    });
    fc.assert(
        fc.property(file, fc.array(cut, { minLength: 1, maxLength: 8 }), (text, cuts) => {
            let broken = text;
            for (const { at, length, put } of cuts) {
                const start = Math.floor(at * broken.length);
                broken = broken.slice(0, start) + put + broken.slice(start + length);
            }
            readAndCheck(broken);
        }),
        { numRuns: 3 * runs },
    );
});

test('drawings with other values in their attributes', { timeout: 600_000 }, () => {
    const change = fc.tuple(
        fc.nat(),
        fc.oneof(
            splinter,
            fc.double().map(String),
            file.map((text) => text.slice(0, 40).replace(/["<&]/g, ' ')),
        ),
    );
    fc.assert(
        fc.property(file, fc.array(change, { minLength: 1, maxLength: 5 }), (text, changes) => {
            const places = [...text.matchAll(/"([^"]*)"/g)];
            let broken = text;
            for (const [which, value] of changes)
                broken = broken.replace(places[which % places.length]![0], () => `"${value.replace(/["<&]/g, '')}"`);
            readAndCheck(broken);
        }),
        { numRuns: 3 * runs },
    );
});

test('any wish', { timeout: 600_000 }, () => {
    const wish = fc.record({ width: fc.double(), height: fc.double(), tolerance: fc.double({ min: -1 }) }, { requiredKeys: [] });
    fc.assert(
        fc.property(file, wish, (text, wished) => readAndCheck(text, wished)),
        { numRuns: runs },
    );
});

test('pictures with bytes changed and cut off', { timeout: 600_000 }, () => {
    const grey = Uint8Array.from({ length: 24 * 24 }, (_, i) => (i * 37) % 256);
    const png = withChunk(
        encode({ width: 24, height: 24, channels: 1, data: grey }),
        'pHYs',
        Uint8Array.of(0, 0, 39, 16, 0, 0, 39, 16, 1),
    );
    const pictures = [png, jpegOf(24, 24, (x, y) => (x * y) % 256, { units: 1, x: 254, y: 254 })];
    const change = fc.tuple(fc.double({ min: 0, max: 0.999, noNaN: true }), fc.nat(255));
    fc.assert(
        fc.property(
            fc.constantFrom(...pictures),
            fc.array(change, { maxLength: 6 }),
            fc.double({ min: 0.3, max: 1, noNaN: true }),
            (bytes, changes, kept) => {
                const broken = bytes.slice(0, Math.ceil(kept * bytes.length));
                for (const [at, value] of changes) broken[Math.floor(at * broken.length)] = value;
                const started = performance.now();
                check(readBitmap(broken), started);
            },
        ),
        { numRuns: 3 * runs },
    );
});
