import { describe, expect, test } from 'vitest';
import { poseAt } from '../../extension/bench/webview/picture/turning';

describe('turning the relief over', () => {
    test('begins face up beside the pocket and ends face down in it', () => {
        expect(poseAt(0)).toEqual({ way: 0, turn: 1, landed: 0, foretold: 1 });
        expect(poseAt(1)).toEqual({ way: 1, turn: -1, landed: 1, foretold: 0 });
    });

    test('it is face down and over the pocket before the meeting shows', () => {
        const { way, turn } = [0.85, 0.9, 0.99].map(poseAt)[0]!;
        expect(way).toBeCloseTo(1);
        expect(turn).toBeCloseTo(-1);
        expect(poseAt(0.8).landed).toBe(0);
    });
});
