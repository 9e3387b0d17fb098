import { describe, expect, it } from 'vitest';
import type { Region } from '../../shared/geometry/region';
import type { LaserPlan } from '../../shared/plan/laser-plan';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { setUps } from '../../shared/plan/set-ups';
import type { Laser } from '../../shared/recipe/stock';
import { setUpRs274 } from '../../shared/sheets/setup-rs274';
import { setUpSvg } from '../../shared/sheets/setup-svg';
import { planOf } from '../kit/plan-of';
import { goodSamples, sampleText } from '../kit/samples';
import { shop } from '../kit/shop';
import { type Move, readProgram } from '../toolpath/rs274-reader';
import { simulate } from '../toolpath/simulate';

/** The moves of one laser step, read back from its set-up's file; y downwards as on the blank. */
interface ReadBack {
    readonly laser: LaserPlan;
    readonly moves: readonly Move[];
}

/** The file names each work before its moves. */
function readBack(plan: Plan): ReadBack[] {
    return setUps(plan).flatMap((setUp) => {
        const file = setUpRs274(plan, setUp, new Memo());
        if ('problem' in file) throw new Error(file.problem);
        const program = readProgram(file.text);
        expect(program.ended).toBe(true);
        const owners = ownersOf(
            program.comments,
            setUp.lasers.map(({ step }) => step.name),
        );
        const height = setUp.blank.size!.height;
        return setUp.lasers.map((laser) => {
            const { name } = laser.step;
            const moves = program.moves.map((move) => {
                const s = (owners[move.comments] ?? name) === name ? move.s : 0;
                return { ...move, s, y0: height - move.y0, y1: height - move.y1 };
            });
            return { laser, moves };
        });
    });
}

/** Which step, or '' for marks, the moves belong to that stand behind so many comments; undefined before the first work. */
function ownersOf(comments: readonly string[], steps: readonly string[]): (string | undefined)[] {
    const owners: (string | undefined)[] = [undefined];
    for (const comment of comments) {
        const of = /^kerfbook: (.*)$/.exec(comment)?.[1]?.replace(/ outline$|, picture in dots$/, '');
        if (of !== undefined && steps.includes(of)) owners.push(of);
        else owners.push(of?.startsWith('marks of') ? '' : owners.at(-1));
    }
    return owners;
}

const burns = (move: Move): boolean => !move.rapid && move.s > 0;
const lengthOf = ({ x0, y0, x1, y1 }: Move): number => Math.hypot(x1 - x0, y1 - y0);
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function inside({ rings }: Region, x: number, y: number): boolean {
    let odd = false;
    for (const ring of rings) {
        for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
            const [x0, y0, x1, y1] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
            if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) odd = !odd;
        }
    }
    return odd;
}

/** Whether one of the level moves runs over a place, within half a pitch; the moves are looked up by the line they lie on. */
function coverOf(moves: readonly Move[], angle: number, pitch: number): (x: number, y: number) => boolean {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const lines = new Map<number, { low: number; high: number; v: number }[]>();
    for (const { x0, y0, x1, y1 } of moves) {
        const v = y0 * cos - x0 * sin;
        const [a, b] = [x0 * cos + y0 * sin, x1 * cos + y1 * sin];
        const key = Math.floor(v / pitch);
        const line = lines.get(key);
        const reach = { low: Math.min(a, b), high: Math.max(a, b), v };
        if (line === undefined) lines.set(key, [reach]);
        else line.push(reach);
    }
    return (x, y) => {
        const [u, v] = [x * cos + y * sin, y * cos - x * sin];
        const key = Math.floor(v / pitch);
        const near = [key - 1, key, key + 1].flatMap((each) => lines.get(each) ?? []);
        return near.some((line) => line.low <= u && u <= line.high && Math.abs(line.v - v) <= pitch / 2 + 1e-3);
    };
}

/** The area's moves are told from the outline's by their lengths: all passes of the area lie along one direction. */
function areaMoves({ laser, moves }: ReadBack): Move[] {
    const [cos, sin] = [Math.cos(laser.scanAngle), Math.sin(laser.scanAngle)];
    return moves.filter((move) => burns(move) && Math.abs((move.y1 - move.y0) * cos - (move.x1 - move.x0) * sin) < 1e-3);
}

