import { describe, expect, it } from 'vitest';
import { movedByKey, onPiece, pointed, rulerWords } from '../../extension/bench/webview/picture/ruler';

const key = (name: string, more: object = {}) => ({ key: name, shiftKey: false, altKey: false, ...more });
const piece = { width: 100, height: 60 };

describe('the ruler', () => {
    it('reads the distance and both ways in the unit of the recipe', () => {
        expect(rulerWords({ from: { x: 10, y: 40 }, to: { x: 50, y: 10 } })).toBe('50 mm; 40 mm across, 30 mm down');
        expect(rulerWords({ from: { x: 0, y: 0 }, to: { x: 25.4, y: 0 } }, 'in')).toBe('1 in; 1 in across, 0 in down');
    });

    it('goes from mark to mark with the arrow keys, further with Shift and finer with Alt', () => {
        const at = { x: 10.3, y: 20 };
        expect(movedByKey(at, key('ArrowRight'), 'mm', piece)).toEqual({ x: 11, y: 20 });
        expect(movedByKey(at, key('ArrowLeft'), 'mm', piece)).toEqual({ x: 10, y: 20 });
        expect(movedByKey(at, key('ArrowDown', { shiftKey: true }), 'mm', piece)).toEqual({ x: 10.3, y: 30 });
        expect(movedByKey(at, key('ArrowUp', { altKey: true }), 'mm', piece)!.y).toBeCloseTo(19.9, 9);
        expect(movedByKey(at, key('ArrowRight'), 'in', piece)!.x).toBeCloseTo((7 / 16) * 25.4, 9);
        expect(movedByKey(at, key('a'), 'mm', piece)).toBeUndefined();
        expect(movedByKey(at, key('constructor'), 'mm', piece)).toBeUndefined();
    });

    it('stays on the piece', () => {
        expect(movedByKey({ x: 99.5, y: 0 }, key('ArrowRight', { shiftKey: true }), 'mm', piece)).toEqual({ x: 100, y: 0 });
        expect(onPiece({ x: -3, y: 80 }, piece)).toEqual({ x: 0, y: 60 });
    });

    it('reads as finely as the picture is large', () => {
        expect(pointed({ x: 1.23456, y: 2 }, 2)).toEqual({ x: 1.2, y: 2 });
        expect(pointed({ x: 1.23456, y: 2 }, 60)).toEqual({ x: 1.23, y: 2 });
        expect(pointed({ x: 1.23456, y: 2 }, 800)).toEqual({ x: 1.235, y: 2 });
    });
});
