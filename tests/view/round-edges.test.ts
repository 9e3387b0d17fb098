import { expect, it } from 'vitest';
import { rectangle } from '../../shared/geometry/shapes';
import { edgesBetween } from '../../shared/view/round-edges';

it('cuts an edge where a neighbour has a corner, so that each stretch has one neighbour', () => {
    // A tall one on the left, two beside it: the left one's edge has no corner where they meet.
    const edges = edgesBetween([rectangle(0, 0, 10, 20), rectangle(10, 0, 5, 8), rectangle(10, 8, 5, 12)]);
    const told = edges
        .filter(({ of, from, to }) => of === 0 && from.x === 10 && to.x === 10)
        .map(({ from, to, beyond }) => `${from.y}-${to.y} ${beyond}`);
    expect(told).toEqual(['0-8 1', '8-20 2']);
    expect(edges.filter(({ of, beyond }) => of === 0 && beyond === undefined)).toHaveLength(3);
});

it('has its outer side away from what it encloses, also around a hole', () => {
    const ring = rectangle(0, 0, 10, 10).rings[0]!;
    const hole = rectangle(4, 4, 2, 2).rings[0]!.toReversed();
    const turned = Float64Array.from({ length: hole.length }, (_, i) => hole[i % 2 === 0 ? i + 1 : i - 1]!);
    for (const { from, to } of edgesBetween([{ rings: [ring, turned] }])) {
        const [x, y] = [(from.x + to.x) / 2 + (from.outX + to.outX) / 4, (from.y + to.y) / 2 + (from.outY + to.outY) / 4];
        const isInside = x > 0 && x < 10 && y > 0 && y < 10;
        const isInHole = x > 4 && x < 6 && y > 4 && y < 6;
        expect(isInside && !isInHole, `${x} ${y}`).toBe(false);
    }
});
