/** Dose field of 300 x 200 mm of intricate art, fit and solving. Run by tests/speed/run.mjs. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { coverage, gridAround } from '../../shared/burn/coverage';
import { depthField, doseField } from '../../shared/burn/dose-field';
import { fitRows } from '../../shared/burn/fit';
import { guessLaw } from '../../shared/burn/guess';
import { solveDepth } from '../../shared/burn/solve';
import type { Region } from '../../shared/geometry/region';
import { shed } from '../burn/stock';
import { points, reeds } from './art';
import { median, report } from './measure';

/** The same picture as SVG for the peer: painted, and blurred by a Gaussian, at the same cells. */
function svgOf(region: Region, cell: number, sigma: number): string {
    const path = region.rings
        .map(
            (ring) =>
                `M${Array.from({ length: ring.length / 2 }, (_, i) => `${ring[2 * i]!.toFixed(4)},${ring[2 * i + 1]!.toFixed(4)}`).join('L')}Z`,
        )
        .join('');
    return `<svg xmlns="http://www.w3.org/2000/svg" width="${300 / cell}" height="${200 / cell}" viewBox="0 0 300 200"><filter id="b" x="0" y="0" width="1" height="1"><feGaussianBlur stdDeviation="${sigma}"/></filter><path filter="url(#b)" d="${path}"/></svg>`;
}

await initWasm(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')));
const law = guessLaw(undefined, shed);
for (const [columns, cell, sigma] of [
    [60, 0.1, 0.0375],
    [60, 0.1, 0.2],
    [60, 0.05, 0.0375],
    [120, 0.1, 0.0375],
] as const) {
    const region = reeds(columns);
    const field = doseField(region, sigma, { cell, most: 1e8 })!;
    const grid = gridAround(region, 4 * sigma, cell, 1e8)!;
    console.log(`\n${points(region)} points, ${(field.part.length / 1e6).toFixed(1)} M cells of ${cell} mm, sigma ${sigma} mm`);
    report(
        'coverage of the cells',
        median(() => coverage(region, grid)),
    );
    const time = median(() => doseField(region, sigma, { cell, most: 1e8 }));
    report('dose field', time, `${(field.part.length / time / 1000).toFixed(0)} M cells/s`);
    report(
        'depth field',
        median(() => depthField(field, law, 1.4, 2)),
    );
    if (cell < 0.1) continue;
    const svg = svgOf(region, cell, sigma);
    const peer = median(() => new Resvg(svg).render(), 3);
    report('  painted and blurred by resvg (WebAssembly)', peer, `${(peer / time).toFixed(1)} times as long`);
}

const rows = Array.from({ length: 16 }, (_, i) => ({
    power: 10 + 2 * i,
    speed: 200 + 20 * (i % 5),
    pitch: 0.1,
    passes: 1 + (i % 3),
    tolerance: 0,
})).map((row) => ({ ...row, depth: 0.25 * (row.power / (row.speed * row.pitch) - 0.1) * row.passes }));
console.log('');
report(
    'fit of a coupon of 16 squares',
    median(() => fitRows(rows, law), 21),
);
report(
    'settings for a depth',
    median(() => solveDepth(law, shed, { depth: 0.5 }), 101),
);
