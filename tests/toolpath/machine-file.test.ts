import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rs274 } from '../../shared/sheets/rs274';
import { powerWords } from '../../shared/sheets/rs274-lines';
import { cutPaths } from '../../shared/toolpath/cut';
import { FOCUS_BY_HAND, FOCUS_MOTION } from '../../shared/toolpath/focus';
import { hatch } from '../../shared/toolpath/hatch';
import type { AreaWork, MachineJob, PathWork } from '../../shared/toolpath/job';
import { outlinePaths } from '../../shared/toolpath/outline';
import { pathLength } from '../../shared/toolpath/path';
import { CORNER_TOLERANCE, timeOfJob } from '../../shared/toolpath/time';
import { type Move, readProgram } from './rs274-reader';
import { dish } from './shapes';
import { simulate } from './simulate';

const motion = { topSpeed: 600, acceleration: 6000 };
const origin = { x: 0, y: 100 };
const options = { comments: ['tray'], fullPower: 45, origin: 'X 0 Y 0 is somewhere' };
const region = dish(60, 40, 50);

function area(more: Partial<AreaWork> = {}, angle = 0): AreaWork {
    const lines = hatch(region, 0.25, angle)!;
    return { kind: 'area', name: 'pocket', hatch: lines, bothWays: true, power: 27, speed: 300, passes: 1, ...more };
}

const outline: PathWork = { kind: 'path', name: 'outline', paths: outlinePaths(region), power: 9, speed: 80, passes: 2 };
const cut: PathWork = {
    kind: 'path',
    name: 'cut',
    paths: cutPaths(region, { tabs: 3, tabWidth: 1.5, leadIn: 2 }),
    power: 45,
    speed: 12,
    passes: 1,
};

function textOf(job: MachineJob): string {
    const result = rs274({ origin, ...job }, options);
    if ('problem' in result) throw new Error(result.problem);
    return result.text;
}

const machine = {
    ...motion,
    cornerTolerance: CORNER_TOLERANCE,
    focus: { speed: FOCUS_MOTION.topSpeed, acceleration: FOCUS_MOTION.acceleration, stop: FOCUS_BY_HAND },
};

/** What the header says of the reach is what the interpreter saw, to a hundredth outwards. */
function expectReach(comments: readonly string[], moves: readonly Move[]): void {
    const said = comments.map((comment) => /over X (\S+) to (\S+), Y (\S+) to (\S+) mm/.exec(comment)).find(Boolean);
    const [lowX, highX, lowY, highY] = said!.slice(1).map(Number) as [number, number, number, number];
    const [xs, ys] = [moves.map(({ x1 }) => x1), moves.map(({ y1 }) => y1)];
    for (const [low, high, seen] of [
        [lowX, highX, xs],
        [lowY, highY, ys],
    ] as const) {
        const [least, most] = [Math.min(...seen), Math.max(...seen)];
        expect(least - low).toBeGreaterThan(-1e-4);
        expect(least - low).toBeLessThan(0.0101);
        expect(high - most).toBeGreaterThan(-1e-4);
        expect(high - most).toBeLessThan(0.0101);
    }
}

const burns = (move: Move): boolean => !move.rapid && move.s > 0;
const lengthOf = (move: Move): number => Math.hypot(move.x1 - move.x0, move.y1 - move.y0);
const energyOf = (moves: readonly Move[]): number =>
    moves.filter(burns).reduce((sum, move) => sum + ((lengthOf(move) / (move.feed / 60)) * move.s * 45) / 1000, 0);

