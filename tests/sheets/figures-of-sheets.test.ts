/** What stands on the sheets, against the same worked out another way: pictures decoded, outlines read back, sums added up again. */
import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { gapSteps, touchColour } from '../../shared/bench/gap-scale';
import type { Pressed } from '../../shared/bench/virtual-press';
import type { Region } from '../../shared/geometry/region';
import { Memo } from '../../shared/plan/memo';
import type { InlayPlan, PlanCost } from '../../shared/plan/plan';
import { pressAll } from '../../shared/plan/plan-press';
import { setUps } from '../../shared/plan/set-ups';
import { costLines } from '../../shared/sheets/cost-lines';
import { dotsImage, dotsPng } from '../../shared/sheets/dots-image';
import { gapPicture } from '../../shared/sheets/gap-picture';
import { burntData, pathData } from '../../shared/sheets/path-data';
import { isTurnedWrong, pressFacts, pressVerdict } from '../../shared/sheets/press-facts';
import { reachOnMachine } from '../../shared/sheets/reach-line';
import { setUpSection } from '../../shared/sheets/set-up-section';
import type { DotGrid } from '../../shared/toolpath/dots';
import { planOf } from '../kit/plan-of';
import { inlayRecipe, shop } from '../kit/shop';

/** Figures that follow no rule; the same in each run. */
function figures(count: number, upTo: number): number[] {
    let state = 7;
    return Array.from({ length: count }, () => {
        state = (state * 48_271) % 2_147_483_647;
        return state % upTo;
    });
}

describe('dots as a picture', () => {
    const grid = (columns: number, rows: number, angle = 0): DotGrid => ({
        ...{ angle, pitch: 0.25, first: 3, left: -2, columns, rows, every: 1 },
        dots: Uint8Array.from(figures(columns * rows, 2)),
    });

    it.each([
        [1, 1],
        [7, 3],
        [8, 2],
        [13, 5],
    ])('have a pixel each, %i by %i, black where one burns', (columns, rows) => {
        const dots = grid(columns, rows);
        const { width, height, depth, data, palette } = decode(dotsPng(dots));
        expect([width, height, depth]).toEqual([columns, rows, 1]);
        expect(palette).toEqual([
            [0, 0, 0, 0],
            [0, 0, 0, 255],
        ]);
        const stride = data.length / rows;
        const bits = Array.from({ length: columns * rows }, (_, at) => {
            const [x, y] = [at % columns, Math.floor(at / columns)];
            return (data[y * stride + Math.floor(x / 8)]! >> (7 - (x % 8))) & 1;
        });
        expect(bits).toEqual([...dots.dots]);
    });

    it('lie with the middle of their first row on its line, turned with the scan', () => {
        const image = dotsImage(grid(13, 5, Math.PI / 6), 'sky');
        const of = (name: string) => Number(new RegExp(` ${name}="(-?[\\d.]+)"`).exec(image)![1]);
        expect([of('x'), of('width'), of('height')]).toEqual([-2, 13 * 0.25, 5 * 0.25]);
        expect(of('y') + of('height') / 5 / 2).toBeCloseTo(3, 9);
        expect(image).toContain('transform="rotate(30)"');
        expect(dotsImage(grid(13, 5), 'sky')).not.toContain('transform');
    });
});

describe('the gap map as a picture', () => {
    it('has the colour of the key in each cell: touching before the gap, clear where there is no veneer', () => {
        const gap = Float32Array.from([Number.NaN, Number.NaN, 0.02, 0.12, 0.3, 2]);
        const touching = Uint8Array.from([0, 1, 0, 1, 0, 0]);
        const pressed = { gap, touching, cells: { columns: 3, rows: 2 } } as unknown as Pressed;
        const { width, height, data } = decode(Buffer.from(gapPicture(pressed).split(',')[1]!, 'base64'));
        expect([width, height]).toEqual([3, 2]);
        const shown = Array.from({ length: 6 }, (_, at) => Buffer.from(data.slice(4 * at, 4 * at + 4)).toString('hex'));
        const colours = [undefined, touchColour, gapSteps[0]!.colour, touchColour, gapSteps[4]!.colour, gapSteps[5]!.colour];
        expect(shown).toEqual(colours.map((colour) => (colour === undefined ? '00000000' : `${colour.slice(1)}ff`)));
    });
});

