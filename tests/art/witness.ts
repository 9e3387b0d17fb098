import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { Art } from '../../shared/art/art';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import type { Region } from '../../shared/geometry/region';

/** Once a process, also where modules are run again in it. */
const kept = globalThis as { witnessReady?: Promise<void> };

/** Loads the witness: an independent renderer that shares no code with ours. */
export function witness(): Promise<void> {
    kept.witnessReady ??= readFile(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')).then((binary) =>
        initWasm(binary),
    );
    return kept.witnessReady;
}

export interface Comparison {
    readonly art: Art;
    /** Dark pixels of the witness's picture, and of our region drawn by the same witness. */
    readonly theirs: number;
    readonly ours: number;
    /** Pixels that are dark in one and light in the other, as a share of the dark ones. */
    readonly different: number;
}

/**
 * Renders a drawing with the witness, and what we read from it as plain black polygons with the
 * same witness at the same size, and counts dark pixels. Only what was read can differ.
 */
export function compare(svg: string, columns = 600, threshold = 0.5): Comparison {
    const art = readSvg(svg, { width: 100 });
    const theirs = darkPixels(svg, columns, threshold);
    const ours = darkPixels(asSvg(painted(art, [], threshold), art.page), columns, 0.5);
    let dark = 0;
    let mine = 0;
    let different = 0;
    const size = Math.max(theirs.length, ours.length);
    for (let i = 0; i < size; i++) {
        if (theirs[i] === 1) dark++;
        if (ours[i] === 1) mine++;
        if (theirs[i] !== ours[i]) different++;
    }
    return { art, theirs: dark, ours: mine, different: different / Math.max(1, dark) };
}

/** How far apart the two counts are, as a share of the witness's. */
export function areaDifference({ theirs, ours }: Comparison): number {
    return Math.abs(ours - theirs) / Math.max(1, theirs);
}

export function asSvg({ rings }: Region, { width, height }: { width: number; height: number }): string {
    const data = rings.map((ring) => {
        let text = '';
        for (let i = 0; i < ring.length; i += 2) text += `${i === 0 ? 'M' : 'L'}${ring[i]} ${ring[i + 1]}`;
        return `${text}z`;
    });
    const size = `width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"`;
    return `<svg xmlns="http://www.w3.org/2000/svg" ${size}><path d="${data.join('')}"/></svg>`;
}

function darkPixels(svg: string, columns: number, threshold: number): Uint8Array {
    const image = new Resvg(svg, { fitTo: { mode: 'width', value: columns }, background: '#fff' }).render();
    const { pixels } = image;
    const dark = new Uint8Array(pixels.length / 4);
    for (let i = 0; i < dark.length; i++) {
        const light = 0.2126 * pixels[4 * i]! + 0.7152 * pixels[4 * i + 1]! + 0.0722 * pixels[4 * i + 2]!;
        if (1 - light / 255 > threshold) dark[i] = 1;
    }
    image.free();
    return dark;
}
