import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { area } from '../../shared/geometry/measure';
import type { LaserPlan } from '../../shared/plan/laser-plan';
import { Memo } from '../../shared/plan/memo';
import { setUps } from '../../shared/plan/set-ups';
import { setUpRs274 } from '../../shared/sheets/setup-rs274';
import { setUpSvg } from '../../shared/sheets/setup-svg';
import { stepFacts } from '../../shared/sheets/step-facts';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { PathTable } from '../../shared/view/path-table';
import { pngOf } from '../art/pictures';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

/** 80 x 40 pixels: the left half black, then a grey of 40 %, the lowest row white throughout. */
const half = picture(80, 40, (x, y) => (y === 39 ? 0 : x < 40 ? 1 : 0.4));

function picture(columns: number, rows: number, darkness: (x: number, y: number) => number): Uint8Array {
    const data = new Uint8Array(rows * (columns + 1));
    for (let y = 0; y < rows; y++) {
        for (let x = 0; x < columns; x++) data[y * (columns + 1) + 1 + x] = Math.round(255 * (1 - darkness(x, y)));
    }
    return pngOf({ columns, rows, depth: 8, colour: 0 }, data);
}

interface Wish {
    readonly art?: string;
    readonly place?: string;
    readonly rest?: string;
}

async function burn({ art = 'dither floyd-steinberg', place = 'art photo', rest = 'tone 80 % pitch 0.1 mm' }: Wish) {
    const plan = await planOf(
        `${shop}
recipe card "Card" {
  laser shed
  art photo "photo.png" { width 40 mm ${art} }
  blank tray { of walnut-12 size 200 x 150 mm grain along height }
  engrave face on tray { ${place} ${rest} air off }
}`,
        { 'photo.png': half },
    );
    return { plan, laser: plan.steps[0]!.laser! };
}

/** Burnt area to the left of an upright line, and to its right, mm2. */
function sides({ pictures }: LaserPlan, x: number): [number, number] {
    let [left, right] = [0, 0];
    for (const { grid } of pictures ?? []) {
        const { angle, pitch, columns, rows, dots, first } = grid;
        for (let at = 0; at < columns * rows; at++) {
            if (dots[at] === 0) continue;
            const u = grid.left + ((at % columns) + 0.5) * pitch;
            const v = first + Math.floor(at / columns) * pitch;
            if (u * Math.cos(angle) - v * Math.sin(angle) < x) left += pitch ** 2;
            else right += pitch ** 2;
        }
    }
    return [left, right];
}

const black = 20 * 19.5;
const grey = 0.4 * black;

