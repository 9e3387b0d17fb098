import { describe, expect, it } from 'vitest';
import { historyJob } from '../../server/review/history-jobs';
import { allRecipes } from '../../server/review/table-jobs';
import type { Versions } from '../../server/review/versions';
import { phrase } from '../../shared/recipe/phrase';
import { historyCsv, historyMarkdown, historyText } from '../../shared/review/history-text';
import { historyHtml } from '../../shared/review/html/history';
import type { RunHistory } from '../../shared/review/run-history';
import { memoryWorkshop } from '../kit/memory-workshop';
import { art, shop } from '../kit/shop';

const dated = shop.replace('pitch 0.10 mm', 'pitch 0.10 mm\n  burnt 2026-01-10');
const recipe = (depth = '0.5 mm', revision = 3): string => `recipe tray "Tray | one" {
  revision ${revision} make 1 laser shed
  art flag "flag.svg"
  blank tray { of walnut-12 size 100 x 80 mm grain along width }
  engrave pocket on tray { art flag depth ${depth} air off }
}
`;
const run = (date: string, depth: string, more = ''): string =>
    `run tray ${date} { revision 3 laser shed pocket of walnut-12 80 % at 400 mm/s x 3 pitch 0.10 mm depth ${depth} ${more} }\n`;

async function told(
    text: string,
    { last = 5, past, drawn = art }: { last?: number; past?: Record<number, string>; drawn?: Record<string, string> } = {},
): Promise<RunHistory> {
    const { workshop, open } = await memoryWorkshop(drawn);
    const document = await open(text);
    const old = await memoryWorkshop(art);
    const versions: Versions = {
        open: async () => ({ problem: phrase`` }),
        choices: async () => [],
        places: async () => ({ places: [], now: '' }),
        past: async (_uri, name, wanted) =>
            Promise.all(
                wanted.map(async ({ revision }) => {
                    const then = revision === undefined ? undefined : past?.[revision];
                    if (then === undefined) return undefined;
                    const made = old.workshop.recipe(await old.open(then), name)!;
                    return { recipe: made, commit: `c${revision}`, isOfDay: false };
                }),
            ),
    };
    const known = allRecipes(workshop);
    const placed = known.find((each) => each.document === document && each.recipe.name === 'tray')!;
    return workshop.ask(await historyJob('history', versions, placed, last));
}

