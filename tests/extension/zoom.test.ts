import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pan, place, wholeWindow, zoomAt } from '../../extension/bench/webview/picture/zoom';

const piece = { width: 300, height: 200 };
const screen = { width: 900, height: 500 };

describe('looking closer', () => {
    test('the whole piece is in sight, in the middle', () => {
        const { scale, shiftX, shiftY } = place(wholeWindow, piece, screen);
        expect(shiftX).toBeGreaterThan(0);
        expect(shiftY).toBeGreaterThan(0);
        expect(shiftX + piece.width * scale).toBeCloseTo(screen.width - shiftX);
        expect(shiftY + piece.height * scale).toBeCloseTo(screen.height - shiftY);
    });

    test('what lies under the pointer stays under it', () => {
        const point = { x: 400, y: 260 };
        const under = (window: typeof wholeWindow) => {
            const { scale, shiftX, shiftY } = place(window, piece, screen);
            return [(point.x - shiftX) / scale, (point.y - shiftY) / scale];
        };
        const closer = zoomAt(wholeWindow, 3, point, piece, screen);
        expect(under(closer)[0]).toBeCloseTo(under(wholeWindow)[0]!, 6);
        expect(under(closer)[1]).toBeCloseTo(under(wholeWindow)[1]!, 6);
    });

    test('moving by some px moves the picture by as many', () => {
        const closer = zoomAt(wholeWindow, 4, { x: 450, y: 250 }, piece, screen);
        const moved = pan(closer, 30, -20, piece, screen);
        expect(place(moved, piece, screen).shiftX - place(closer, piece, screen).shiftX).toBeCloseTo(30);
        expect(place(moved, piece, screen).shiftY - place(closer, piece, screen).shiftY).toBeCloseTo(-20);
    });

    test('going out as far as it goes shows the whole again', () => {
        const closer = zoomAt(wholeWindow, 5, { x: 10, y: 10 }, piece, screen);
        expect(zoomAt(closer, 1e-6, { x: 10, y: 10 }, piece, screen)).toEqual(wholeWindow);
    });

    test('no look, however far-fetched, leaves the piece or the numbers', () => {
        const any = fc.double({ noNaN: false });
        fc.assert(
            fc.property(any, any, any, any, any, (factor, x, y, dx, dy) => {
                const window = pan(zoomAt(wholeWindow, factor, { x, y }, piece, screen), dx, dy, piece, screen);
                expect(window.x).toBeGreaterThanOrEqual(0);
                expect(window.x).toBeLessThanOrEqual(1);
                expect(window.y).toBeGreaterThanOrEqual(0);
                expect(window.y).toBeLessThanOrEqual(1);
                expect(window.zoom).toBeGreaterThanOrEqual(1);
            }),
        );
    });
});
