import { describe, expect, test } from 'vitest';
import { dimensionsOf } from '../../extension/bench/webview/section/section-dimensions';
import { exaggeration, sectionScale } from '../../extension/bench/webview/section/section-scale';
import type { SectionView, SpanView } from '../../shared/view/bench-view';

function span(kind: SpanView['kind'], from: number, to: number, bottom: number, top: number, spread = 0): SpanView {
    const band = spread === 0 ? {} : { band: { low: top - spread, high: top + spread } };
    return { kind, from, to, bottom, top, ...band, colour: '#885533', label: kind };
}

/** 12 mm walnut, 0.5 mm pocket from 40 to 60 mm. */
const pocket: SectionView = {
    y: 50,
    width: 100,
    top: 12,
    face: 12,
    spans: [span('wood', 0, 40, 0, 12), span('wood', 40, 60, 0, 11.5, 0.04), span('wood', 60, 100, 0, 12)],
};
const inlaid: SectionView = {
    ...pocket,
    spans: [...pocket.spans, span('glue', 40, 60, 11.5, 11.56), span('inlay', 40, 60, 11.56, 12.16)],
};
/** 0.6 mm veneer burnt through down to its foil. */
const through: SectionView = {
    y: 50,
    width: 100,
    top: 0.6,
    face: 0.6,
    spans: [span('foil', 0, 100, -0.07, 0), span('wood', 0, 30, 0, 0.6), span('wood', 70, 100, 0, 0.6)],
};

describe('heights of a section', () => {
    test('higher wood is drawn higher, and everything between top and bottom edge', () => {
        const scale = sectionScale([pocket, inlaid], 3);
        const heights = [12.16, 12, 11.56, 11.5, 11, 6, 0, -0.07].map(scale.y);
        for (const [index, y] of heights.entries()) {
            expect(y).toBeGreaterThanOrEqual(0);
            expect(y).toBeLessThanOrEqual(scale.height);
            if (index > 0) expect(y).toBeGreaterThanOrEqual(heights[index - 1]!);
        }
    });

    test('the stated exaggeration is the one that is drawn', () => {
        const scale = sectionScale([pocket], 3);
        expect((scale.y(11.5) - scale.y(12)) / 0.5).toBeCloseTo(3 * scale.times);
        expect(exaggeration(scale.times)).toBe(`heights drawn ${scale.times} times`);
    });

    test('a thick board is broken off below what was dug, a thin sheet is not', () => {
        const board = sectionScale([pocket], 3);
        expect(board.breakAt).toBeGreaterThan(board.y(11.46));
        expect(board.breakAt).toBeLessThan(board.y(0));
        expect(sectionScale([through], 3).breakAt).toBeUndefined();
    });

    test('all frames of a blank share one scale', () => {
        const before = sectionScale([pocket, inlaid], 3);
        const after = sectionScale([inlaid, pocket], 3);
        expect(after.times).toBe(before.times);
        expect(after.y(11.5)).toBe(before.y(11.5));
    });

    test('very close, heights are drawn smaller than widths, and it says so', () => {
        expect(exaggeration(sectionScale([pocket], 800).times)).toMatch(/^heights drawn at 1 in \d+$/);
    });

    test('numbers without end draw something of bounded height', () => {
        const wild: SectionView = { ...pocket, top: 1e308, face: Number.NaN, spans: [span('wood', 0, 100, 0, Infinity, 1e308)] };
        expect(sectionScale([wild], 3).height).toBeLessThan(400);
    });
});

describe('heights that are written beside a section', () => {
    test('a pocket: how deep, with its tolerance', () => {
        expect(dimensionsOf(pocket).map(({ text }) => text)).toEqual(['0.5 mm ± 0.04 mm deep']);
    });

    test('a floor that may lie below the board is told from what to what, and no deeper than the board', () => {
        const deep = span('wood', 40, 60, 0, 1);
        const spans = [span('wood', 0, 40, 0, 12), { ...deep, band: { low: 0, high: 4 } }, span('wood', 60, 100, 0, 12)];
        expect(dimensionsOf({ ...pocket, spans })[0]!.text).toBe('11 mm (8 mm to 12 mm) deep');
    });

    test('an inlay: the veneer in it, and how far it stands proud', () => {
        expect(dimensionsOf(inlaid).map(({ text }) => text)).toEqual(['0.5 mm ± 0.04 mm deep', '0.6 mm veneer', '0.16 mm proud']);
    });

    test('sanded flush, nothing stands proud', () => {
        const flush = { ...inlaid, spans: inlaid.spans.map((each) => (each.kind === 'inlay' ? { ...each, top: 12 } : each)) };
        expect(dimensionsOf(flush).map(({ id }) => id)).toEqual(['depth', 'filling']);
    });

    test('a bare board: nothing', () => {
        expect(dimensionsOf({ ...pocket, spans: [span('wood', 0, 100, 0, 12)] })).toEqual([]);
    });

    test("in the maker's own unit", () => {
        expect(dimensionsOf({ ...pocket, spans: [span('wood', 0, 100, 0, 12 - 1.5875)] }, 'in')[0]!.text).toBe('0.063 in deep');
    });
});
