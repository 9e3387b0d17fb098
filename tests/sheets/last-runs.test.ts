import { describe, expect, it } from 'vitest';
import { momentOf } from '../../shared/quantity/calendar';
import type { Interval } from '../../shared/quantity/interval';
import { jobSheet } from '../../shared/sheets/job-sheet';
import { lastRuns } from '../../shared/sheets/last-runs';
import { planJson } from '../../shared/sheets/plan-json';
import { memoryWorkshop } from '../kit/memory-workshop';
import { planOf } from '../kit/plan-of';
import { art, shop } from '../kit/shop';

const dated = shop.replace('pitch 0.10 mm', 'pitch 0.10 mm\n  burnt 2026-01-10');
const recipe = (name: string): string => `recipe ${name} {
  issue 3 make 1 laser shed
  art flag "flag.svg"
  blank tray { of walnut-12 size 100 x 80 mm grain along width }
  engrave pocket on tray { art flag depth 0.5 mm air off }
}
`;
const run = (name: string, date: string, depth: string): string =>
    `run ${name} ${date} { issue 3 laser shed pocket of walnut-12 80 % at 387 mm/s x 2 pitch 0.10 mm ${depth} }\n`;

describe('the last runs on the job sheet', () => {
    const text = `${dated}${recipe('tray')}${recipe('bowl')}${[
        run('bowl', '2026-03-01', 'planned 0.50 mm +- 0.03 mm depth 0.48 mm'),
        run('tray', '2026-02-01', 'depth 0.51 mm'),
        run('tray', '2026-02-15', 'depth 0.50 mm'),
        run('tray', '2026-02-20', ''),
        run('tray', '2026-02-08', 'depth 0.49 mm'),
    ].join('')}`;

    it('are the three newest of any recipe on that board and laser, each with its day, plan and measure', async () => {
        const plan = await planOf(text);
        const [board, ...more] = lastRuns(plan);
        expect(more).toEqual([]);
        expect(board!.head).toMatch(
            /^walnut-12 on shed: 4 days of runs since 2026-01-10 \(the coupon was burnt\), \d+ % of .*; no drift$/,
        );
        expect(board!.runs).toEqual([
            expect.stringMatching(
                /^2026-02-08, pocket of tray: 0\.49 mm deep, by its settings 0\.5\d* mm ± 0\.\d+ mm \(\d+ %\)$/,
            ),
            expect.stringMatching(/^2026-02-15, pocket of tray: 0\.5 mm deep, by its settings /),
            '2026-03-01, pocket of bowl: 0.48 mm deep, planned 0.5 mm ± 0.03 mm (96 %)',
        ]);
        const sheet = jobSheet(plan, []).text;
        expect(sheet).toContain('<h2>Last runs</h2>');
        expect(sheet).toContain('2026-03-01, pocket of bowl: 0.48 mm deep');
        expect(planJson(plan, [])).toMatchObject({
            boards: [{ sheet: 'walnut-12', latest: [{}, {}, { recipe: 'bowl', depth: 0.48 }] }],
        });
    });
    it('count up to a stated start, and teach the less the longer ago they are', async () => {
        const { workshop, open } = await memoryWorkshop(art);
        const [made] = workshop.recipes(await open(text));
        const planned = async (start?: string) => {
            const asked = start === undefined ? {} : { start: momentOf(start)! };
            const told = await workshop.ask({ do: 'json', recipe: made!, textFindings: [], shapes: false, ...asked });
            const { steps, boards } = told as {
                steps: { laser: { depth: Interval } }[];
                boards: { latest: { date: string }[] }[];
            };
            return { width: steps[0]!.laser.depth.high - steps[0]!.laser.depth.low, newest: boards[0]!.latest.at(-1)!.date };
        };
        const now = await planned();
        expect(await planned('2026-03-01')).toEqual(now);
        expect((await planned('2026-02-10')).newest).toBe('2026-02-08');
        const later = await planned('2026-05-30');
        expect(later.newest).toBe('2026-03-01');
        expect(later.width).toBeGreaterThan(1.1 * now.width);
    });
    it('have no section where nothing was measured', async () => {
        expect(jobSheet(await planOf(`${dated}${recipe('tray')}${run('tray', '2026-02-20', '')}`), []).text).not.toContain(
            'Last runs',
        );
    });
});
