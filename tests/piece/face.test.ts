import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area, contains } from '../../shared/geometry/measure';
import { emptyRegion, type Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { afterDeed, type Deed } from '../../shared/piece/after-deed';
import { bareArea, type Face, startFace, volumes } from '../../shared/piece/face';
import { Memo } from '../../shared/plan/memo';
import { exactly } from '../../shared/quantity/interval';
import { island, seeded } from '../geometry/shapes-at-random';
import { depths, Raster } from './raster';

const size = { width: 12, height: 10 };
const thickness = 4;

const start = (): Face => startFace({ blank: 'board', size, sheet: 'oak', thickness: exactly(thickness) });

/** A deed as it is drawn by chance; steps are numbered in the order in which they come. */
type Draft = (step: number) => Deed;

const tenths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 10);
const corner = fc.record({
    x: fc.nat(size.width - 1),
    y: fc.nat(size.height - 1),
    w: fc.integer({ min: 1, max: 7 }),
    h: fc.integer({ min: 1, max: 7 }),
});
const box = corner.map(({ x, y, w, h }) => rectangle(x, y, Math.min(w, size.width - x), Math.min(h, size.height - y)));
const disc = fc.record({ x: tenths(15, 105), y: tenths(15, 85), r: tenths(8, 40) }).map(({ x, y, r }) => circle(x, y, r));

function drafts(region: fc.Arbitrary<Region>): fc.Arbitrary<Draft> {
    const pocket = fc.nat(5);
    return fc.oneof(
        {
            weight: 5,
            arbitrary: fc
                .record({ region, oak: tenths(1, 18), maple: tenths(1, 14), through: fc.constantFrom(false, false, false, true) })
                .map(
                    ({ region, oak, maple, through }): Draft =>
                        (step) => ({
                            do: 'burn',
                            step,
                            region,
                            depths: depths({ oak, maple }),
                            through,
                            toneOnly: false,
                            foilStops: true,
                        }),
                ),
        },
        {
            weight: 2,
            arbitrary: fc
                .record({
                    pocket,
                    share: fc.constantFrom(1, 0.5),
                    over: fc.constantFrom(0, 0.2),
                    resin: fc.constantFrom('blue', 'red'),
                })
                .map(
                    ({ pocket, share, over, resin }): Draft =>
                        (step) => ({ do: 'fill', step, pocket, resin, metal: false, share, over }),
                ),
        },
        {
            weight: 2,
            arbitrary: fc.record({ region, pocket, floor: tenths(2, 12), film: tenths(1, 2), veneer: tenths(3, 8) }).map(
                ({ region, pocket, floor, film, veneer }): Draft =>
                    (step) => ({
                        do: 'lay',
                        step,
                        pocket,
                        region,
                        floor: exactly(floor),
                        sheet: 'maple',
                        veneer: exactly(veneer),
                        glue: 'glue',
                        film: exactly(film),
                    }),
            ),
        },
        fc.record({ below: tenths(0, 3), flush: fc.boolean() }).map(
            ({ below, flush }): Draft =>
                () => ({ do: 'sand', below: exactly(below), flush }),
        ),
        fc.constant((step: number): Deed => ({ do: 'coat', step, name: 'shellac' })),
        fc.constantFrom('upright', 'level').map(
            (axis): Draft =>
                () => ({ do: 'turn', axis, sheet: 'oak', size, thickness: exactly(thickness) }),
        ),
        fc.constant((step: number): Deed => ({ do: 'mask', step })),
        fc.constant((): Deed => ({ do: 'peel', blank: 'board' })),
        region.map(
            (holes): Draft =>
                (step) => ({ do: 'cut', step, region: holes, line: holes, kerf: 0, holes }),
        ),
        // On a backing what is cut keeps its place until it comes off.
        region.map(
            (holes): Draft =>
                (step) => ({ do: 'cut', step, region: holes, line: holes, kerf: 0, holes, held: true }),
        ),
        region.map(
            (holes): Draft =>
                () => ({ do: 'free', holes }),
        ),
    );
}

function regionOf(deed: Deed): Region {
    if (deed.do === 'cut') return deed.held ? emptyRegion : deed.holes;
    if (deed.do === 'free') return deed.holes ?? emptyRegion;
    return 'region' in deed ? deed.region : emptyRegion;
}

function carryOut(deeds: readonly Deed[], raster: Raster, memo = new Memo()): Face {
    let face = start();
    for (const deed of deeds) {
        face = afterDeed(face, deed, memo);
        const region = regionOf(deed);
        raster.work(deed, (x, y) => contains(region, x, y));
    }
    return face;
}

