/**
 * Times of the piece's partition: four heavy drawings that all overlap, against the compiled polygon library called bare for the same cells
 * in the same run; edits of one step; drawings that meet nothing.
 */
import { prepareGeometry } from '../../shared/geometry/engine';
import { toGrid } from '../../shared/geometry/grid';
import { area, vertexCount } from '../../shared/geometry/measure';
import type { Region } from '../../shared/geometry/region';
import { translate } from '../../shared/geometry/transform';
import { afterDeed, type Deed } from '../../shared/piece/after-deed';
import { type Face, startFace } from '../../shared/piece/face';
import { Memo } from '../../shared/plan/memo';
import { exactly } from '../../shared/quantity/interval';
import { archipelago, island, seeded } from '../geometry/shapes-at-random';
import { wasmFile } from '../geometry/wasm-file';
import { type Bare, loadBare } from './bare-library';
import { median, report } from './measure';

const corners = 20_000;
const runs = 7;
const start = startFace({ blank: 'board', size: { width: 300, height: 300 }, sheet: 'oak', thickness: exactly(20) });

/** A burn that leaves its own floor wherever it meets another. */
function burn(region: Region, step: number, depth = 0.3 + 0.11 * step): Deed {
    return { do: 'burn', step, region, depths: { oak: exactly(depth) }, through: false, toneOnly: false, foilStops: true };
}

/** As the plan does it: each face is remembered by the one before it and the deed. */
function carryOut(deeds: readonly Deed[], memo: Memo): Face {
    return deeds.reduce((face, deed, i) => {
        const shelf = { get: <T>(stage: string, key: string, work: () => T) => memo.get(`${stage} ${i}`, key, work) };
        const remembered = { ...shelf, keyOf: (thing: object) => memo.keyOf(thing) };
        const { region, ...rest } = deed as Extract<Deed, { do: 'burn' }>;
        return remembered.get('face', `${memo.keyOf(face)} ${memo.keyOf(region)} ${JSON.stringify(rest)}`, () =>
            afterDeed(face, deed, remembered),
        );
    }, start);
}

/** The same cells by the library's plainest calls: what of each lies in the next drawing, what does not, and what of that lies in none. */
function bareCells(drawings: readonly Float64Array[][], bare: Bare): Float64Array[][] {
    let cells: Float64Array[][] = [];
    for (const drawing of drawings) {
        const rest = cells.length === 0 ? drawing : bare.difference(drawing, cells.flat());
        cells = [...cells.flatMap((cell) => [bare.intersection(cell, drawing), bare.difference(cell, drawing)]), rest];
    }
    return cells;
}

const ratio = (time: number, whole: number): string => (time / whole).toFixed(2);

const binary = wasmFile();
await prepareGeometry({ binary });
const bare = await loadBare(binary);

const coasts: Region[] = [3, 5, 7, 11].map((seed) => ({ rings: [island(150, 150, 140, corners, seeded(seed))] }));
const units = coasts.map(({ rings }) => rings.map((ring) => toGrid(ring)!));
const deeds = coasts.map((coast, step) => burn(coast, step));
const made = carryOut(deeds, new Memo());
console.log(`${coasts.length} drawings of ${corners} corners that all overlap: ${made.cells.length} cells with`);
console.log(
    `${made.cells.reduce((sum, { region }) => sum + vertexCount(region), 0)} corners; medians of ${runs}, ms of processor`,
);
const least = median(() => bareCells(units, bare), runs);
report('bare booleans of the same cells', least);
const whole = median(() => carryOut(deeds, new Memo()), runs);
report('the whole partition', whole, `${ratio(whole, least)} of the bare booleans (limit 1.5)`);

/** What an edit costs where all else is remembered, beside the work from nothing. */
function edit(what: string, before: readonly Deed[], all: number, change: (run: number) => readonly Deed[]): void {
    const memo = new Memo();
    carryOut(before, memo);
    let run = 0;
    const time = median(() => carryOut(change(++run), memo), runs);
    report(what, time, `${ratio(time, all)} of the whole (limit 0.33)`, `${ratio(time, least)} of the bare booleans`);
}

/** The deeds with one drawing moved. */
const moved = (all: readonly Deed[], at: number, by: number): Deed[] =>
    all.map((deed, i) => (i === at ? burn(translate((deed as Extract<Deed, { do: 'burn' }>).region, by, 0), i) : deed));

for (const at of deeds.keys())
    edit(`another depth for drawing ${at + 1}`, deeds, whole, (run) =>
        deeds.toSpliced(at, 1, burn(coasts[at]!, at, 1 + 0.01 * run)),
    );
for (const at of deeds.keys()) edit(`drawing ${at + 1} moved`, deeds, whole, (run) => moved(deeds, at, 0.1 * run));

// Beside each other, as most are: only those that lie over each other are cut anew.
const couples = [0, 1, 2, 3].flatMap((place) =>
    [3, 5].map((seed, second) => ({
        rings: [island(75 + 150 * (place % 2), 75 + 150 * Math.floor(place / 2), 70, corners / 2, seeded(seed + second))],
    })),
);
const coupled = couples.map((region, step) => burn(region, step));
const wholeCouples = median(() => carryOut(coupled, new Memo()), runs);
report(`four pairs of ${corners / 2} corners side by side`, wholeCouples);
for (const at of [0, 7]) edit(`drawing ${at + 1} of them moved`, coupled, wholeCouples, (run) => moved(coupled, at, 0.02 * run));

const quarters: Region[] = [0, 1, 2, 3].map((i) => ({
    rings: archipelago(corners, i + 1).map((ring) =>
        ring.map((value, k) => value / 2 + (k % 2 === 0 ? 150 * (i % 2) : 150 * Math.floor(i / 2))),
    ),
}));
const apart = quarters.map((region, step) => burn(region, step));
const cheap = median(() => carryOut(apart, new Memo()), runs);
report('four that do not overlap', cheap, `${carryOut(apart, new Memo()).cells.length} cells (limit 50 ms)`);
console.log(`${made.cells.reduce((sum, { region }) => sum + area(region), 0).toFixed(1)} mm2 in all cells`);