describe('outlines as path data', () => {
    /** Each way, its corners as [x, y], and whether it is closed. */
    const waysIn = (data: string) =>
        [...data.matchAll(/M([^MZ]*)(Z?)/g)].map(([, corners, end]) => ({
            closed: end === 'Z',
            corners: corners!.split('L').map((corner) => corner.split(' ').map(Number)),
        }));

    it('are the corners of each ring to so many digits, and a ring of two corners is none', () => {
        const rings = [[0.12345, -0.0001, 9.9996, 0, 4, 7.77777], [1, 1, 2, 2], figures(16, 500).map((each) => each / 7)];
        const region = { rings: rings.map((ring) => Float64Array.from(ring)) } as unknown as Region;
        for (const digits of [1, 3]) {
            const ways = waysIn(pathData(region, digits));
            expect(ways.map(({ closed }) => closed)).toEqual([true, true]);
            for (const [index, ring] of [rings[0]!, rings[2]!].entries()) {
                const flat = ways[index]!.corners.flat();
                expect(flat).toHaveLength(ring.length);
                for (const [at, value] of flat.entries()) {
                    expect(Math.abs(value - ring[at]!)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-9);
                    expect(Number.isInteger(Math.round(value * 10 ** digits * 1e6) / 1e6)).toBe(true);
                }
            }
        }
        expect(pathData(region, 1)).not.toContain('-0 ');
    });

    it('are as long as what burns, in as many ways as the beam is switched on', () => {
        const points = Float64Array.from([0, 0, 10, 0, 10, 20, 0, 20, 0, 50]);
        const lengths = (lit?: number[]) =>
            waysIn(burntData([{ points, ...(lit === undefined ? {} : { lit: Uint8Array.from(lit) }) }])).map(({ corners }) =>
                corners.slice(1).reduce((sum, [x, y], at) => sum + Math.hypot(x! - corners[at]![0]!, y! - corners[at]![1]!), 0),
            );
        expect(lengths()).toEqual([70]);
        expect(lengths([1, 0, 1, 1])).toEqual([10, 40]);
        expect(lengths([0, 1, 1, 0])).toEqual([30]);
        expect(lengths([0, 0, 0, 0])).toEqual([]);
    });
});

describe('what a run costs', () => {
    const cost = {
        ...{ currency: 'EUR', shop: 'here', hourly: 30, laserHourly: 12, overheadShare: 0.1, markup: 0.25 },
        ...{ attended: 7200, runs: 1800, materials: 40, work: 60, machine: 6, overhead: 10.6, total: 116.6 },
        ...{ each: 29.15, price: 36.4375, unpriced: [] },
    } as unknown as PlanCost;
    const amounts = (make: number) => costLines(cost, make).map(({ amount, sum }) => [Number.parseFloat(amount), sum ?? false]);

    it('adds up: what goes in, then the sum, then the share of one piece and its price', () => {
        const [material, work, laser, overhead, total, each, price] = amounts(4);
        const parts = [material, work, laser, overhead].map((part) => part![0] as number);
        expect(parts.reduce((sum, part) => sum + part)).toBeCloseTo(total![0] as number, 9);
        expect([material, work, laser, overhead, each].every((part) => part![1] === false)).toBe(true);
        expect([total![1], price![1]]).toEqual([true, true]);
        expect(4 * (each![0] as number)).toBeCloseTo(total![0] as number, 9);
    });

    it('of a single piece has no share of its own, and says of how many the sum is', () => {
        expect(amounts(1)).toHaveLength(6);
        const labels = (make: number) => costLines(cost, make).map(({ label }) => label);
        expect(labels(4)[4]).toMatch(/\b4\b/);
        expect(labels(1).join()).not.toMatch(/\d/);
    });

    it('names four things without a price at most, and counts the others', () => {
        const noted = (count: number) =>
            costLines({ ...cost, unpriced: Array.from({ length: count }, (_, at) => `thing-${at + 1}`) }, 1)[0]!.note;
        expect(noted(0)).toBe('');
        for (const count of [1, 4, 5, 9]) {
            expect(noted(count).match(/thing-/g)).toHaveLength(Math.min(4, count));
            expect(/and (\d+) more/.exec(noted(count))?.[1]).toBe(count > 4 ? String(count - 4) : undefined);
        }
    });
});

