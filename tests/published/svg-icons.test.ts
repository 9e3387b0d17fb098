import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { areaDifference, compare, witness } from '../art/witness';

/**
 * Painted areas of icons in daily use against an independent renderer (resvg 2.6, through its
 * package @resvg/resvg-wasm). Test input only, nothing of it is in the product:
 *  - @iconify-json/tabler, MIT: strokes and fills of one colour; names that begin with `brand` left out.
 *  - @iconify-json/fxemoji, Apache-2.0: many colours on top of one another; its mascot left out.
 */
interface IconSet {
    readonly icons: Readonly<Record<string, { readonly body: string; readonly width?: number; readonly height?: number }>>;
    readonly width?: number;
    readonly height?: number;
}

function load(name: string): IconSet {
    const path = createRequire(import.meta.url).resolve(`@iconify-json/${name}/icons.json`);
    return JSON.parse(readFileSync(path, 'utf8'));
}

/** Every so-manieth icon of a set, as a file. */
function sample(set: IconSet, count: number, leftOut: RegExp): (readonly [name: string, svg: string])[] {
    const names = Object.keys(set.icons).filter((name) => !leftOut.test(name));
    const step = names.length / count;
    return Array.from({ length: count }, (_, i) => {
        const name = names[Math.floor(i * step)]!;
        const icon = set.icons[name]!;
        const width = icon.width ?? set.width ?? 16;
        const height = icon.height ?? set.height ?? 16;
        const size = `width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"`;
        return [name, `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${icon.body}</svg>`];
    });
}

/**
 * Colours brought to black and white at the threshold, by the weights of ITU-R BT.709: with greys
 * at the edges of colours the renderer's own picture would be off by a part of a pixel all around.
 */
function twoTone(svg: string): string {
    return svg.replace(/#([0-9a-f]{3}){1,2}\b/gi, (written) => {
        const digits = written.length === 4 ? [...written.slice(1)].map((digit) => digit + digit).join('') : written.slice(1);
        const [red, green, blue] = [0, 2, 4].map((at) => Number.parseInt(digits.slice(at, at + 2), 16));
        return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue! < 127.5 ? '#000' : '#fff';
    });
}

beforeAll(witness);

/**
 * The names of those that differ by more than half a percent, with the difference. One that does
 * in the small is looked at again in the large: edges that fall just between two rows of pixels,
 * and the renderer's grey fringe where white lies exactly on dark, are gone there.
 */
function disagreements(icons: readonly (readonly [string, string])[]): string[] {
    const found: string[] = [];
    for (const [name, svg] of icons) {
        if (areaDifference(compare(svg, 640)) <= 0.005) continue;
        const difference = areaDifference(compare(svg, 2560));
        if (difference > 0.005) found.push(`${name} ${(100 * difference).toFixed(2)} %`);
    }
    return found;
}

describe('painted area of icons', () => {
    it('of lines and single fills: all within half a percent', { timeout: 180_000 }, () => {
        expect(disagreements(sample(load('tabler'), 220, /^brand/))).toEqual([]);
    });

    it('of many colours: all within half a percent', { timeout: 180_000 }, () => {
        const icons = sample(load('fxemoji'), 170, /^fox/).map(([name, svg]) => [name, twoTone(svg)] as const);
        expect(disagreements(icons)).toEqual([]);
    });
});