const sequence = (region: fc.Arbitrary<Region>) =>
    fc.array(drafts(region), { minLength: 1, maxLength: 9 }).map((all) => all.map((draft, step) => draft(step)));

describe('the face of a piece', () => {
    it('keeps the balance of every material, against stacks on a grid that sum up what each step took and laid', () => {
        fc.assert(
            fc.property(sequence(box), (deeds) => {
                const raster = new Raster(size.width, size.height, 1, 'oak', thickness);
                const left = volumes(carryOut(deeds, raster));
                const materials = new Set([...left.keys(), ...raster.added.keys()]);
                for (const material of materials) {
                    const should = (raster.added.get(material) ?? 0) - (raster.taken.get(material) ?? 0);
                    expect(Math.abs((left.get(material) ?? 0) - should), material).toBeLessThan(1e-6);
                }
            }),
            { numRuns: 3000 },
        );
    });

    it('says in each place what the grid has there', () => {
        fc.assert(
            fc.property(sequence(box), (deeds) => {
                const raster = new Raster(size.width, size.height, 1, 'oak', thickness);
                const face = carryOut(deeds, raster);
                raster.stacks.forEach((stack, i) => {
                    const x = (i % size.width) + 0.5;
                    const y = Math.floor(i / size.width) + 0.5;
                    if (stack.gone) {
                        expect(contains(face.body.region, x, y)).toBe(false);
                        return;
                    }
                    const cells = face.cells.filter(({ region }) => contains(region, x, y));
                    expect(cells.length).toBeLessThanOrEqual(1);
                    const column = cells[0]?.column ?? face.bare;
                    expect(column.layers.map(({ kind, name }) => `${kind} ${name}`)).toEqual(
                        stack.layers.toReversed().map(({ kind, name }) => `${kind} ${name}`),
                    );
                    if (stack.layers.length > 0) expect(column.top.value).toBeCloseTo(raster.heightOf(stack), 9);
                });
            }),
            { numRuns: 1000 },
        );
    });

    it('has the volumes and areas of round shapes within the error of a grid of 0.05 mm', () => {
        const cell = 0.05;
        fc.assert(
            fc.property(sequence(disc), (deeds) => {
                const raster = new Raster(size.width / cell, size.height / cell, cell, 'oak', thickness);
                const face = carryOut(deeds, raster);
                // A square on an edge is counted wholly or not at all; errors of many squares cancel, a tenth of the bound is usual.
                const edges = 2 * Math.PI * 4 * deeds.length;
                const left = volumes(face);
                for (const material of new Set([...left.keys(), ...raster.added.keys()])) {
                    const should = (raster.added.get(material) ?? 0) - (raster.taken.get(material) ?? 0);
                    expect(Math.abs((left.get(material) ?? 0) - should), material).toBeLessThan(edges * cell * thickness * 0.5);
                }
                const gone = raster.stacks.filter((stack) => stack.gone).length * cell ** 2;
                expect(Math.abs(area(face.body.region) - (size.width * size.height - gone))).toBeLessThan(edges * cell * 0.5);
            }),
            { numRuns: 12 },
        );
    });

    it('is a partition: cells do not overlap and with the bare rest they make up the body', () => {
        fc.assert(
            fc.property(sequence(fc.oneof(box, disc)), (deeds) => {
                const face = deeds.reduce((now, deed) => afterDeed(now, deed, new Memo()), start());
                expect(face.unknownSince).toBeUndefined();
                expect(bareArea(face)).toBeGreaterThan(-0.01);
                let inside = 0;
                for (const { region } of face.cells) inside += area(region);
                expect(inside).toBeLessThanOrEqual(area(face.body.region) + 0.01);
                const keys = face.cells.map(({ column }) => JSON.stringify(column));
                expect(new Set(keys).size).toBe(keys.length);
            }),
            { numRuns: 300 },
        );
    });

    it('is the same whether its steps are remembered or not', () => {
        const memo = new Memo();
        fc.assert(
            fc.property(sequence(fc.oneof(box, disc)), (deeds) => {
                const raster = () => new Raster(1, 1, 1, 'oak', thickness);
                expect(carryOut(deeds, raster(), memo)).toEqual(carryOut(deeds, raster()));
            }),
            { numRuns: 200 },
        );
    });

    it('keeps every place of drawings of many corners, whatever comes between their burns', () => {
        const coasts = [3, 5, 7, 11, 13].map((seed): Region => ({ rings: [island(150, 150, 140, 3000, seeded(seed))] }));
        const burns = coasts.map((region, step): Deed => {
            const depths = { oak: exactly(0.3 + 0.11 * step) };
            return { do: 'burn', step, region, depths, through: false, toneOnly: false, foilStops: true };
        });
        const rim = rectangle(0, 0, 300, 200);
        const between: Deed[] = [
            { do: 'coat', step: 5, name: 'oil' },
            { do: 'free', keeps: rim },
        ];
        const deeds = [...burns.slice(0, 3), between[0]!, burns[3]!, between[1]!, burns[4]!];
        const untouched = startFace({ blank: 'board', size: { width: 300, height: 300 }, sheet: 'oak', thickness: exactly(20) });
        const memo = new Memo();
        const face = deeds.reduce((before, deed) => afterDeed(before, deed, memo), untouched);
        const random = seeded(17);
        for (let n = 0; n < 2000; n++) {
            const [x, y] = [300 * random(), 300 * random()];
            const here = face.cells.filter(({ region }) => contains(region, x, y));
            const dug = coasts.reduce((sum, coast, step) => sum + (contains(coast, x, y) ? 0.3 + 0.11 * step : 0), 0);
            expect(here.length).toBe(dug > 0 && contains(rim, x, y) ? 1 : 0);
            if (here.length === 1) expect(here[0]!.column.top.value).toBeCloseTo(dug, 9);
        }
        const [cells, bare] = [face.cells.reduce((sum, { region }) => sum + area(region), 0), bareArea(face)];
        expect(cells + bare).toBeCloseTo(300 * 200, 6);
    });

    it('cuts nothing against each other that does not meet', () => {
        const asked: string[] = [];
        const memo = {
            get: <T>(stage: string, _key: string, compute: () => T): T => {
                asked.push(stage);
                return compute();
            },
            keyOf: () => '',
        };
        const burn = (step: number, x: number): Deed => ({
            do: 'burn',
            step,
            region: rectangle(x, 2, 2, 2),
            depths: depths({ oak: 1 }),
            through: false,
            toneOnly: false,
            foilStops: true,
        });
        const apart = [burn(0, 1), burn(1, 4), burn(2, 7)].reduce((face, deed) => afterDeed(face, deed, memo), start());
        expect(apart.cells).toHaveLength(3);
        expect(asked).toEqual([]);
        afterDeed(apart, burn(3, 8), memo);
        expect(asked).not.toEqual([]);
    });
});