describe('a press in figures', () => {
    const pressedOf = async (relief?: string) => {
        const plan = await planOf(inlayRecipe(relief === undefined ? {} : { relief }));
        const index = plan.steps.findIndex(({ inlay }) => inlay !== undefined);
        return { inlay: plan.steps[index]!.inlay!, pressed: pressAll(plan, new Memo()).get(index)! };
    };
    const factOf = (inlay: InlayPlan, pressed: Pressed, label: string) =>
        pressFacts(inlay, pressed).find((fact) => fact.label === label)?.value;
    const mm = (text: string | undefined) => Number.parseFloat(text!);

    it('stands proud by what of the veneer did not go in, never by less than nothing', async () => {
        const { inlay, pressed } = await pressedOf();
        for (const insertion of [0, 0.2, 0.45]) {
            const proud = mm(factOf(inlay, { ...pressed, insertion }, 'stands proud'));
            expect(Math.abs(proud - (inlay.veneer!.value - insertion))).toBeLessThanOrEqual(0.0051);
        }
        expect(mm(factOf(inlay, { ...pressed, insertion: 2 }, 'stands proud'))).toBe(0);
    });

    it('tells the widest gap that there is, whatever lies nowhere', async () => {
        const { inlay, pressed } = await pressedOf();
        const gap = Float32Array.from([Number.NaN, 0.1, 0.42, Number.NaN, 0.3]);
        expect(mm(factOf(inlay, { ...pressed, gap }, 'largest gap under it'))).toBeCloseTo(0.42, 9);
    });

    it('tells where it touches only while it is stopped, and the seam only once it lies', async () => {
        const { inlay, pressed } = await pressedOf();
        const stops = [{ x: 12, y: 34, reach: 0.1 }];
        const stopped = { ...pressed, bottoms: false, stops };
        expect(factOf(inlay, stopped, 'touches')).toContain('12 mm, 34 mm from the top left');
        expect(factOf(inlay, stopped, 'seam after sanding')).toBeUndefined();
        expect(factOf(inlay, { ...stopped, stops: [] }, 'touches')).toBeUndefined();
        const lies = { ...pressed, bottoms: true, stops, open: 0.2 * inlay.pocketLaser.perimeter };
        expect(factOf(inlay, lies, 'touches')).toBeUndefined();
        expect(mm(factOf(inlay, lies, 'seam after sanding'))).toBeCloseTo(0.2, 9);
        const none = { ...inlay, pocketLaser: { ...inlay.pocketLaser, perimeter: 0 } };
        expect(factOf(none, lies, 'seam after sanding')).toBeUndefined();
    });

    it('tells halves that are no mirror images from those that only jam', async () => {
        const right = await pressedOf();
        expect(isTurnedWrong(right.inlay)).toBe(false);
        const wrong = await pressedOf('art flag inverse within grown 6 mm depth through air off');
        expect(isTurnedWrong(wrong.inlay)).toBe(true);
        const stopped = (of: typeof right) => pressVerdict(of.inlay, { ...of.pressed, bottoms: false });
        expect(stopped(wrong).sentence).toContain('mirror image');
        expect(stopped(right).sentence).toContain('jams between the walls');
        // Mirrored twice is not mirrored.
        const { relief } = right.inlay;
        expect(isTurnedWrong({ ...right.inlay, pocket: { ...right.inlay.pocket, mirror: relief.mirror } })).toBe(true);
        const both = { ...right.inlay, collides: wrong.inlay.collides };
        expect(pressVerdict(both, { ...right.pressed, bottoms: false }).sentence).toContain('do not match');
        // A sliver of a clash, narrower than a tenth on either side, is no other shape.
        const sliver = { rings: [Float64Array.from([0, 0, 30, 0, 30, 0.15, 0, 0.15])] } as unknown as Region;
        const slim = pressVerdict({ ...right.inlay, collides: sliver }, { ...right.pressed, bottoms: false });
        expect(slim.sentence).toContain('jams between the walls');
        expect([right, wrong].map(({ inlay, pressed }) => pressVerdict(inlay, pressed).good)).toEqual([
            right.pressed.bottoms,
            false,
        ]);
    });
});

