import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-wasm';
import { beforeAll, describe, expect, it } from 'vitest';
import { witness } from '../art/witness';

const art = (name: string) => new URL(`../../samples/art/${name}`, import.meta.url);

beforeAll(witness);

/** Share of the page that is dark, as an independent renderer paints it, at a quarter of a millimetre a pixel. */
function darkShare(svg: string, width: number): number {
    const { pixels } = new Resvg(svg, { background: 'white', fitTo: { mode: 'width', value: width * 4 } }).render();
    let dark = 0;
    for (let i = 0; i < pixels.length; i += 4) if (pixels[i]! + pixels[i + 1]! + pixels[i + 2]! < 384) dark++;
    return dark / (pixels.length / 4);
}

/** Curve segments of all paths: cubic, quadratic and arc commands, which these files write out one by one. */
function curves(svg: string): number {
    return [...svg.matchAll(/ d="([^"]*)"/g)].reduce((sum, [, data]) => sum + (data!.match(/[CQAcqa]/g)?.length ?? 0), 0);
}

const drawings = [
    {
        name: 'heron.svg',
        width: 140,
        height: 140,
        curves: 200,
        parts: ['id="heron"', 'class="reeds"', 'class="water"', 'id="sun"'],
    },
    { name: 'tide-rings.svg', width: 96, height: 96, curves: 100, parts: ['class="deep"', 'class="foam"'] },
    { name: 'gate-sign.svg', width: 340, height: 104, curves: 50, parts: ['id="name"', 'id="gull"'] },
    { name: 'seed-head.svg', width: 80, height: 84, curves: 100, parts: ['id="seeds"', 'id="leaves"'] },
];

describe.each(drawings)('$name', ({ name, width, height, curves: least, parts }) => {
    const svg = readFileSync(art(name), 'utf8');

    it('says its size in millimetres, one unit each', () => {
        expect(svg).toContain(`width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`);
    });

    it('is drawn in curves, with parts to pick', () => {
        expect(curves(svg)).toBeGreaterThanOrEqual(least);
        for (const part of parts) expect(svg).toContain(part);
    });

    it('has no stroke too thin to burn', () => {
        const widths = [...svg.matchAll(/stroke-width="([\d.]+)"/g)].map(([, wide]) => Number(wide));
        expect(Math.min(...widths, 1)).toBeGreaterThanOrEqual(0.4);
    });

    it('is neither empty nor full as an independent renderer paints it', () => {
        const share = darkShare(svg, width);
        expect(share).toBeGreaterThan(0.1);
        expect(share).toBeLessThan(0.5);
    });

    it('holds no text, picture or reference to anywhere else', () => {
        expect(svg).not.toMatch(/<(text|image|use|style|script|foreignObject)\b|href|url\(/);
    });
});

it('gull.png says how large it is', () => {
    const png = readFileSync(art('gull.png'));
    const at = png.indexOf('pHYs');
    expect(png.readUInt32BE(16)).toBe(240); // pixels wide
    expect(png.readUInt32BE(at + 4)).toBe(5906); // pixels a metre: 150 an inch
});
