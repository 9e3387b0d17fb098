import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { planSummary } from '../../shared/review/plan-summary';
import { jobSheet } from '../../shared/sheets/job-sheet';
import { planJson } from '../../shared/sheets/plan-json';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { makeChecklist } from '../../shared/view/make-checklist';
import { makeRunFigures } from '../../shared/view/run-figures';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe } from '../kit/shop';

const priced = 'shop s { currency EUR  hourly 30 }\n';

function expectUnknown(plan: Plan, why: string): void {
    expect(plan).toMatchObject({ unknown: why });
    expect(plan).not.toHaveProperty('totals');
    expect(plan).not.toHaveProperty('cost');
    const view = makeBenchView(plan, [], { uri: '', textVersion: 0, recipes: [] }, new Memo());
    expect(view).toMatchObject({ unknown: why, run: { sittings: [] } });
    expect(view).not.toHaveProperty('totals');
    expect(makeChecklist(plan)).toMatchObject({ unknown: why });
    expect(makeRunFigures(plan)).toMatchObject({ hint: 'time unknown', time: `time unknown: ${why}`, quantities: 'unknown' });
    expect(planSummary(plan, true)).toContain('= machine: unknown');
    expect(planSummary(plan, true)).toContain(`= ready after: unknown: ${why}`);
    expect(jobSheet(plan, []).text).toContain('times unknown');
    expect(JSON.parse(JSON.stringify(planJson(plan, [])))).toMatchObject({
        totals: null,
        schedule: null,
        cost: null,
        unknown: why,
    });
}

describe('totals of what cannot be worked out are unknown, not nothing', () => {
    it('where all is known they are there', async () => {
        for (const text of [fillRecipe(), inlayRecipe()]) {
            const plan = await planOf(priced + text);
            expect(plan.unknown).toBeUndefined();
            expect(plan.totals!.machine).toBeGreaterThan(0);
            expect(plan.cost).toBeDefined();
        }
    });
    it('a line that cannot be read', async () => {
        const broken = fillRecipe().replace('depth 1.2 mm', 'depth');
        expectUnknown(await planOf(priced + broken), 'a line of the recipe cannot be read');
    });
    it('only for the recipe in which it stands', async () => {
        const after = `${fillRecipe()}\nrecipe other "Other" { revision 1 make }\n`;
        expect((await planOf(after)).unknown).toBeUndefined();
    });
    it('a depth without its unit, and the fill of it: no settings, no zero millilitres', async () => {
        const plan = await planOf(priced + fillRecipe().replace('depth 1.2 mm', 'depth 1.2'));
        expectUnknown(plan, 'Engrave hollow: its settings are not known');
        expect(plan.steps.find(({ step }) => step.kind === 'fill')).toMatchObject({
            unplanned: 'the depth of hollow is not known',
        });
        expect(makeChecklist(plan).items[0]!.detail).toBe('settings not known');
    });
    it('a wait that says no time', async () => {
        const plan = await planOf(priced + fillRecipe().replace('wait 24 h', 'wait 24'));
        expectUnknown(plan, 'a line of the recipe cannot be read');
    });
});