describe('the sketch of a set-up', () => {
    const plate = (zero: string, place = '') => `${shop.replace('beam co2', `beam co2 zero ${zero}`)}
recipe plate "Plate" { revision 1 laser shed
  blank b { of walnut-12 size 90 x 60 mm grain along width }
  engrave well on b { rectangle 40 x 30 mm ${place} depth 0.5 mm air off } }`;

    it.each([
        ['upper-left', '', 0, 0],
        ['lower-right', 'at 24, 20 mm', 90, 60],
        ['middle', 'at 68, 42 mm', 45, 30],
    ])('has X 0 Y 0, the way of the head and the room it needs as the machine file has them: %s', async (zero, place, x, y) => {
        const plan = await planOf(plate(zero, place));
        const html = setUpSection(plan);
        const [, cx, cy] = /<circle cx="(-?[\d.]+)" cy="(-?[\d.]+)"/.exec(html)!;
        expect([Number(cx), Number(cy)]).toEqual([x, y]);
        const dashed = /<rect x="(-?[\d.]+)" y="(-?[\d.]+)" width="([\d.]+)" height="([\d.]+)" fill="none"/.exec(html)!;
        const [minX, minY, width, height] = dashed.slice(1).map(Number) as [number, number, number, number];
        const [maxX, maxY] = [minX + width, minY + height];
        const told = /moves over X (\S+) to (\S+), Y (\S+) to (\S+) mm/.exec(html)!.slice(1).map(Number);
        for (const [index, edge] of [minX - x, maxX - x, y - maxY, y - minY].entries())
            expect(Math.abs(told[index]! - edge)).toBeLessThan(0.021);
        // Beyond the blank on each side, rounded up to a tenth; a side on which there is room is not told of.
        const sides: [string, number][] = [
            ['on the left', -minX],
            ['on the right', maxX - 90],
            ['at the far side', -minY],
            ['towards you', maxY - 60],
        ];
        for (const [side, needed] of sides) {
            const room = new RegExp(`([\\d.]+) mm ${side}`).exec(html)?.[1];
            if (needed <= 0.005) expect(room, side).toBeUndefined();
            else expect(Number(room) - needed, side).toBeGreaterThanOrEqual(-0.0051);
            if (needed > 0.005) expect(Number(room) - needed, side).toBeLessThan(0.11);
        }
        // Everything drawn lies inside the view.
        const view = /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(html)!.slice(1).map(Number) as [number, number, number, number];
        const [left, top, wide, high] = view;
        expect(left).toBeLessThan(Math.min(0, minX));
        expect(top).toBeLessThan(Math.min(0, minY));
        expect(left + wide).toBeGreaterThan(Math.max(90, maxX));
        expect(top + high).toBeGreaterThan(Math.max(60, maxY));
        expect(setUps(plan)).toHaveLength(1);
    });

    it('has the arrow along the grain, inside the blank', async () => {
        for (const along of ['width', 'height']) {
            const html = setUpSection(await planOf(plate('upper-left').replace('along width', `along ${along}`)));
            const arrow = [...html.matchAll(/<path fill="none"[^>]* d="M(\S+) (\S+)L([^ "ML]+) ([^ "ML]+)M/g)].at(-1)!;
            const [fromX, fromY, toX, toY] = arrow.slice(1).map(Number) as [number, number, number, number];
            const [dx, dy] = [toX - fromX, toY - fromY];
            expect([dx > 0, dy > 0]).toEqual(along === 'width' ? [true, false] : [false, true]);
            expect([Math.min(fromX, fromY) > 0, toX < 90, toY < 60]).toEqual([true, true, true]);
        }
    });
});

describe('what the head moves over', () => {
    it('is rounded outwards to a hundredth, so that it never says less', () => {
        for (const each of figures(40, 100_000)) {
            const low = each / 7919 - 6;
            const high = low + each / 4001;
            const origin = { x: 3.3333, y: 61.2345 };
            const told = reachOnMachine({ minX: low, maxX: high, minY: low, maxY: high }, origin)
                .match(/-?[\d.]+(?= |,)/g)!
                .map(Number);
            const edges = [low - origin.x, high - origin.x, origin.y - high, origin.y - low];
            for (const [index, edge] of edges.entries()) {
                const beyond = index % 2 === 0 ? edge - told[index]! : told[index]! - edge;
                expect(beyond).toBeGreaterThan(-2e-8);
                expect(beyond).toBeLessThan(0.01);
            }
        }
        // What is a hundredth but for the last bit of a float stays it: 0.29 × 100 is 28.999…, 1.1 × 100 is 110.000…01.
        const exact = { minX: 0.29, maxX: 1.1, minY: -1.1, maxY: -0.29 };
        expect(reachOnMachine(exact, { x: 0, y: 0 })).toBe('X 0.29 to 1.1, Y 0.29 to 1.1 mm');
    });
});
