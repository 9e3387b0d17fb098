import { expect, test } from 'vitest';
import { high, tradeDots, tradeSentence, wide } from '../../extension/bench/webview/notes/trade-drawing';
import { PictureTaker } from '../../extension/bench/webview/take-picture';
import type { TradeView } from '../../shared/view/bench-view';
import type { SentPicture } from '../../shared/view/sent-picture';

const way = (passes: number, time: number, off: number, chosen = false): TradeView => ({
    passes,
    time,
    off,
    each: 0.5 / passes,
    chosen,
    words: `${passes} passes: ${time} s`,
});
const trade = [way(1, 60, 0.2), way(2, 120, 0.1, true), way(4, 240, 0.15)];

test('more time lies further right, a wider range higher, and a heavier pass is a larger dot', () => {
    const dots = tradeDots(trade);
    expect(dots.map(({ x }) => x)).toEqual(dots.map(({ x }) => x).toSorted((a, b) => a - b));
    expect(dots[1]!.y).toBeGreaterThan(dots[2]!.y);
    expect(dots[2]!.y).toBeGreaterThan(dots[0]!.y);
    expect(dots[0]!.radius).toBeGreaterThan(dots[1]!.radius);
    for (const { x, y, radius } of dots) {
        expect(x - radius >= 0 && x + radius <= wide).toBe(true);
        expect(y - radius >= 0 && y + radius <= high).toBe(true);
    }
});

test('who does not see it hears every way, and which is planned', () => {
    expect(tradeSentence(trade)).toBe('1 passes: 60 s; 2 passes: 120 s (as planned); 4 passes: 240 s');
});

test('the ways stay while the next picture is being worked out, and go with it', () => {
    const picture = (step: object, more?: true) =>
        ({
            steps: [{ id: 'engrave-pocket', ...step }],
            frames: [],
            paths: {},
            pieces: {},
            inlays: [],
            ...(more && { more }),
        }) as unknown as SentPicture;
    const taker = new PictureTaker();
    expect(taker.take(picture({}, true)).steps[0]!.trade).toBeUndefined();
    expect(taker.take(picture({ trade })).steps[0]!.trade).toEqual(trade);
    expect(taker.take(picture({}, true)).steps[0]!.trade).toEqual(trade);
    expect(taker.take(picture({})).steps[0]!.trade).toBeUndefined();
});
