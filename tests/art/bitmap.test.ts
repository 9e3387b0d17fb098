import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { readBitmap } from '../../shared/art/bitmap';
import { painted } from '../../shared/art/painted';
import { unite } from '../../shared/geometry/boolean';
import { area, signedArea } from '../../shared/geometry/measure';
import { chunk, join, jpegOf, oriented, pngOf, withChunk } from './pictures';

const darkness = (bytes: Uint8Array) => [...readBitmap(bytes).raster.darkness];

describe('PNG in every form', () => {
    it('grey of 1, 2, 4, 8 and 16 bits, rows padded to whole bytes', () => {
        const grey = (depth: number, ...rows: number[]) =>
            pngOf({ columns: 3, rows: 1, depth, colour: 0 }, Uint8Array.of(0, ...rows));
        expect(darkness(grey(1, 0b01000000))).toEqual([255, 0, 255]);
        expect(darkness(grey(2, 0b00011100))).toEqual([255, 170, 0]);
        expect(darkness(grey(4, 0x08, 0xf0))).toEqual([255, 119, 0]);
        expect(darkness(grey(8, 0, 128, 255))).toEqual([255, 127, 0]);
        expect(darkness(grey(16, 0, 0, 128, 128, 255, 255))).toEqual([255, 127, 0]);
    });

    it('colours, by the weights of the eye', () => {
        const rgb = encode({ width: 3, height: 1, channels: 3, data: Uint8Array.of(255, 0, 0, 0, 255, 0, 0, 0, 255) });
        expect(darkness(rgb)).toEqual([201, 73, 237]);
    });

    it('see-through on white', () => {
        expect(darkness(encode({ width: 2, height: 1, channels: 2, data: Uint8Array.of(0, 128, 0, 0) }))).toEqual([128, 0]);
        expect(darkness(encode({ width: 1, height: 1, channels: 4, data: Uint8Array.of(0, 0, 0, 51) }))).toEqual([51]);
        const clear = chunk('tRNS', Uint8Array.of(0, 7));
        expect(darkness(pngOf({ columns: 2, rows: 1, depth: 8, colour: 0 }, Uint8Array.of(0, 7, 8), clear))).toEqual([0, 247]);
    });

    it('palettes, with see-through entries', () => {
        const palette = chunk('PLTE', Uint8Array.of(0, 0, 0, 255, 255, 255, 0, 0, 0));
        const alpha = chunk('tRNS', Uint8Array.of(255, 255, 0));
        const header = { columns: 3, rows: 2, depth: 2, colour: 3 };
        const rows = Uint8Array.of(0, 0b00011000, 0, 0b10010000);
        expect(darkness(pngOf(header, rows, palette, alpha))).toEqual([255, 0, 0, 0, 0, 255]);
        expect(darkness(pngOf(header, rows, palette))).toEqual([255, 0, 255, 255, 0, 255]);
    });

    it('interlaced', () => {
        const data = Uint8Array.from({ length: 100 }, (_, i) => (i * 37) % 256);
        const png = encode({ width: 10, height: 10, channels: 1, data }, { interlace: 'Adam7' });
        expect(darkness(png)).toEqual([...data].map((value) => 255 - value));
        const small = pngOf({ columns: 3, rows: 1, depth: 1, colour: 0, interlace: 1 }, Uint8Array.of(0, 0));
        expect(readBitmap(small).problems[0]!.message).toContain('interlaced');
    });
});

