import { expect, test } from 'vitest';
import { takePicture } from '../../extension/bench/webview/take-picture';
import type { BenchView } from '../../shared/view/bench-view';

const layer = (path: string) => ({ path, kind: 'burnt', colour: '#000', opacity: 1, step: 0, depth: 1, label: '' });
const view = (paths: object, ...frames: string[][]) =>
    ({
        version: 1,
        paths,
        inlays: [],
        frames: frames.map((names, step) => ({ step, pieces: [{ blank: 'tray', layers: names.map(layer) }] })),
    }) as unknown as BenchView;

test('path data that was left out comes from the picture before, and what nothing points at goes', () => {
    const first = takePicture(undefined, view({ a: 'A', b: 'B' }, ['a'], ['a', 'b']));
    const second = takePicture(first, view({ c: 'C' }, ['a'], ['a', 'c']));
    expect(second.paths).toEqual({ a: 'A', c: 'C' });
});

test('what is equal stays the same object', () => {
    const first = view({ a: 'A', b: 'B' }, ['a'], ['b']);
    const second = takePicture(first, view({ c: 'C' }, ['a'], ['c']));
    expect(second.frames[0]).toBe(first.frames[0]);
    expect(second.frames[1]).not.toBe(first.frames[1]);
});