function expectRegion(read: ReadBack): void {
    const { laser } = read;
    const { pitch } = laser.settings!;
    // Of one pass: the others are counted by their energy.
    const all = areaMoves(read);
    const covered = coverOf(all.slice(0, Math.ceil(all.length / laser.settings!.passes)), laser.scanAngle, pitch);
    const box = laser.region.rings.flatMap((ring) => [...ring]);
    const [xs, ys] = [box.filter((_, i) => i % 2 === 0), box.filter((_, i) => i % 2 === 1)];
    const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    let checked = 0;
    for (let i = 0; i < 150; i++) {
        const x = minX + (maxX - minX) * ((i * 0.618034) % 1);
        const y = minY + (maxY - minY) * ((i * 0.754877) % 1);
        const within = inside(laser.region, x, y);
        // Places close to an edge are nobody's.
        const near = 1.1 * pitch;
        const plain = [0, 1, 2, 3, 4, 5, 6, 7].every(
            (k) =>
                inside(laser.region, x + near * Math.cos((k * Math.PI) / 4), y + near * Math.sin((k * Math.PI) / 4)) === within,
        );
        if (!plain) continue;
        checked++;
        // Of a picture some dots within its region burn, and none outside it.
        if (within && laser.pictures?.length) continue;
        expect(covered(x, y), `${laser.step.name} at ${x}, ${y}`).toBe(within);
    }
    expect(checked).toBeGreaterThan(15);
}

/**
 * Energy by the region's own area and edge: E = P/v · (area/pitch · passes + edge · outlines), an engraving's outline with its own P/v. Its
 * power follows the speed of the head, so that the moves are run on a machine that has to speed up.
 */
function expectEnergy({ laser, moves }: ReadBack, machine: Laser, dark = 0, leads = 0): void {
    const fullPower = machine.power!.value;
    const { power, speed, pitch, passes } = laser.settings!;
    const { outline } = laser;
    // Along the outline alone there is no area.
    const area = laser.step.kind === 'engrave' && laser.line === undefined ? (power / speed) * (laser.area / pitch) * passes : 0;
    const perLength = outline === undefined ? power / speed : outline.power / outline.speed;
    // Beside a shape without bays a line is longer by that much of a full turn, and shorter inside of an opening.
    const turns = (laser.cutLine?.parts.rings.length ?? 0) - (laser.cutLine?.openings.rings.length ?? 0);
    const beside = turns * Math.PI * (laser.kerf?.face.value ?? 0);
    const along = perLength * (laser.perimeter + beside - dark + leads) * laser.outlinePasses;
    const expected = area + along;
    const watts = (move: Move): number => (move.s * fullPower) / (machine.fullOutput?.value ?? 1000);
    let found = 0;
    if (outline === undefined && laser.line === undefined) {
        found = sum(moves.filter(burns).map((move) => (lengthOf(move) * watts(move)) / (move.feed / 60)));
    } else {
        const focus = { speed: 10, acceleration: 100, stop: 0 };
        const motion = {
            topSpeed: machine.topSpeed!.value,
            acceleration: machine.acceleration!.value,
            cornerTolerance: 0.01,
            focus,
        };
        simulate(moves, motion, 0.01, (move, seconds) => {
            if (burns(move)) found += watts(move) * seconds;
        });
    }
    // At the least power of the laser nothing can be taken back where the head is slower: a tenth of the time at most.
    const most =
        outline !== undefined && outline.power <= (machine.leastPower?.value ?? 0) ? 0.01 + (0.1 * along) / expected : 0.01;
    expect(found / expected - 1, `${laser.step.name}: ${found} J for ${expected} J`).toBeGreaterThan(-0.01);
    expect(found / expected - 1, `${laser.step.name}: ${found} J for ${expected} J`).toBeLessThan(most);
}

