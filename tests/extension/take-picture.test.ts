import { describe, expect, test } from 'vitest';
import { PageParts, remembered } from '../../extension/bench/page-parts';
import { PictureTaker } from '../../extension/bench/webview/take-picture';
import type { BenchView } from '../../shared/view/bench-view';
import { type SentPicture, sentPicture } from '../../shared/view/sent-picture';

const layer = (path: string) => ({ path, kind: 'burnt', colour: '#000', opacity: 1, step: 0, depth: 1, label: '' });
const view = (paths: object, ...frames: string[][]) =>
    ({
        version: 1,
        paths,
        inlays: [],
        frames: frames.map((names, step) => ({ step, pieces: [{ blank: 'tray', layers: names.map(layer) }] })),
    }) as unknown as BenchView;

/** As the server answers, without what the page has; and it is noted as sent. */
function send(parts: PageParts, whole: BenchView): SentPicture {
    const had = parts.names;
    const paths = Object.fromEntries(Object.entries(whole.paths).filter(([name]) => !had.includes(name)));
    const picture = sentPicture({ ...whole, paths }, had);
    parts.sent(picture);
    return picture;
}

describe('a picture on its way to the page', () => {
    test('comes out as it went in, whatever the page had', () => {
        const [parts, taker] = [new PageParts(), new PictureTaker()];
        const pictures = [
            view({ a: 'A', b: 'B' }, ['a'], ['a', 'b']),
            view({ a: 'A', c: 'C' }, ['a'], ['a', 'c']),
            view({ a: 'A', b: 'B' }, ['a'], ['a', 'b'], ['a', 'b']),
            view({ d: 'D' }, ['d']),
        ];
        for (let round = 0; round < 3 * remembered; round += 1) {
            const whole = pictures[(round * 7) % pictures.length]!;
            expect(taker.take(structuredClone(send(parts, whole)))).toEqual(whole);
        }
    });

    test('each part goes over once, and not again while it is remembered', () => {
        const parts = new PageParts();
        const first = send(parts, view({ a: 'A' }, ['a'], ['a']));
        expect(Object.keys(first.pieces)).toHaveLength(1);
        expect(send(parts, view({}, ['b'])).pieces).not.toEqual({});
        expect(send(parts, view({}, ['a'])).pieces).toEqual({});
        for (let i = 0; i < remembered; i += 1) send(parts, view({}, ['c']));
        expect(parts.names).not.toContain('a');
        expect(send(parts, view({}, ['a'])).pieces).not.toEqual({});
    });

    test('a page that has come up anew gets everything', () => {
        const parts = new PageParts();
        send(parts, view({ a: 'A' }, ['a']));
        parts.clear();
        expect(parts.names).toEqual([]);
        expect(new PictureTaker().take(send(parts, view({ a: 'A' }, ['a'])))).toEqual(view({ a: 'A' }, ['a']));
    });

    test('what is equal stays the same object', () => {
        const [parts, taker] = [new PageParts(), new PictureTaker()];
        const first = taker.take(send(parts, view({ a: 'A', b: 'B' }, ['a'], ['b'])));
        const second = taker.take(send(parts, view({ a: 'A', c: 'C' }, ['a'], ['c'])));
        expect(second.frames[0]).toBe(first.frames[0]);
        expect(second.frames[1]).not.toBe(first.frames[1]);
    });
});
