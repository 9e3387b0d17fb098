import * as witness from 'clipper2-js';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { combineApart, takenApart } from '../../shared/geometry/apart';
import { typescriptEngine } from '../../shared/geometry/engine-typescript';
import { loadWasmEngine } from '../../shared/geometry/engine-wasm';
import { toGrid } from '../../shared/geometry/grid';
import { signedArea } from '../../shared/geometry/measure';
import type { FillRule, Operation, PolygonEngine } from '../../shared/geometry/polygon-engine';
import { island, looseRings, seeded } from './shapes-at-random';
import { slabArea } from './slab-area';
import { wasmFile } from './wasm-file';

const operations: Operation[] = ['union', 'intersection', 'difference', 'exclusion'];
const rules: FillRule[] = ['nonzero', 'evenodd', 'positive'];
const engines: PolygonEngine[] = [typescriptEngine];

beforeAll(async () => {
    engines.push(await loadWasmEngine(wasmFile()));
});

type Units = readonly Float64Array[];

function areaOf(rings: Units | undefined): number {
    return rings!.reduce((sum, ring) => sum + signedArea(ring), 0);
}

function lengthOf(rings: Units): number {
    let sum = 0;
    for (const ring of rings) {
        for (let i = 0; i < ring.length; i += 2) {
            const j = (i + 2) % ring.length;
            sum += Math.hypot(ring[i]! - ring[j]!, ring[i + 1]! - ring[j + 1]!);
        }
    }
    return sum;
}

function onGrid(rings: Units): Float64Array[] {
    return rings.flatMap((ring) => toGrid(ring) ?? []);
}

/** The independent library's area of the same combination; it knows integers and two of the rules. */
function witnessArea(operation: Operation, rule: 'nonzero' | 'evenodd', subjects: Units, clips: Units): number {
    const type = {
        union: witness.ClipType.Union,
        intersection: witness.ClipType.Intersection,
        difference: witness.ClipType.Difference,
        exclusion: witness.ClipType.Xor,
    };
    const clipper = new witness.Clipper64();
    const paths = (rings: Units) => {
        const all = new witness.Paths64();
        for (const ring of rings) {
            const path = new witness.Path64();
            for (let i = 0; i < ring.length; i += 2) path.push(new witness.Point64(ring[i]!, ring[i + 1]!));
            all.push(path);
        }
        return all;
    };
    clipper.addPaths(paths(subjects), witness.PathType.Subject);
    if (clips.length > 0) clipper.addPaths(paths(clips), witness.PathType.Clip);
    const solution = new witness.Paths64();
    clipper.execute(type[operation], rule === 'nonzero' ? witness.FillRule.NonZero : witness.FillRule.EvenOdd, solution);
    return solution.reduce((sum, path) => sum + witness.Clipper.area(path), 0);
}

describe('each library, and the way around it', () => {
    test('agree with slabs and with an independent library', () => {
        expect(engines.map((engine) => engine.name)).toEqual(['clipper2-ts', 'clipper2-wasm']);
        fc.assert(
            fc.property(
                looseRings(),
                looseRings(),
                fc.constantFrom(...operations),
                fc.constantFrom(...rules),
                (a, b, operation, rule) => {
                    const subjects = onGrid(a);
                    const clips = onGrid(b);
                    const expected = slabArea(operation, rule, subjects, clips);
                    const slack = 2 * lengthOf([...subjects, ...clips]) + 1;
                    for (const engine of engines) {
                        expect(Math.abs(areaOf(engine.combine(operation, rule, subjects, clips)) - expected)).toBeLessThan(slack);
                        const apart = combineApart(
                            (...all) => engine.combine(...all),
                            operation,
                            rule,
                            takenApart(subjects, clips),
                        );
                        expect(Math.abs(areaOf(apart) - expected)).toBeLessThan(slack);
                    }
                    if (rule !== 'positive')
                        expect(Math.abs(witnessArea(operation, rule, subjects, clips) - expected)).toBeLessThan(slack);
                },
            ),
            { numRuns: 300, seed: 21 },
        );
    });

    test('agree on coasts that cross', () => {
        const random = seeded(5);
        const a = onGrid([island(0, 0, 40, 1500, random)]);
        const b = onGrid([island(10, 5, 40, 1500, random)]);
        for (const operation of operations) {
            const [slow, fast] = engines.map((engine) => areaOf(engine.combine(operation, 'nonzero', a, b)));
            expect(fast! / slow!).toBeCloseTo(1, 7);
            expect(witnessArea(operation, 'nonzero', a, b) / slow!).toBeCloseTo(1, 7);
        }
    });
});