describe('a burn through layers', () => {
    const board = (deeds: readonly Deed[]): Face => deeds.reduce((face, deed) => afterDeed(face, deed, new Memo()), start());
    const burn = (step: number, oak: number, maple: number): Deed => ({
        do: 'burn',
        step,
        region: rectangle(2, 2, 4, 4),
        depths: { oak: { value: oak, low: oak - 0.1, high: oak + 0.1 }, maple: exactly(maple) },
        through: false,
        toneOnly: false,
        foilStops: true,
    });
    const lay: Deed = {
        do: 'lay',
        step: 1,
        pocket: 0,
        region: rectangle(2, 2, 4, 4),
        floor: exactly(0.6),
        sheet: 'maple',
        veneer: exactly(0.5),
        glue: 'glue',
        film: exactly(0.1),
    };

    it('uses up its energy by each wood’s own law: 0.5 mm of a maple that it digs 0.8 mm, glue as maple, the rest in oak', () => {
        const face = board([burn(0, 0.6, 0.6), lay, burn(2, 1, 0.8)]);
        const [cell] = face.cells;
        // By hand: 0.6 / 0.8 of the energy is gone at the bottom of the glue, 0.25 of it digs 0.25 mm of oak: 0.85 below the face.
        expect(cell!.column.top.value).toBeCloseTo(0.85, 12);
        expect(cell!.column.layers.map(({ name }) => name)).toEqual(['oak']);
        expect(face.met.map(({ layers }) => layers.map(({ kind }) => kind))).toEqual([['glue']]);
    });

    it('is held up by resin, which it remembers as met', () => {
        const fill: Deed = { do: 'fill', step: 1, pocket: 0, resin: 'bronze', metal: true, share: 1, over: 0 };
        const face = board([burn(0, 0.6, 0.6), fill, burn(2, 1, 0.8)]);
        expect(face.cells[0]!.column.top.value).toBeCloseTo(0, 12);
        expect(face.met[0]!.layers).toMatchObject([{ kind: 'resin', name: 'bronze', metal: true }]);
        expect(face.met[0]!.area).toBeCloseTo(16, 6);
    });

    it('adds up the spread of depths that lie in each other, and leaves a floor with the blank’s own', () => {
        const face = board([burn(0, 1, 1), burn(1, 1, 1)]);
        const { top, digs } = face.cells[0]!.column;
        expect(top).toEqual({ value: 2, low: 1.8, high: 2.2 });
        expect(digs.map(({ step }) => step)).toEqual([0, 1]);
    });
});
