import { describe, expect, it } from 'vitest';
import { comingTogether } from '../../extension/bench/webview/round/coming-together';
import { heightsOf } from '../../extension/bench/webview/round/exaggerate';
import { closer, firstOrbit, moved, orbitByKey, turned } from '../../extension/bench/webview/round/orbit';
import { RoundAsker } from '../../extension/bench/webview/round/round-asker';
import type { InlayView } from '../../shared/view/bench-view';
import type { RoundView } from '../../shared/view/round-view';

const surface = (look: number, z: number, down?: true) => ({
    look,
    z,
    points: [0, 0, 10, 0, 0, 10],
    corners: [0, 1, 2],
    ...(down ? { down } : {}),
});
const board: RoundView = {
    blank: 'tray',
    frame: 1,
    width: 100,
    height: 60,
    thickness: 10,
    looks: [
        { kind: 'wood', colour: '#c09060', gloss: 0.1 },
        { kind: 'char', colour: '#302010', gloss: 0 },
    ],
    surfaces: [surface(0, 10), surface(0, 0, true), surface(1, 9.4)],
    walls: [],
    paints: [],
    words: '',
};
const half: RoundView = { ...board, blank: 'bird', width: 40, height: 40, thickness: 0.6, surfaces: [surface(0, 0.6)] };
const side = (blank: string, x: number, y: number): InlayView['relief'] => ({
    blank,
    path: '',
    colour: '',
    burnt: '',
    width: 0,
    height: 0,
    middle: { x, y },
});
const inlay: InlayView = {
    step: 0,
    relief: side('bird', 15, 20),
    pocket: side('tray', 70, 30),
    meeting: { fits: '', collides: '', empty: '' },
    verdict: '',
    good: true,
};

describe('heights drawn larger than they are', () => {
    it('stretch what lies above the deepest floor and leave the wood below it', () => {
        const tall = heightsOf(board, 5);
        expect([0, 9.4, 10].map(tall)).toEqual([0, 9.4, expect.closeTo(12.4, 9)]);
        expect(heightsOf(board, 1)(9.7)).toBeCloseTo(9.7, 9);
    });
});

describe('halves coming together', () => {
    it('begin side by side, without either over the other', () => {
        const { pieces } = comingTogether(inlay, board, half, 0);
        expect(pieces[1]).toMatchObject({ turn: -0, z: 0 });
        // Its left edge lies beyond the board's right one.
        expect(pieces[1]!.x - 15).toBeGreaterThan(50);
    });
    it('end face down on the floor of the pocket, middle on middle', () => {
        const { pieces } = comingTogether(inlay, board, half, 1);
        expect(pieces[1]).toMatchObject({ x: 20, y: 0, z: 9.4, about: { x: 15, y: 20 } });
        expect(pieces[1]!.turn).toBeCloseTo(-Math.PI, 9);
    });
    it('never sink into the board on the way', () => {
        for (let at = 0; at <= 1; at += 0.01) {
            const { z, turn, x } = comingTogether(inlay, board, half, at).pieces[1]!;
            if (x - 20 > 50) continue;
            // On edge its middle is as high as half of it, where it passes over the board.
            expect(z - 20 * Math.abs(Math.sin(turn)), `${at}`).toBeGreaterThan(at > 0.8 ? 9.3 : -1e-9);
        }
    });
    it('lay a part in as it is, that is not turned over', () => {
        expect(comingTogether({ ...inlay, faceUp: true }, board, half, 1).pieces[1]!.turn).toBeCloseTo(0, 9);
    });
});

describe('walking around a piece by keys', () => {
    it('turns, zooms and comes back', () => {
        expect(orbitByKey(firstOrbit, 'ArrowRight', false)!.around).toBeGreaterThan(firstOrbit.around);
        expect(orbitByKey(closer(firstOrbit, 3), '0', false)).toEqual(firstOrbit);
        expect(orbitByKey(firstOrbit, 'a', false)).toBeUndefined();
    });
    it('never looks from below the bench, nor loses the piece', () => {
        let orbit = firstOrbit;
        for (let i = 0; i < 50; i++) orbit = moved(turned(orbit, 0, -0.3), 0.2, 0.2);
        expect(orbit.above).toBeGreaterThan(0);
        expect(Math.max(Math.abs(orbit.x), Math.abs(orbit.y))).toBeLessThanOrEqual(0.6);
    });
});

describe('asking for pieces in the round', () => {
    it('asks once for each, and keeps what came', () => {
        const sent: number[] = [];
        let changes = 0;
        let stopped = 0;
        let rest = () => {};
        const asker = new RoundAsker(
            (ticket) => sent.push(ticket),
            () => changes++,
            (then) => {
                rest = then;
                return () => stopped++;
            },
        );
        const wish = { text: 1, recipe: 'tray', frame: 2, blank: 'tray', hidden: [] };
        expect(asker.get(wish)).toBeUndefined();
        expect(asker.get({ ...wish })).toBeUndefined();
        expect(sent).toHaveLength(1);
        asker.answer(sent[0]!, board);
        asker.answer(99, half);
        expect(asker.get(wish)).toBe(board);
        expect(changes).toBe(1);
        // Another text waits for a rest, and begins to wait anew with each that follows.
        asker.get({ ...wish, text: 2 });
        asker.get({ ...wish, text: 2 });
        expect([sent.length, stopped]).toEqual([1, 0]);
        asker.get({ ...wish, text: 3 });
        expect([sent.length, stopped]).toEqual([1, 1]);
        asker.get({ ...wish, text: 2 });
        rest();
        expect(changes).toBe(2);
        asker.get({ ...wish, text: 2 });
        expect(sent).toHaveLength(2);
        asker.answer(sent[1]!, null);
        expect(asker.get({ ...wish, text: 2 })).toMatch(/could not/);
    });
});