describe('JPEG', () => {
    const wedge = jpegOf(32, 16, (x) => (x < 16 ? 0 : 255), { units: 1, x: 254, y: 254 });

    it('is read to within its own rounding', () => {
        const { raster } = readBitmap(wedge);
        expect(raster.darkness[0]).toBeGreaterThan(245);
        expect(raster.darkness[31]).toBeLessThan(10);
    });

    /** Exif 2.3, tag 274: which row and column of what is seen the stored first row and column are (table from memory). */
    it('is turned the way it was held', () => {
        // Dark in the stored top left quarter only.
        const stored = jpegOf(32, 16, (x, y) => (x < 16 && y < 8 ? 0 : 255), { units: 1, x: 254, y: 254 });
        const quarter = (orientation: number) => {
            const { raster, page } = readBitmap(oriented(stored, orientation));
            const dark = (x: number, y: number) => raster.darkness[y * raster.columns + x]! > 127;
            const across = dark(2, 2) || dark(2, raster.rows - 3) ? 'left' : 'right';
            const down = dark(2, 2) || dark(raster.columns - 3, 2) ? 'top' : 'bottom';
            return `${down} ${across} ${raster.columns > raster.rows ? 'wide' : 'tall'} ${page.width > page.height ? 'wide' : 'tall'}`;
        };
        expect([1, 2, 3, 4, 5, 6, 7, 8].map(quarter)).toEqual([
            'top left wide wide',
            'top right wide wide',
            'bottom right wide wide',
            'bottom left wide wide',
            'top left tall tall',
            'top right tall tall',
            'bottom right tall tall',
            'bottom left tall tall',
        ]);
    });
});

describe('size', () => {
    const png = encode({ width: 200, height: 100, channels: 1, data: new Uint8Array(20_000) });
    for (const [wish, width, height] of [
        [{}, (200 * 25.4) / 96, (100 * 25.4) / 96],
        [{ width: 50 }, 50, 25],
        [{ height: 50 }, 100, 50],
        [{ width: 50, height: 50 }, 50, 50],
    ] as const) {
        it(`wished ${JSON.stringify(wish)}`, () => {
            const art = readBitmap(png, wish);
            expect([art.page.width, art.page.height]).toEqual([width, height]);
            expect(art.pixel.width).toBeCloseTo(width / 200, 12);
            expect(area(painted(art, []))).toBeCloseTo(width * height, 6);
        });
    }
});

describe('tracing', () => {
    const picture = fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 })).chain(([columns, rows]) =>
        fc.array(fc.constantFrom(0, 60, 128, 200, 255), { minLength: columns * rows, maxLength: columns * rows }).map((grey) => ({
            columns,
            rows,
            grey,
        })),
    );

    it('covers the dark pixels, each exactly, in rings that are a region as they are', () => {
        fc.assert(
            fc.property(picture, fc.constantFrom(0.1, 0.5, 0.9), ({ columns, rows, grey }, threshold) => {
                const art = readBitmap(encode({ width: columns, height: rows, channels: 1, data: Uint8Array.from(grey) }), {
                    width: columns,
                });
                const region = painted(art, [], threshold);
                const dark = grey.filter((value) => 1 - value / 255 > threshold).length;
                expect(area(region)).toBeCloseTo(dark, 9);
                expect(area(unite(region.rings))).toBeCloseTo(dark, 9);
                expect(region.rings.every((ring) => signedArea(ring) !== 0)).toBe(true);
            }),
            { numRuns: 150 },
        );
    });

    it('of noise is coarser rather than endless', { timeout: 60_000 }, () => {
        let seed = 1;
        const noise = Uint8Array.from({ length: 1_500 * 1_500 }, () => {
            seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
            return seed > 1_073_741_824 ? 255 : 0;
        });
        const { rings } = painted(readBitmap(encode({ width: 1500, height: 1500, channels: 1, data: noise })), []);
        expect(rings.reduce((sum, ring) => sum + ring.length / 2, 0)).toBeLessThan(250_000);
    });
});

/** The most memory that the command line ever had while it checked a recipe with this picture, bytes: a process of its own has no other's in it. */
function mostMemory(picture: Uint8Array): number {
    const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-picture-'));
    try {
        writeFileSync(path.join(folder, 'p.png'), picture);
        writeFileSync(
            path.join(folder, 'p.kerf'),
            'recipe p "P" {\n  laser co2\n  art a "p.png" { width 20 mm }\n  blank b { of ply  size 40 x 40 mm }\n  engrave c on b { art a  tone 50 % }\n}\nboard ply { wood birch  thickness 6 mm }\n',
        );
        // Where the system counts it, only what this program had: the other figure begins with what the process that started it had.
        const atEnd = `const fs = require('node:fs'); process.on('exit', () => {
            const own = fs.existsSync('/proc/self/status') && /VmHWM:\\s*(\\d+)/.exec(fs.readFileSync('/proc/self/status', 'utf8'))?.[1];
            fs.writeFileSync('most', String(own || process.resourceUsage().maxRSS));
        });`;
        writeFileSync(path.join(folder, 'at-end.cjs'), atEnd);
        const program = fileURLToPath(new URL('../../dist/cli.cjs', import.meta.url));
        spawnSync(process.execPath, ['--require', './at-end.cjs', program, 'check', 'p.kerf'], { cwd: folder });
        return 1024 * Number(readFileSync(path.join(folder, 'most'), 'utf8'));
    } finally {
        rmSync(folder, { recursive: true, force: true });
    }
}

