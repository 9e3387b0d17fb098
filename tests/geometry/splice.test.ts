import { expect, test } from 'vitest';
import { intersect, subtract, union, unite } from '../../shared/geometry/boolean';
import { fromGrid } from '../../shared/geometry/grid';
import { area, contains, perimeter } from '../../shared/geometry/measure';
import { outlined } from '../../shared/geometry/outline-meetings';
import type { Region } from '../../shared/geometry/region';
import { rectangle } from '../../shared/geometry/shapes';
import { splice } from '../../shared/geometry/splice';
import { randomCase } from './grid-cases';
import { archipelago, island, seeded } from './shapes-at-random';
import { slabArea } from './slab-area';

function spliced(a: Region, b: Region) {
    const [one, other] = [outlined(a), outlined(b)];
    return one === undefined || other === undefined ? undefined : splice(one, other);
}

/** What rounding corners to the grid can move, mm2. */
const slack = (a: Region, b: Region): number => 1e-6 + 2e-4 * (perimeter(a) + perimeter(b));

test('shapes that share corners and edges are cut as an exact sum over slabs says', () => {
    const random = seeded(17);
    let asked = 0;
    let left = 0;
    for (let n = 0; n < 1000; n++) {
        const { subjects, clips } = randomCase(random);
        const a = unite(subjects.map(fromGrid), 'evenodd');
        const b = unite(clips.map(fromGrid), 'evenodd');
        if (a.rings.length === 0 || b.rings.length === 0) continue;
        const found = spliced(a, b);
        asked++;
        if (found === undefined) {
            left++;
            continue;
        }
        const sum = (operation: 'intersection' | 'difference' | 'union', one = a, other = b) =>
            slabArea(operation, 'nonzero', one.rings, other.rings);
        const most = slack(a, b);
        expect(Math.abs(area(found.inside) - sum('intersection'))).toBeLessThan(most);
        expect(Math.abs(area(found.outside) - sum('difference'))).toBeLessThan(most);
        expect(Math.abs(area(found.more) - sum('difference', b, a))).toBeLessThan(most);
        const all = found.all();
        if (all !== undefined) expect(Math.abs(area(all) - sum('union'))).toBeLessThan(most);
    }
    expect(asked).toBeGreaterThan(900);
    // Rings of this kind touch themselves too, and a sweep says.
    expect(left / asked).toBeLessThan(0.2);
}, 60_000);

test('places lie where they lay, for coasts that cross and follow each other', () => {
    const random = seeded(5);
    for (let n = 0; n < 20; n++) {
        const a: Region = { rings: [island(150, 150, 140, 3000, seeded(n))] };
        const b: Region = { rings: n % 2 === 0 ? [island(150, 150, 140, 3000, seeded(n + 50))] : archipelago(4000, n) };
        const found = spliced(a, b);
        const { inside, outside, more, all } = found!;
        const both = all()!;
        expect(area(inside)).toBeCloseTo(area(intersect(a, b)), 2);
        for (let k = 0; k < 300; k++) {
            const [x, y] = [300 * random(), 300 * random()];
            const [inA, inB] = [contains(a, x, y), contains(b, x, y)];
            expect(contains(inside, x, y)).toBe(inA && inB);
            expect(contains(outside, x, y)).toBe(inA && !inB);
            expect(contains(more, x, y)).toBe(inB && !inA);
            expect(contains(both, x, y)).toBe(inA || inB);
        }
    }
});

test('shapes beside each other share an edge and nothing else', () => {
    const found = spliced(rectangle(0, 0, 10, 10), rectangle(10, 2, 5, 5))!;
    const { inside, more, all } = found;
    expect(inside.rings).toEqual([]);
    expect(area(more)).toBe(25);
    expect(perimeter(all()!)).toBe(perimeter(union([rectangle(0, 0, 10, 10), rectangle(10, 2, 5, 5)])));
});

test('a shape taken from itself leaves nothing, and a hole of its own size fills', () => {
    const frame = subtract(rectangle(0, 0, 10, 10), rectangle(2, 2, 4, 4));
    expect(spliced(frame, frame)!.outside.rings).toEqual([]);
    expect(area(spliced(frame, rectangle(2, 2, 4, 4))!.all()!)).toBe(100);
    expect(spliced(frame, rectangle(2, 2, 4, 4))!.all()!.rings.length).toBe(1);
});

test('rings that nothing crosses are told apart by where they lie', () => {
    const pond = rectangle(2, 2, 4, 4);
    const { inside, outside } = spliced(rectangle(0, 0, 10, 10), pond)!;
    expect([area(inside), area(outside), outside.rings.length]).toEqual([16, 84, 2]);
    expect(area(spliced(pond, rectangle(0, 0, 10, 10))!.more)).toBe(84);
});
