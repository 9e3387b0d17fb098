/**
 * Volumes of the layers of a piece against closed forms, from memory: a prism is its base times its height; a regular polygon of n
 * corners on a circle of radius r has the area n/2·r²·sin(2π/n); a plane figure turned about an axis sweeps its area times the way
 * of its centroid (Pappus). Floors of the model are flat and its walls upright, so that all hold to rounding.
 */
import { describe, expect, it } from 'vitest';
import { subtract } from '../../shared/geometry/boolean';
import type { Region } from '../../shared/geometry/region';
import { rectangle } from '../../shared/geometry/shapes';
import { afterDeed, type Deed } from '../../shared/piece/after-deed';
import { startFace, volumes } from '../../shared/piece/face';
import { Memo } from '../../shared/plan/memo';
import { exactly } from '../../shared/quantity/interval';

const size = { width: 80, height: 60 };
const thickness = 6;
const whole = size.width * size.height * thickness;

/** Corners on the polygon grid of 0.1 um move an area by less than this part of it. */
const grid = 1e-6;

const corners = 720;
const polygon = (radius: number): Region => ({
    rings: [
        Float64Array.from({ length: 2 * corners }, (_, i) => {
            const angle = (2 * Math.PI * (i >> 1)) / corners;
            return i % 2 === 0 ? 40 + radius * Math.cos(angle) : 30 + radius * Math.sin(angle);
        }),
    ],
});
const polygonArea = (radius: number) => (corners / 2) * radius ** 2 * Math.sin((2 * Math.PI) / corners);
const wedge: Region = { rings: [Float64Array.from([10, 10, 50, 10, 10, 40])] };

const burn = (step: number, region: Region, oak: number, maple = oak): Deed => ({
    do: 'burn',
    step,
    region,
    depths: { oak: exactly(oak), maple: exactly(maple) },
    through: false,
    toneOnly: false,
    foilStops: true,
});
const lay = (step: number, pocket: number, region: Region): Deed => ({
    do: 'lay',
    step,
    pocket,
    region,
    floor: exactly(0.5),
    sheet: 'maple',
    veneer: exactly(0.6),
    glue: 'glue',
    film: exactly(0.05),
});

function left(...deeds: readonly Deed[]): ReadonlyMap<string, number> {
    const memo = new Memo();
    const begun = startFace({ blank: 'board', size, sheet: 'oak', thickness: exactly(thickness) });
    return volumes(deeds.reduce((face, deed) => afterDeed(face, deed, memo), begun));
}

function isWithin(value: number | undefined, expected: number): void {
    expect(Math.abs((value ?? 0) / expected - 1)).toBeLessThan(grid);
}

describe('volumes of layers against closed forms', () => {
    it('a disc, a ring and a wedge are prisms', () => {
        isWithin(whole - left(burn(0, polygon(12), 0.7)).get('wood oak')!, 0.7 * polygonArea(12));
        const ring = subtract(polygon(20), polygon(15));
        const ringArea = polygonArea(20) - polygonArea(15);
        isWithin(whole - left(burn(0, ring, 0.4)).get('wood oak')!, 0.4 * ringArea);
        isWithin(whole - left(burn(0, wedge, 0.9)).get('wood oak')!, (0.9 * 40 * 30) / 2);
    });
    it('steps round an axis sweep what Pappus says of their profile', () => {
        // Three rings of different depth: a staircase turned round the middle. Pappus: sum of 2π·(mean radius)·(width·depth),
        // by the polygon's share of the circle.
        const stairs = [
            { inner: 4, outer: 8, deep: 1.5 },
            { inner: 8, outer: 14, deep: 0.9 },
            { inner: 14, outer: 22, deep: 0.3 },
        ];
        const burns = stairs.map(({ inner, outer, deep }, step) => burn(step, subtract(polygon(outer), polygon(inner)), deep));
        const swept = stairs.reduce(
            (sum, { inner, outer, deep }) => sum + 2 * Math.PI * ((inner + outer) / 2) * (outer - inner) * deep,
            0,
        );
        const share = polygonArea(1) / Math.PI;
        isWithin(whole - left(...burns).get('wood oak')!, swept * share);
    });
    it('veneer, glue, board and a pour over each other, sanded to a plane', () => {
        const pocket = polygon(15);
        const inner = rectangle(35, 25, 10, 10);
        const layers = left(
            burn(0, pocket, 0.5),
            lay(1, 0, pocket),
            { do: 'sand', below: exactly(0.1), flush: true },
            burn(2, inner, 0.25),
            { do: 'fill', step: 3, pocket: 2, resin: 'blue', metal: false, share: 1, over: 0 },
            { do: 'sand', below: exactly(0.05), flush: true },
        );
        // The face has come down by 0.15 mm; 0.45 mm of veneer lay below the first one.
        isWithin(layers.get('glue glue'), 0.05 * polygonArea(15));
        isWithin(layers.get('wood maple'), 0.3 * polygonArea(15) - 0.2 * 100);
        isWithin(layers.get('resin blue'), 0.2 * 100);
        const board = whole - 0.5 * polygonArea(15) - 0.15 * (size.width * size.height - polygonArea(15));
        isWithin(layers.get('wood oak'), board);
    });
});