describe('a machine file read back by an interpreter of its own', () => {
    it.each([0, Math.PI / 2, 0.6])('burns just the segments of the hatch at %d rad', (angle) => {
        const work = area({}, angle);
        const burnt = readProgram(textOf({ work: [work], motion })).moves.filter(burns);
        const { hatch: lines } = work;
        expect(burnt.length).toBe(lines.segments);
        // Turned back into the frame of the lines, and put into the hatch's own order.
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
        const found = burnt
            .map((move) => {
                const [ya, yb] = [100 - move.y0, 100 - move.y1];
                const [ua, ub] = [move.x0 * cos + ya * sin, move.x1 * cos + yb * sin];
                return { low: Math.min(ua, ub), high: Math.max(ua, ub), v: ya * cos - move.x0 * sin };
            })
            .sort((a, b) => (Math.abs(a.v - b.v) > 0.01 ? a.v - b.v : a.low - b.low));
        let segment = 0;
        for (let line = 0; line < lines.lines; line++) {
            for (; segment < lines.starts[line + 1]!; segment++) {
                expect(Math.abs(found[segment]!.low - lines.ends[2 * segment]!)).toBeLessThan(2e-4);
                expect(Math.abs(found[segment]!.high - lines.ends[2 * segment + 1]!)).toBeLessThan(2e-4);
                expect(Math.abs(found[segment]!.v - (lines.first + line * lines.pitch))).toBeLessThan(2e-4);
            }
        }
        expect(burnt.reduce((sum, move) => sum + lengthOf(move), 0)).toBeCloseTo(lines.length, 1);
    });

    it('burns the outlines and cuts, and leaves the tabs', () => {
        const { moves } = readProgram(textOf({ work: [outline, cut], motion }));
        const expected = [...outline.paths, ...outline.paths, ...cut.paths].map(pathLength);
        const lit = moves.filter(burns).reduce((sum, move) => sum + lengthOf(move), 0);
        const dark = moves.filter((move) => !move.rapid && move.s === 0).reduce((sum, move) => sum + lengthOf(move), 0);
        expect(lit).toBeCloseTo(
            expected.reduce((sum, length) => sum + length.lit, 0),
            1,
        );
        expect(dark).toBeCloseTo(3 * 3 * 1.5, 2);
    });

    it('spends the energy that the plan says', () => {
        const job: MachineJob = { work: [area({ passes: 3 }), outline, cut], motion };
        const energy = timeOfJob(job)!.works.reduce((sum, work) => sum + work.energy, 0);
        const found = energyOf(readProgram(textOf(job)).moves);
        expect(energy).toBeGreaterThan(1000);
        expect(Math.abs(found / energy - 1)).toBeLessThan(1e-5);
    });

    it('never moves fast with the beam on, and ends dark, at the origin', () => {
        const { moves, ended } = readProgram(textOf({ work: [area({ passes: 2 }), outline, cut], motion }));
        expect(moves.filter((move) => move.rapid && move.s > 0)).toEqual([]);
        expect(moves.at(-1)).toMatchObject({ x1: 0, y1: 0, s: 0 });
        expect(ended).toBe(true);
    });

    it.each([
        ['an area both ways', [area()]],
        ['an area one way, aslant, in two passes', [area({ bothWays: false, passes: 2 }, 0.6)]],
        ['a slow area with wide gaps', [area({ speed: 40 })]],
        ['an area with a short run-up', [area({ overtravel: 2 })]],
        ['outlines', [outline]],
        ['a cut', [cut]],
        ['all of them', [area(), outline, cut]],
        ['passes with a focus that is lowered', [area({ passes: 4, focus: [0, 0, 1.2, 1.2] }), outline]],
    ])('takes the time that the plan says within one per cent: %s', (_, work) => {
        const job: MachineJob = { work, motion, origin };
        const simulated = simulate(readProgram(textOf(job)).moves, machine, 0.05);
        const planned = timeOfJob(job)!.total;
        expect(planned).toBeGreaterThan(1);
        expect(Math.abs(planned / simulated - 1)).toBeLessThan(0.01);
    });

    it('lowers the focus, brings it back for the outline, switches air, and says what S means', () => {
        const text = textOf({
            work: [area({ passes: 3, focus: [0, 0.25, 0.25], air: false }), outline, { ...cut, air: true }],
            motion,
        });
        const { moves, comments } = readProgram(text);
        const heights = moves.filter(burns).map((move) => (move.air ? 'air' : move.z));
        expect(heights.filter((height, i) => height !== heights[i - 1])).toEqual([0, -0.25, 0, 'air']);
        expect(moves.at(-1)!.z).toBe(0);
        expect(comments.some((comment) => comment.includes('S 0 to 1000 stands for 0 to 45 W'))).toBe(true);
        // Each pass at its own height burns the same.
        const burnt = (z: number) => energyOf(moves.filter((move) => move.z === z && !move.air && move.feed === 300 * 60));
        expect(burnt(-0.25) / burnt(0)).toBeCloseTo(2, 6);
    });

    it('stops with the beam off where the focus is lowered by hand, and moves no Z', () => {
        const job: MachineJob = { work: [area({ passes: 3, focus: [0, 0.7, 0.7] }), outline], motion, focusByHand: true };
        const text = textOf(job);
        const { moves, comments } = readProgram(text);
        expect(moves.filter((move) => move.stops > 0)).toHaveLength(2);
        expect(moves.filter((move) => move.z !== 0)).toEqual([]);
        expect(comments.filter((comment) => comment.includes(': stop'))).toEqual([
            'kerfbook: stop: bring the focus to 0.7 mm below the face, then go on',
            'kerfbook: stop: bring the focus back to the face, then go on',
        ]);
        expect(timeOfJob(job)!.focusing).toBe(2 * FOCUS_BY_HAND);
        expect(Math.abs(timeOfJob(job)!.total / simulate(moves, machine, 0.05) - 1)).toBeLessThan(0.01);
    });

    it('has the air off while it stops, and on again behind each stop', () => {
        const cuts: PathWork = { ...cut, air: true };
        const focused = area({ passes: 3, focus: [0, 0.7, 1.4], air: true });
        const { moves } = readProgram(textOf({ work: [focused, cuts], motion, focusByHand: true }));
        expect(moves.reduce((sum, { stops }) => sum + stops, 0)).toBe(3);
        expect(moves.filter((move) => burns(move) && !move.air)).toEqual([]);
    });

    it('says nothing but the power that S has', () => {
        const third = { ...outline, power: 45 / 3 };
        const text = textOf({ work: [third], motion });
        const words = powerWords(15, options);
        expect(words).toBe('S333.33 = 33.333 %');
        expect(text).toContain(words.split(' ')[0]!);
        expect(powerWords(45, options)).toBe('S1000 = 100 %');
        // 6 W measured at a fifth of the setting.
        expect(powerWords(6, { fullPower: 45, settingFor: () => 0.2 })).toBe('S200 = 20 %');
    });

    it.each([
        ['lower left', { x: 0, y: 100 }],
        ['upper right', { x: 80, y: 0 }],
        ['middle', { x: 40, y: 50 }],
    ])('has its zero where it is asked to, and says what the head moves over: %s', (_, at) => {
        const work = [area({}, 0.6), cut];
        const { moves, comments } = readProgram(textOf({ work, motion, origin: at }));
        const [first] = readProgram(textOf({ work, motion, origin: { x: 0, y: 0 } })).moves;
        expect(moves[0]!.x1).toBeCloseTo(first!.x1 - at.x, 4);
        expect(moves[0]!.y1).toBeCloseTo(first!.y1 + at.y, 4);
        expectReach(comments, moves);
    });

    it('begins every comment with a word of its own, and its first line with nobody’s', () => {
        const titles = ['LOGOPEN,/tmp/x', 'MSG,stop!', 'PRINT,#5221', '`touch x`; $(touch y) | touch z & "touch" <a> \\w ~ ?'];
        const result = rs274({ work: [{ ...outline, name: 'DEBUG,#1' }], motion, origin }, { ...options, comments: titles });
        if ('problem' in result) throw new Error(result.problem);
        const written = result.text.split('\n').filter((line) => line.startsWith('('));
        expect(written.length).toBeGreaterThan(6);
        for (const line of written) expect(line).toMatch(/^\(kerfbook: [A-Za-z0-9 .,:%+/=_-]*\)$/);
        expect(result.text.split('\n')[0]).toBe('(kerfbook: machine file in RS-274/NGC)');
    });

    it('names no Z where the focus stays on the face', () => {
        expect(textOf({ work: [area({ passes: 2, focus: [0, 0] }), outline], motion })).not.toContain('Z');
    });

    it('keeps comments inside their brackets, plain and short', () => {
        const result = rs274(
            { work: [{ ...outline, name: 'a) M3 S1000 (b' }], motion, origin },
            { ...options, comments: ['Bröt\nM3 (x', 'y'.repeat(999)] },
        );
        if ('problem' in result) throw new Error(result.problem);
        const { comments, moves } = readProgram(result.text);
        expect(comments[1]).toBe('kerfbook: BrotM3  x');
        expect(comments).toContain('kerfbook: a  M3 S1000  b');
        expect(moves.length).toBeGreaterThan(10);
    });

    it('is the same text every time, without exponents or odd numbers', () => {
        const job: MachineJob = { work: [area({ power: 0.0123 }, 0.6), outline], motion };
        const text = textOf(job);
        expect(textOf(structuredClone(job))).toBe(text);
        expect(text).not.toMatch(/\de[+-]?\d|NaN|Infinity|undefined|-0(?![.\d])/);
    });
});