describe('rings that lie apart', () => {
    /** Groups of small shapes, many of them inside others, so that every kind of surroundings occurs. */
    const nested = fc.array(
        fc.record({
            x: fc.integer({ min: 0, max: 40 }),
            y: fc.integer({ min: 0, max: 40 }),
            size: fc.constantFrom(2, 3, 9, 25, 60),
            back: fc.boolean(),
            tie: fc.boolean(),
        }),
        { minLength: 1, maxLength: 12 },
    );
    const ringOf = ({ x, y, size, back, tie }: { x: number; y: number; size: number; back: boolean; tie: boolean }) => {
        const [l, t, r, b] = [x * 1000, y * 1000, (x + size) * 1000, (y + size) * 1000 + 137];
        const points = tie ? [l, t, r, b, r, t, l, b] : [l, t, r, t, r, b, l, b];
        return Float64Array.from(
            back ? points.reverse().flatMap((_, i, all) => (i % 2 === 0 ? [all[i + 1]!, all[i]!] : [])) : points,
        );
    };

    test('see the windings around them', () => {
        fc.assert(
            fc.property(nested, nested, fc.constantFrom(...operations), fc.constantFrom(...rules), (a, b, operation, rule) => {
                const subjects = a.map(ringOf);
                const clips = b.map(ringOf);
                const apart = combineApart(
                    (...all) => typescriptEngine.combine(...all),
                    operation,
                    rule,
                    takenApart(subjects, clips),
                );
                expect(Math.abs(areaOf(apart) - slabArea(operation, rule, subjects, clips))).toBeLessThan(
                    lengthOf([...subjects, ...clips]),
                );
            }),
            { numRuns: 500, seed: 22 },
        );
    });

    test('do not trouble the library, and keep their points', () => {
        const outer = Float64Array.of(0, 0, 100, 0, 100, 100, 0, 100);
        const hole = Float64Array.of(20, 20, 20, 40, 40, 40, 40, 20);
        const never = () => {
            throw new Error('asked');
        };
        expect(combineApart(never, 'union', 'nonzero', takenApart([outer, hole], []))).toEqual([outer, hole]);
        expect(
            areaOf(
                combineApart(
                    never,
                    'difference',
                    'nonzero',
                    takenApart([outer], [Float64Array.of(10, 10, 30, 10, 30, 30, 10, 30)]),
                ),
            ),
        ).toBe(9600);
        expect(
            combineApart(never, 'intersection', 'nonzero', takenApart([outer], [Float64Array.of(200, 0, 300, 0, 300, 100)])),
        ).toEqual([]);
    });

    test('are told from rings that touch in one corner or along an edge', () => {
        let asked = 0;
        const count = (...all: Parameters<PolygonEngine['combine']>) => {
            asked++;
            return typescriptEngine.combine(...all);
        };
        const square = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
        combineApart(count, 'union', 'nonzero', takenApart([square, Float64Array.of(10, 10, 20, 10, 20, 20, 10, 20)], []));
        combineApart(count, 'union', 'nonzero', takenApart([square, Float64Array.of(10, 2, 20, 2, 20, 8, 10, 8)], []));
        combineApart(count, 'union', 'nonzero', takenApart([Float64Array.of(0, 0, 10, 0, 10, 10, 5, 0, 0, 10)], []));
        expect(asked).toBe(3);
    });
});