describe('broken and hostile pictures', () => {
    const png = encode({ width: 8, height: 8, channels: 1, data: new Uint8Array(64) });
    const forged = (columns: number, rows: number) => {
        const out = png.slice();
        new DataView(out.buffer).setUint32(16, columns);
        new DataView(out.buffer).setUint32(20, rows);
        return out;
    };
    const kinds = (bytes: Uint8Array) => readBitmap(bytes).problems.map(({ kind }) => kind);

    it('a forged size is told before anything is unpacked', () => {
        expect(kinds(forged(100_000, 100_000))).toEqual(['too-large']);
        expect(kinds(forged(0, 8))).toEqual(['empty']);
        expect(kinds(forged(4000, 4000))).toEqual(['unreadable']);
    });

    it('a JPEG whose pixels would take too much memory is refused before it is unpacked, with how many may be', () => {
        const jpeg = jpegOf(8, 8, () => 0, { units: 1, x: 96, y: 96 });
        const frame = jpeg.findIndex((byte, i) => byte === 0xff && jpeg[i + 1] === 0xc0);
        const sized = (columns: number, rows: number) => {
            const out = jpeg.slice();
            new DataView(out.buffer, out.byteOffset).setUint16(frame + 5, rows);
            new DataView(out.buffer, out.byteOffset).setUint16(frame + 7, columns);
            return readBitmap(out).problems;
        };
        expect(sized(8000, 7000)).toMatchObject([{ kind: 'too-large', message: expect.stringContaining('at most 8 million') }]);
        expect(sized(8, 8)).toEqual([]);
    });

    it('what many channels of many bits take counts, not the pixels alone', () => {
        const deep = pngOf({ columns: 8, rows: 8, depth: 16, colour: 6 }, new Uint8Array(8 * 65));
        new DataView(deep.buffer, deep.byteOffset).setUint32(16, 6000);
        new DataView(deep.buffer, deep.byteOffset).setUint32(20, 6000);
        expect(readBitmap(deep).problems).toMatchObject([
            { kind: 'too-large', message: expect.stringContaining('at most 10 million') },
        ]);
    });

    it('more data than pixels is not unpacked', () => {
        const header = { columns: 8, rows: 8, depth: 8, colour: 0 };
        const bomb = pngOf(header, new Uint8Array(280_000_000));
        expect(kinds(bomb)).toEqual(['unreadable']);
        const sound = pngOf(header, new Uint8Array(9 * 8));
        expect(mostMemory(bomb) - mostMemory(sound)).toBeLessThan(200e6);
    });

    it('texts and profiles are not unpacked', () => {
        expect(kinds(withChunk(png, 'iCCP', new Uint8Array(40)))).toEqual(['unsized']);
        expect(kinds(withChunk(png, 'zTXt', new Uint8Array(40)))).toEqual(['unsized']);
    });

    it('nothing, other files, and any part of a good one give problems', () => {
        const jpeg = jpegOf(8, 8, () => 0, { units: 1, x: 96, y: 96 });
        for (const bytes of [
            new Uint8Array(0),
            Uint8Array.of(1, 2, 3),
            join(Uint8Array.of(0xff, 0xd8, 0xff)),
            new TextEncoder().encode('<svg/>'),
        ]) {
            expect(kinds(bytes)).toEqual(['unreadable']);
        }
        for (const whole of [png, jpeg]) {
            for (let length = 0; length < whole.length; length += 7) {
                const art = readBitmap(whole.subarray(0, length));
                expect(art.problems.length + art.parts.length).toBeGreaterThan(0);
            }
        }
    });

    it('a white picture has nothing to burn', () => {
        expect(kinds(encode({ width: 8, height: 8, channels: 1, data: new Uint8Array(64).fill(255) }))).toContain('empty');
    });
});
