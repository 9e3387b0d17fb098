/**
 * Times of the polygon work by size of the art, how they grow, and against the compiled polygon
 * library called bare on the same rings in the same run.
 */
import { subtract, unite } from '../../shared/geometry/boolean';
import { prepareGeometry } from '../../shared/geometry/engine';
import { toGrid } from '../../shared/geometry/grid';
import { area, vertexCount } from '../../shared/geometry/measure';
import { narrow } from '../../shared/geometry/narrow';
import { grow } from '../../shared/geometry/offset';
import type { Region, Ring } from '../../shared/geometry/region';
import { rectangle } from '../../shared/geometry/shapes';
import { symmetryOf } from '../../shared/geometry/symmetry';
import { archipelago, island, seeded } from '../geometry/shapes-at-random';
import { wasmFile } from '../geometry/wasm-file';
import { type Bare, loadBare } from './bare-library';
import { median } from './measure';

const sizes = [1000, 10_000, 100_000, 1_000_000];
const clearance = 0.05;
const whole = rectangle(-10, -10, 320, 320);

/** Three kinds of heavy art, of about a number of points each. */
const arts: Record<string, (points: number) => Ring[]> = {
    'many islands': (points) => archipelago(points),
    'one coast': (points) => [island(150, 150, 140, points, seeded(3))],
    'pairs that overlap': (points) =>
        archipelago(points / 2).flatMap((ring) => [ring, ring.map((value, i) => (i % 2 === 0 ? value + 1 : value - 0.7))]),
};

interface Row {
    readonly [stage: string]: number;
}

function measure(rings: readonly Ring[], bare: Bare, runs: number): Row {
    let region: Region = { rings: [] };
    const union = median(() => {
        region = unite(rings);
    }, runs);
    const inverse = median(() => subtract(whole, region), runs);
    const offset = median(() => grow(region, -clearance / 2), runs);
    const units = rings.flatMap((ring) => toGrid(ring) ?? []);
    const filled = region.rings.flatMap((ring) => toGrid(ring) ?? []);
    const frame = [toGrid(whole.rings[0]!)!];
    const bareUnion = median(() => bare.union(units), runs);
    const bareInverse = median(() => bare.difference(frame, filled), runs);
    const bareOffset = median(() => bare.offset(filled, (-clearance / 2) * 10_000, 25), runs);
    return { union, inverse, offset, all: union + inverse + offset, bareUnion, bareInverse, bareOffset };
}

const cell = (value: number) => (value < 10 ? value.toFixed(2) : value.toFixed(0)).padStart(9);

async function main(): Promise<void> {
    const binary = wasmFile();
    const bare = await loadBare(binary);
    for (const engine of ['clipper2-ts', 'clipper2-wasm']) {
        if (engine === 'clipper2-wasm') await prepareGeometry({ binary });
        console.log(
            `\n${engine} behind; medians in ms of processor; "bare" is clipper2-wasm itself on the same rings, points carried in and out`,
        );
        for (const [name, make] of Object.entries(arts)) {
            console.log(
                `\n${name.padEnd(20)}  union  inverse   offset      all | bare union  inverse   offset | ours/bare booleans, offset | growth`,
            );
            let before: { points: number; all: number } | undefined;
            for (const size of sizes) {
                const rings = make(size);
                const points = vertexCount({ rings });
                const row = measure(rings, bare, size >= 1_000_000 ? 1 : 5);
                const booleans = (row.union! + row.inverse!) / (row.bareUnion! + row.bareInverse!);
                const growth =
                    before === undefined ? '' : (Math.log(row.all! / before.all) / Math.log(points / before.points)).toFixed(2);
                console.log(
                    String(points).padStart(16),
                    [row.union!, row.inverse!, row.offset!, row.all!].map(cell).join(''),
                    '|',
                    [row.bareUnion!, row.bareInverse!, row.bareOffset!].map(cell).join(''),
                    '|',
                    cell(booleans),
                    cell(row.offset! / row.bareOffset!),
                    '|',
                    growth,
                );
                before = { points, all: row.all! };
            }
        }
    }
    const coast = unite(archipelago(100_000));
    console.log(`\n${vertexCount(coast)} points, area ${area(coast).toFixed(1)} mm2`);
    console.log('symmetry', cell(median(() => symmetryOf(coast))), 'ms');
    console.log('narrow parts', cell(median(() => narrow(coast, 0.1))), 'ms');
}

void main();
