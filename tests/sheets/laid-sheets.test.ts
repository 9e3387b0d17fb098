import { describe, expect, it } from 'vitest';
import { lain, type MachinePoint, plannedMarks } from '../../shared/plan/laid-piece';
import { Memo } from '../../shared/plan/memo';
import { originOn } from '../../shared/plan/origin';
import type { Plan } from '../../shared/plan/plan';
import { setUps } from '../../shared/plan/set-ups';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { laidSheets } from '../../shared/sheets/laid-sheets';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const recipe = (zero = '', flip = '') => `${zero === '' ? shop : shop.replace('beam co2', `beam co2 zero ${zero}`)}
recipe slab "Slab" { revision 1 laser shed
  blank slab { of ash-10 size 100 x 80 mm grain along width }
  cut pegs on slab { circle 6 mm at 90, 30 mm circle 6 mm at 10, 40 mm power 90 % speed 5 mm/s air on }
  ${flip === '' ? 'do "meet the marks" { found by marks of pegs }' : `${flip} { found by pins of pegs }`}
  engrave front on slab { rectangle 20 x 10 mm at 30, 25 mm depth 0.5 mm air off } }`;

/** Every place of a machine file, in order. */
function placesIn(text: string): MachinePoint[] {
    const places: MachinePoint[] = [];
    let [x, y] = [0, 0];
    for (const line of text.split('\n').filter((each) => /^(G[01]\b|[XY])/.test(each))) {
        const [toX, toY] = [/X(-?[\d.]+)/.exec(line), /Y(-?[\d.]+)/.exec(line)];
        if (toX === null && toY === null) continue;
        [x, y] = [Number(toX?.[1] ?? x), Number(toY?.[1] ?? y)];
        places.push({ x, y });
    }
    return places.slice(0, -1); // the way back to X 0 Y 0 is the machine's own
}

const textOf = (files: readonly { path: string; text: string }[], ending: string) =>
    files.find(({ path }) => path.endsWith(ending))!.text;
const second = (plan: Plan) => setUps(plan)[1]!;

describe('files for a piece that lies aside', () => {
    it.each(['', 'middle', 'upper-right'])('run through the same places, moved and turned (zero %s)', async (zero) => {
        const plan = await planOf(recipe(zero));
        const memo = new Memo();
        const planned = plannedMarks(plan, second(plan));
        const { x: ox, y: oy } = originOn({ width: 100, height: 80 }, plan.recipe.laser);
        expect(planned.map(({ x, y }) => [x.toFixed(3), y.toFixed(3)])).toEqual([
            [(10 - ox).toFixed(3), (oy - 40).toFixed(3)],
            [(90 - ox).toFixed(3), (oy - 30).toFixed(3)],
        ]);
        const lie = { turn: 0.021, x: 0.7, y: -1.3 };
        const measured = planned.map((each) => lain(each, lie));
        const { files, problems } = laidSheets(plan, { setUp: 2, measured, anyway: false }, memo);
        expect(problems).toEqual([]);
        const before = placesIn(
            textOf(
                buildSheets(plan, [], memo).files.filter(({ path }) => path.includes('setup-2')),
                '.ngc',
            ),
        );
        const after = placesIn(textOf(files, '.ngc'));
        expect(before.length).toBeGreaterThan(50);
        expect(after).toHaveLength(before.length);
        for (const [index, each] of before.entries()) {
            const at = lain(each, lie);
            expect(Math.hypot(at.x - after[index]!.x, at.y - after[index]!.y)).toBeLessThan(0.0005);
        }
        // The drawing by its matrix: a corner of what is engraved, from the blank's own figures to the machine's and back.
        const [a, b, c, d, e, f] = /matrix\(([^)]*)\)/.exec(textOf(files, '.svg'))![1]!.split(' ').map(Number) as [
            number,
            number,
            number,
            number,
            number,
            number,
        ];
        const corner = { x: 20, y: 20 };
        const moved = lain({ x: corner.x - ox, y: oy - corner.y }, lie);
        expect(a * corner.x + c * corner.y + e).toBeCloseTo(moved.x + ox, 3);
        expect(b * corner.x + d * corner.y + f).toBeCloseTo(oy - moved.y, 3);
        const record = JSON.parse(textOf(files, 'laid.json')) as { turn: number; residuals: number[]; marks: unknown[] };
        expect(record.turn).toBeCloseTo(0.021, 9);
        expect(Math.max(...record.residuals)).toBeLessThan(1e-6);
        expect(record.marks).toHaveLength(2);
    });

    it('after a flip has its marks where they lie then', async () => {
        const plan = await planOf(recipe('', 'flip slab'));
        expect(plannedMarks(plan, second(plan)).map(({ x, y }) => [x.toFixed(3), y.toFixed(3)])).toEqual([
            ['10.000', '50.000'],
            ['90.000', '40.000'],
        ]);
    });

    it('are refused beyond 1 mm, 1 % or 10 degrees, unless it is said twice; the reason is said', async () => {
        const plan = await planOf(recipe());
        const planned = plannedMarks(plan, second(plan));
        const lay = (measured: (MachinePoint | null)[], anyway = false, setUp = 2) =>
            laidSheets(plan, { setUp, measured, anyway }, new Memo());
        const stretched = (by: number) => [planned[0]!, { x: planned[1]!.x + by, y: planned[1]!.y }];
        expect(lay(stretched(0.7)).files).toHaveLength(3);
        expect(lay(stretched(0.9)).problems[0]).toContain('further apart than planned, more than 1 %');
        expect(lay(stretched(2.5)).problems[0]).toMatch(/^The marks are up to 1\.2\d? mm off/);
        expect(lay(stretched(2.5)).files).toEqual([]);
        expect(lay(stretched(2.5), true).files).toHaveLength(3);
        expect(lay([...planned].reverse()).problems[0]).toContain('two of them may have changed places');
        expect(lay([planned[0]!, null]).problems[0]).toContain('Two marks have to be measured');
        expect(lay([planned[0]!, planned[1]!, planned[1]!]).problems[0]).toMatch(
            /pegs has 2 marks, and 3 were given\. In order .* X 10 Y 40 mm, X 90 Y 50 mm/,
        );
        expect(lay(planned, false, 5).problems[0]).toContain('There is no set-up 5');
        expect(lay(planned, false, 1).problems[0]).toContain('found by marks of');
    });

    it('are asked for on the job sheet, with the places of the marks', async () => {
        const plan = await planOf(recipe());
        const sheet = textOf(buildSheets(plan, [], new Memo()).files, 'job-sheet.html');
        expect(sheet).toContain('The marks are planned at 1: X 10 Y 40 mm, 2: X 90 Y 50 mm.');
        expect(sheet).toContain('kerfbook lay --set-up 2 --marks');
    });
});