describe('what cannot be written', () => {
    it.each([
        ['power-over', { work: [area({ power: 46 })], motion }],
        ['incomplete-hatch', { work: [area({ hatch: hatch(region, 0.25, 0, { most: 100 })! })], motion }],
        ['not-finite', { work: [{ ...outline, paths: [{ points: Float64Array.of(0, 0, 1e308, Number.NaN) }] }], motion }],
        ['not-finite', { work: [area({ speed: 0 })], motion }],
        ['too-long', { work: [area({ passes: 10_000 })], motion }],
    ] as const)('%s', (problem, job) => {
        expect(rs274(job as MachineJob, options)).toEqual({ problem });
    });

    it('gives a readable file or a problem for any numbers', () => {
        const odd = fc.oneof(fc.double(), fc.constantFrom(0, -1, 1, 1e308, -1e308, Number.NaN, 1e-300));
        fc.assert(
            fc.property(fc.array(odd, { minLength: 9, maxLength: 9 }), fc.string({ unit: 'binary' }), (n, name) => {
                const job: MachineJob = {
                    work: [
                        {
                            kind: 'path',
                            name,
                            paths: [{ points: Float64Array.from(n.slice(0, 4)) }],
                            power: n[4]!,
                            speed: n[5]!,
                            passes: 1,
                        },
                    ],
                    motion: { topSpeed: n[6]!, acceleration: n[7]! },
                    origin: { x: 0, y: n[8]! },
                };
                const result = rs274(job, { ...options, comments: [name] });
                if ('text' in result) expect(readProgram(result.text).ended).toBe(true);
                timeOfJob(job);
            }),
            { numRuns: 500, seed: 7 },
        );
    });
});