describe('a picture in dots', () => {
    for (const how of ['floyd-steinberg', 'jarvis-judice-ninke', 'ordered']) {
        it(`burns as much as it is dark, by ${how}`, async () => {
            const { laser } = await burn({ art: `dither ${how}` });
            const [left, right] = sides(laser, 100);
            expect(left / black).toBeCloseTo(1, 2);
            expect(right / grey).toBeCloseTo(1, 1);
            expect(laser.area).toBeCloseTo(left + right, 6);
        });
    }
    it('is turned over by a mirror, turned by the placement, and moved by neither the grain nor the scan', async () => {
        const [left, right] = sides((await burn({ rest: 'tone 80 % pitch 0.1 mm mirror' })).laser, 100);
        expect([left / grey, right / black]).toEqual([expect.closeTo(1, 1), expect.closeTo(1, 2)]);
        const turned = sides((await burn({ place: 'art photo turned 180 deg' })).laser, 100);
        expect(turned[1] / black).toBeCloseTo(1, 2);
        for (const scan of ['across grain', 'along grain', 'at 30 deg']) {
            const [dark] = sides((await burn({ rest: `tone 80 % pitch 0.1 mm scan ${scan}` })).laser, 100);
            expect(dark / black, scan).toBeCloseTo(1, 1);
        }
    });
    it('follows its tone curve', async () => {
        const { laser } = await burn({ art: 'dither floyd-steinberg curve 0 % gives 0 %, 40 % gives 20 %, 100 % gives 50 %' });
        const [left, right] = sides(laser, 100);
        expect([left / (black / 2), right / (grey / 2)]).toEqual([expect.closeTo(1, 1), expect.closeTo(1, 1)]);
    });
    it('burns what is white when it is turned inside out, within its boundary', async () => {
        const { laser } = await burn({ place: 'art photo inverse within circle 60 mm' });
        expect(laser.area / (Math.PI * 900 - black - grey)).toBeCloseTo(1, 2);
    });
    it('is laid down again at every place of a grid', async () => {
        const { laser } = await burn({ place: 'art photo repeat 2 x 3 every 50 x 30 mm' });
        expect(laser.area / (6 * (black + grey))).toBeCloseTo(1, 2);
        const [left, right] = sides(laser, 100);
        expect(left).toBeCloseTo(right, -1);
    });
    it('burns beside drawings of the same step, and has no outline', async () => {
        const { laser } = await burn({ place: 'art photo circle 20 mm at 30, 30 mm', rest: 'tone 80 % pitch 0.1 mm outline 1' });
        expect(laser.area / (black + grey + Math.PI * 100)).toBeCloseTo(1, 2);
        expect(area(laser.whole!) / (Math.PI * 100)).toBeCloseTo(1, 2);
    });
    it('takes the longer the finer its lines are, and says what it burns', async () => {
        const { plan } = await burn({});
        const fine = await burn({ rest: 'tone 80 % pitch 0.05 mm' });
        expect(fine.plan.totals!.machine / plan.totals!.machine).toBeGreaterThan(1.7);
        expect(stepFacts(plan.steps[0]!)).toContainEqual({
            label: 'dots',
            value: 'photo: 400 x 195 of 0.1 mm, 70 % of them burnt, which as wide as the spot darken 97 % of it',
        });
    });
    it('is seen in its greys', async () => {
        const { plan } = await burn({});
        const view = makeBenchView(plan, [], { uri: '', textVersion: 1, recipes: [] }, new Memo());
        const { layers } = view.frames[1]!.pieces[0]!;
        const seen = plan.steps[0]!.laser!.pictures![0]!.tones;
        const areas = seen.map(area);
        expect(areas.slice(0, 9).every((each) => Math.abs(each / (2 * black) - 1) < 0.03)).toBe(true);
        expect(areas.slice(9).every((each) => Math.abs(each / black - 1) < 0.03)).toBe(true);
        const names = new PathTable();
        expect(layers.map(({ path }) => path)).toEqual(seen.map((region) => names.idOf(region)));
    });
    it('reaches the machine files dot by dot', async () => {
        const { plan, laser } = await burn({});
        const [setUp] = setUps(plan);
        const { text } = setUpSvg(plan, setUp!, new Memo());
        const png = decode(Buffer.from(/base64,([^"]+)"/.exec(text)![1]!, 'base64'));
        const bits = [...png.data].reduce((sum, byte) => sum + byte.toString(2).replaceAll('0', '').length, 0);
        expect(bits).toBe(laser.pictures![0]!.dots);
        const machine = setUpRs274(plan, setUp!, new Memo());
        if ('problem' in machine) throw new Error(machine.problem);
        expect(litLength(machine.text) * 0.1).toBeCloseTo(laser.area, 0);
    });
    it('without `dither` burns what is darker than the threshold, along its curve', async () => {
        expect((await burn({ art: '' })).laser.area).toBeCloseTo(black, 6);
        expect((await burn({ art: 'threshold 30 %' })).laser.area).toBeCloseTo(2 * black, 6);
        expect((await burn({ art: 'curve 0 % gives 0 %, 40 % gives 60 %, 100 % gives 100 %' })).laser.area).toBeCloseTo(
            2 * black,
            6,
        );
    });
});

/** Length of all moves of a machine file with the beam on, mm. */
function litLength(text: string): number {
    let [x, y, power, lit] = [0, 0, 0, 0];
    for (const line of text.split('\n')) {
        if (line.startsWith('(')) continue;
        const [fromX, fromY] = [x, y];
        x = Number(/X(-?[\d.]+)/.exec(line)?.[1] ?? x);
        y = Number(/Y(-?[\d.]+)/.exec(line)?.[1] ?? y);
        power = Number(/S([\d.]+)/.exec(line)?.[1] ?? power);
        if (power > 0) lit += Math.hypot(x - fromX, y - fromY);
    }
    return lit;
}