describe('the history of runs', () => {
    it('planned against measured for each step, with the settings that were used', async () => {
        const { runs } = await told(`${dated}${recipe()}${run('2026-02-01', '0.45 mm', 'note "a bit shallow"')}`);
        expect(runs).toHaveLength(1);
        expect(runs[0]).toMatchObject({
            date: '2026-02-01',
            revision: 3,
            laser: 'shed',
            planned: { by: 'its issue', revision: 3 },
            notes: ['a bit shallow'],
            steps: [{ step: 'pocket', sheet: 'walnut-12' }],
        });
        const rows = runs[0]!.steps[0]!.rows;
        expect(rows[0]).toMatchObject({ what: 'depth', actual: '0.45 mm' });
        expect(rows[0]!.ratio).toBeCloseTo(0.9, 6);
        expect(rows.find(({ what }) => what === 'speed')).toMatchObject({
            planned: expect.stringMatching(/^\d+ mm\/s$/),
            actual: '400 mm/s',
        });
        expect(rows.find(({ what }) => what === 'passes')).toMatchObject({ actual: '3' });
    });

    it('an earlier revision is held against the plan of that time; where it is not found, that is said', async () => {
        const earlier = `run tray 2026-01-20 { revision 2 pocket of walnut-12 80 % at 400 mm/s x 2 depth 0.3 mm }\n`;
        const text = `${dated}${recipe()}${earlier}`;
        const found = await told(text, { past: { 2: `${dated}${recipe('0.3 mm', 2)}` } });
        expect(found.runs[0]!.planned).toEqual({ by: 'its issue', revision: 2, commit: 'c2' });
        expect(found.runs[0]!.steps[0]!.rows[0]!.ratio).toBeCloseTo(1, 6);
        expect(found.met[0]).toMatchObject({ leftOut: 0 });
        const without = await told(text);
        expect(without.runs[0]!.planned).toEqual({ by: 'the present plan', revision: 3 });
        expect(without.runs[0]!.steps[0]!.rows[0]!.ratio).toBeCloseTo(0.6, 6);
        // Held against a plan that it did not follow, it says nothing of how well plans are met.
        expect(without.met[0]).toMatchObject({ leftOut: 1, days: [] });
        expect(historyText([without])).toContain('held against the present plan (issue 3)');
        expect(historyText([without])).toContain('1 left out');
    });

    it('needs nothing drawn: what was planned is told although the art is gone', async () => {
        const text = `${dated}${recipe()}${run('2026-02-01', '0.45 mm')}`;
        expect(await told(text, { drawn: {} })).toEqual(await told(text));
    });

    it('a run is held against the plan of its day: what was measured since has not yet taught it', async () => {
        const speeds = async (text: string) => {
            const { runs } = await told(text);
            return runs.map(({ steps }) => steps[0]!.rows.find(({ what }) => what === 'speed')!.planned);
        };
        const weak = ['2026-02-01', '2026-02-08', '2026-02-15'].map((day) => run(day, '0.40 mm'));
        const [alone] = await speeds(dated + recipe() + weak[0]);
        const [first, second, third] = await speeds(dated + recipe() + weak.join(''));
        expect(first).toBe(alone);
        const number = (speed: string | undefined) => Number.parseFloat(speed!);
        expect(number(second)).toBeLessThan(number(first) * 0.97);
        expect(number(third)).toBeLessThan(number(second));
        // A coupon of a later day was not known then.
        const later = await told(`${dated.replace('burnt 2026-01-10', 'burnt 2026-03-01')}${recipe()}${weak[0]}`);
        expect(later.runs[0]!.planned.by).toBe('the present plan');
    });

    it('a run that keeps its plan is held against that, whatever stands there now', async () => {
        const kept = run('2026-02-01', '0.45 mm')
            .replace(' depth ', ' planned 0.60 mm +- 0.05 mm depth ')
            .replace('revision 3', 'revision 2');
        const history = await told(dated + recipe() + kept);
        expect(history.runs[0]!.planned.by).toBe('the run');
        expect(history.runs[0]!.steps[0]!.rows[0]).toMatchObject({ planned: '0.6 ± 0.05 mm', actual: '0.45 mm' });
        expect(history.runs[0]!.steps[0]!.rows[0]!.ratio).toBeCloseTo(0.75, 6);
        expect(history.met[0]).toMatchObject({ leftOut: 0 });
        expect(historyText([history])).toContain('held against the depths that it keeps');
    });

    it('power that gets less month by month is told, with its range and since when', async () => {
        const scatter = [1, -2, 1, 0, -1, 2, -1, 1, 0, -1, 1, 0];
        const days = scatter.map((each, week) => {
            const date = new Date(Date.UTC(2026, 1, 1 + 7 * week)).toISOString().slice(0, 10);
            return run(date, `${(0.9 - 0.02 * week + 0.01 * each).toFixed(2)} mm`);
        });
        const history = await told(dated + recipe() + days.join(''), { last: 2 });
        expect(history.runs.map(({ date }) => date)).toEqual(['2026-04-12', '2026-04-19']);
        expect(history.earlier).toBe(10);
        const [board] = history.boards;
        expect(board).toMatchObject({ laser: 'shed', sheet: 'walnut-12', start: { date: '2026-01-10', event: 'burnt' } });
        expect(board!.drift.days).toHaveLength(12);
        // The power that 0.22 mm less of 0.9 mm takes in 77 days, by the coupon: about a sixth of it.
        expect(board!.drift.told!.perMonth!.value).toBeGreaterThan(0.9);
        expect(board!.drift.told!.perMonth!.value).toBeLessThan(0.96);
        expect(board).not.toHaveProperty('latest');
        const line =
            /walnut-12 on shed: 12 days of runs since 2026-01-10 \(the coupon was burnt\): −\d(\.\d)? % \(−\d.* to −\d.* %\) of power a month since 2026-\d\d-\d\d, by \d+ days of runs/;
        expect(historyText([history])).toMatch(line);
    });

    it('of all recipes in sight; pockets that come out deeper than squares all along are no drift', async () => {
        const other = `${recipe().replace('recipe tray', 'recipe bowl')}run bowl 2026-03-15 { revision 3 laser shed pocket of walnut-12 80 % at 300 mm/s x 2 pitch 0.1 mm depth 0.6 mm }\n`;
        const text = `${dated}${recipe()}${run('2025-12-01', '0.2 mm')}${run('2026-02-01', '0.45 mm')}${other}`;
        const [board] = (await told(text)).boards;
        expect(board!.drift.days.map(({ date }) => date)).toEqual(['2026-02-01', '2026-03-15']);
        const deeper = [0.77, 0.78, 0.76, 0.77, 0.78, 0.77, 0.76, 0.77].map((depth, at) =>
            run(`2026-0${at + 2}-01`, `${depth} mm`),
        );
        const [steady] = (await told(dated + recipe() + deeper.join(''))).boards;
        expect(steady!.drift.level!.value).toBeGreaterThan(1.05);
        expect(steady!.drift.told).toBeUndefined();
    });

    it('what is not known is said: nothing since, too few days, no depth, serviced since', async () => {
        const words = async (text: string): Promise<string> => historyText([await told(text)]);
        expect(await words(`${dated}${recipe()}${run('2025-02-01', '0.45 mm')}`)).toContain(
            'nothing has been measured since 2026-01-10 (the coupon was burnt)',
        );
        expect(await words(`${shop}${recipe()}${run('2026-02-01', '0.45 mm')}`)).toMatch(
            /one day of runs, \d+ % of the coupon’s power: too few to tell a drift, 3 days are the least/,
        );
        const unmeasured = 'run tray 2026-02-01 { pocket 80 % at 400 mm/s }\n';
        expect((await told(`${dated}${recipe()}${unmeasured}`)).met).toEqual([]);
        const serviced = dated.replace('laser shed {', 'laser shed { serviced 2026-01-20 "new lens" ');
        expect(await words(`${serviced}${recipe()}${run('2026-01-15', '0.45 mm')}${run('2026-02-01', '0.45 mm')}`)).toContain(
            'one day of runs since 2026-01-20 (the laser was serviced)',
        );
    });

    it('as Markdown, CSV and a page with a picture of the drift', async () => {
        const text = `${dated}${recipe()}${run('2026-02-01', '0.45 mm', 'note "a | <b>"')}${run('2026-03-01', '0.44 mm')}`;
        const histories = [await told(text)];
        expect(historyMarkdown(histories)).toContain('### Tray \\| one: 2 runs');
        expect(historyMarkdown(histories)).toContain('> a \\| &lt;b&gt;');
        const [head, ...rows] = historyCsv(histories).trimEnd().split('\r\n');
        expect(head).toMatch(/^recipe,date,/);
        expect(rows.every((row) => row.split(',').length === head!.split(',').length)).toBe(true);
        const page = historyHtml(histories);
        expect(page).toContain('<svg class="plot"');
        expect(page).toContain('a | &lt;b>');
        expect(page).not.toMatch(/<script|\son\w+=|style=|NaN/);
    });
});
