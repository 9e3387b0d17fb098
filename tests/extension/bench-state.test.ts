import { describe, expect, test } from 'vitest';
import { chosenFrame, chosenPiece, emptyState, frameKeys, piecesOf, stepAt } from '../../extension/bench/webview/state';
import type { BenchView, FrameView, PieceView, StepView } from '../../shared/view/bench-view';

const uri = 'file:///w/tray.kerf';

function step(index: number, kind: StepView['kind'], title: string, offset: number, blank = 'tray'): StepView {
    return {
        id: title,
        index,
        kind,
        title,
        blank,
        facts: [],
        machine: 0,
        attended: 0,
        waiting: 0,
        where: { uri, offset, length: 4 },
    };
}

function piece(blank: string, gone = false): PieceView {
    const section = { y: 0, width: 0, top: 0, face: 0, spans: [] };
    return { blank, gone, masked: false, sealed: false, finished: false, sanded: false, layers: [], section };
}

function viewOf(steps: readonly StepView[]): BenchView {
    const frames: FrameView[] = [-1, ...steps.map(({ index }) => index)].map((at) => ({
        step: at,
        pieces: [piece('tray'), piece('bird', at >= 2)],
    }));
    return {
        version: 1,
        uri,
        textVersion: 1,
        recipe: 'tray',
        title: 'Tray',
        revision: 1,
        make: 1,
        recipes: [],
        blanks: [],
        steps,
        paths: {},
        frames,
        inlays: [],
        findings: [],
        totals: { machine: 0, attended: 0, waiting: 0 },
        supplies: [],
        run: { ready: 0, attended: 0, idle: 0, scaled: false, sittings: [], notBefore: [], sheets: [] },
        cautions: [],
    };
}

const engrave = step(0, 'engrave', 'Engrave pocket', 100);
const relief = step(1, 'engrave', 'Engrave relief', 200, 'bird');
const first = step(2, 'wait', 'Wait 1 h', 300);
const second = step(3, 'wait', 'Wait 1 h', 400);

describe('the chosen frame', () => {
    const view = viewOf([engrave, relief, first, second]);

    test('is the finished piece until another is chosen', () => {
        expect(chosenFrame(emptyState, view)).toBe(4);
    });

    test('stays the same step when a step is put in before it', () => {
        const frameKey = frameKeys(view)[2]!;
        const more = viewOf([step(0, 'mask', 'Mask tray', 50), { ...engrave, index: 1 }, { ...relief, index: 2 }]);
        expect(chosenFrame({ ...emptyState, frameKey }, more)).toBe(3);
    });

    test('steps of the same name are told apart', () => {
        const keys = frameKeys(view);
        expect(new Set(keys).size).toBe(keys.length);
    });

    test('falls back to the last when its step is gone', () => {
        expect(chosenFrame({ ...emptyState, frameKey: 'peel Peel bird 1' }, view)).toBe(4);
    });
});

describe('the chosen piece', () => {
    const view = viewOf([engrave, relief, first]);

    test('is the one the step works on, until another is chosen', () => {
        expect(chosenPiece(emptyState, view, view.frames[2]!)?.blank).toBe('bird');
        expect(chosenPiece({ ...emptyState, blank: 'tray' }, view, view.frames[2]!)?.blank).toBe('tray');
    });

    test('is never one that lies inside another', () => {
        expect(piecesOf(view.frames[3]).map(({ blank }) => blank)).toEqual(['tray']);
        expect(chosenPiece({ ...emptyState, blank: 'bird' }, view, view.frames[3]!)?.blank).toBe('tray');
    });
});

describe('the step under the cursor', () => {
    const view = viewOf([engrave, relief]);

    test.each([
        [50, undefined],
        [100, 0],
        [199, 0],
        [200, 1],
        [5000, 1],
    ])('at %d', (offset, index) => {
        expect(stepAt(view, offset)).toBe(index);
    });
});
