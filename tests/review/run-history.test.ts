import { describe, expect, it } from 'vitest';
import { historyJob } from '../../server/review/history-jobs';
import { allRecipes } from '../../server/review/table-jobs';
import type { Versions } from '../../server/review/versions';
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
    { last = 5, past }: { last?: number; past?: Record<number, string> } = {},
): Promise<RunHistory> {
    const { workshop, open } = await memoryWorkshop(art);
    const document = await open(text);
    const old = await memoryWorkshop(art);
    const versions: Versions = {
        open: async () => ({ problem: '' }),
        choices: async () => [],
        places: async () => [],
        past: async (_uri, name, revisions) => {
            const found = new Map();
            for (const revision of revisions) {
                const then = past?.[revision];
                if (then === undefined) continue;
                const made = old.workshop.recipe(await old.open(then), name)!;
                found.set(revision, { recipe: made, arts: await old.workshop.arts.of(made), commit: `c${revision}` });
            }
            return found;
        },
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
        expect(found.drifts[0]).toMatchObject({ leftOut: 0 });
        const without = await told(text);
        expect(without.runs[0]!.planned).toEqual({ by: 'the present plan', revision: 3 });
        expect(without.runs[0]!.steps[0]!.rows[0]!.ratio).toBeCloseTo(0.6, 6);
        // Held against a plan that it did not follow, it says nothing of drift.
        expect(without.drifts[0]).toMatchObject({ leftOut: 1, drift: { days: [], told: false } });
        expect(historyText([without])).toContain('held against the present plan (issue 3)');
        expect(historyText([without])).toContain('1 left out');
    });

    it('depths that get shallower month by month are told, with their range', async () => {
        const days = ['2026-02-01', '2026-03-01', '2026-04-01', '2026-05-01', '2026-06-01'];
        const text = dated + recipe() + days.map((day, index) => run(day, `${(0.5 - 0.02 * index).toFixed(2)} mm`)).join('');
        const history = await told(text, { last: 2 });
        expect(history.runs.map(({ date }) => date)).toEqual(['2026-05-01', '2026-06-01']);
        expect(history.earlier).toBe(3);
        const [drift] = history.drifts;
        expect(drift).toMatchObject({ laser: 'shed', sheet: 'walnut-12', drift: { told: true } });
        // 0.08 mm of 0.5 mm in 120 days: 4 % in 30.
        expect(drift!.drift.slope!.value).toBeCloseTo(-0.04, 3);
        expect(historyText([history])).toMatch(
            /walnut-12 on shed: 5 days, 92 % of plan in the mean .* shallower by 4(\.\d)? % a month/,
        );
    });

    it('a coupon against what was burnt since, by other recipes too; before its day nothing counts', async () => {
        const other = `${recipe().replace('recipe tray', 'recipe bowl')}run bowl 2026-03-15 { revision 3 laser shed pocket of walnut-12 80 % at 300 mm/s x 2 pitch 0.1 mm depth 0.6 mm }\n`;
        const text = `${dated}${recipe()}${run('2025-12-01', '0.2 mm')}${run('2026-02-01', '0.45 mm')}${other}`;
        const [coupon] = (await told(text)).coupons;
        expect(coupon).toMatchObject({ sheet: 'walnut-12', laser: 'shed', burnt: '2026-01-10', later: 2, since: [] });
        expect(coupon!.drift.days).toHaveLength(3);
        // The coupon's own squares lie about its own fit.
        expect(coupon!.drift.days[0]!.ratio).toBeCloseTo(1, 1);
        expect(coupon!.drift.days[2]!.ratio).toBeLessThan(0.95);
    });

    it('what is not known is said: no day of the coupon, nothing since, too few days, no depth, serviced since', async () => {
        const words = async (text: string): Promise<string> => historyText([await told(text)]);
        expect(await words(`${shop}${recipe()}${run('2026-02-01', '0.45 mm')}`)).toContain(
            'the coupon does not say when it was burnt',
        );
        expect(await words(`${dated}${recipe()}${run('2025-02-01', '0.45 mm')}`)).toContain(
            'nothing has been measured since 2026-01-10',
        );
        expect(await words(`${dated}${recipe()}${run('2026-02-01', '0.45 mm')}`)).toContain(
            'one day, 90 % of plan: too few to tell a drift',
        );
        const unmeasured = 'run tray 2026-02-01 { pocket 80 % at 400 mm/s }\n';
        expect((await told(`${dated}${recipe()}${unmeasured}`)).drifts).toEqual([]);
        const serviced = dated.replace('laser shed {', 'laser shed { serviced 2026-01-20 "new lens" ');
        expect(await words(`${serviced}${recipe()}${run('2026-02-01', '0.45 mm')}`)).toContain(
            'since then shed was serviced on 2026-01-20',
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