describe('machine files read back: the region, the lengths and the energy of the plan', () => {
    it.each(goodSamples)(
        'of the sample %s',
        async (name) => {
            const plan = await planOf(...sampleText(name));
            const all = readBack(plan);
            expect(all.length).toBeGreaterThan(0);
            for (const read of all) {
                if (read.laser.step.kind === 'engrave') expectRegion(read);
                // Every ring is dark for a millimetre at each of its tabs.
                const { step, region } = read.laser;
                const dark = step.kind === 'cut' ? (step.tabs?.value ?? 0) * region.rings.length : 0;
                expectEnergy(read, plan.recipe.laser!, dark);
            }
        },
        120_000,
    );

    it.each(['scan at 30 deg', 'scan at 30 deg one way', 'scan along grain', 'scan across grain one way', 'outline 2'])(
        'of an engraving: %s',
        async (scan) => {
            const plan = await planOf(`${shop} recipe r { laser shed art flag "flag.svg"
                blank b { of walnut-12 size 100 x 80 mm grain along width }
                engrave e on b { art flag at 40, 30 mm depth 0.5 mm ${scan} air off } }`);
            const [read] = readBack(plan);
            expectRegion(read!);
            expectEnergy(read!, plan.recipe.laser!);
            if (!scan.includes('one way')) return;
            const u = areaMoves(read!).map(({ x0, x1, y0, y1 }) => {
                const { scanAngle } = read!.laser;
                return (x1 - x0) * Math.cos(scanAngle) + (y1 - y0) * Math.sin(scanAngle) > 0;
            });
            expect(new Set(u).size).toBe(1);
        },
    );

    it('of a deep pocket whose focus is lowered: each pass at its height, the same lines', async () => {
        const text = `${shop} recipe r { laser shed art flag "flag.svg"
            blank b { of walnut-12 size 100 x 80 mm grain along width }
            engrave e on b { art flag depth 3 mm passes 12 outline 1 air off } }`;
        const plan = await planOf(text.replace('spot 0.15 mm', 'spot 0.15 mm focus driven'));
        const [read] = readBack(plan);
        const { focus } = read!.laser;
        expect(focus).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2]);
        expectRegion(read!);
        expectEnergy(read!, plan.recipe.laser!);
        const lengthAt = (z: number) =>
            sum(
                areaMoves(read!)
                    .filter((move) => move.z === z)
                    .map(lengthOf),
            );
        expect(lengthAt(-1) / lengthAt(-2)).toBeCloseTo(1, 9);
        // The outline is burnt with the focus on the face again.
        const level = new Set(areaMoves(read!));
        const aslant = read!.moves.filter((move) => burns(move) && !level.has(move));
        expect(new Set(aslant.map(({ z }) => z))).toEqual(new Set([0]));
    });

    it('of a laser whose power does not go with its setting: S is the setting', async () => {
        const text = `${shop} recipe r { laser shed art flag "flag.svg"
            blank b { of ash-10 size 100 x 80 mm grain along width }
            engrave e on b { art flag power 50 % speed 200 mm/s pitch 0.1 mm passes 1 air off } }`;
        const plan = await planOf(text.replace('spot 0.15 mm', 'spot 0.15 mm set 50 % gives 10 W'));
        const [read] = readBack(plan);
        expect(new Set(read!.moves.filter(burns).map(({ s }) => s))).toEqual(new Set([500]));
        expect(read!.laser.settings!.power).toBeCloseTo(10, 9);
        expectEnergy({ ...read!, moves: read!.moves.map((move) => ({ ...move, s: (move.s * 10) / 22.5 })) }, plan.recipe.laser!);
    });

    it('of a cut with tabs and a lead-in: dark over the tabs, and from the waste onto the edge', async () => {
        const plan = await planOf(`${shop} recipe r { laser shed
            blank b { of walnut-12 size 100 x 80 mm }
            cut rim on b { circle 60 mm tabs 4 lead-in 2 mm passes 2 power 95 % speed 8 mm/s air on } }`);
        const [read] = readBack(plan);
        expectEnergy(read!, plan.recipe.laser!, 4, 2);
        const dark = read!.moves.filter((move) => !move.rapid && move.s === 0);
        expect(sum(dark.map(lengthOf))).toBeCloseTo(2 * 4, 2);
        const [first] = read!.moves.filter(burns);
        expect(lengthOf(first!)).toBeCloseTo(2, 3);
        expect(inside(read!.laser.region, first!.x0, first!.y0)).toBe(false);
        for (const move of read!.moves.filter(burns).slice(1)) {
            if (move.x0 === first!.x0 && move.y0 === first!.y0) continue;
            expect(Math.hypot(move.x1 - 50, move.y1 - 40)).toBeCloseTo(30 + read!.laser.kerf!.face.value / 2, 1);
        }
        expect(read!.moves.filter(burns).every(({ air }) => air)).toBe(true);
        // The drawing leaves the tabs open too, and begins in the waste.
        const [setUp] = setUps(plan);
        const [, data] = /id="rim-outline"[^>]* d="([^"]+)"/.exec(setUpSvg(plan, setUp!, new Memo()).text)!;
        expect(data!.match(/M/g)).toHaveLength(5);
        expect(data!.startsWith(`M${Math.round(first!.x0 * 1000) / 1000} `)).toBe(true);
    });
});
