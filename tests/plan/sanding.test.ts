import { describe, expect, it } from 'vitest';
import { stepFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { fillRecipe } from '../kit/shop';

const sand = async (after: string) => (await planOf(fillRecipe({ after }))).steps.find(({ step }) => step.kind === 'sand')!;

describe('sanding in the plan', () => {
    it('shares what comes off among the grits', async () => {
        const { sand: plan } = await sand('sand disc { flush then 0.30 mm grits 80, 120, 180 }');
        // Three tenths of the former grain for each: 0.201 and 0.125 mm.
        expect(plan!.takes.map((take) => take.toFixed(4))).toEqual(['0.2022', '0.0603', '0.0375']);
    });
    it('says so on the sheets', async () => {
        const facts = stepFacts(await sand('sand disc { flush then 0.30 mm grits 80, 120, 180 }'));
        expect(facts.find((fact) => fact.label === 'of it each')?.value).toBe('0.2 mm, 0.06 mm, 0.037 mm');
    });
    it('in inches, where it is written in inches', async () => {
        const facts = stepFacts(await sand('sand disc { take 0.012 in grits 80, 120, 180 }'));
        const values = facts.filter(({ label }) => label === 'take' || label === 'of it each').map(({ value }) => value);
        expect(values.join()).toMatch(/^0\.012 in,0\.\d+ in, /);
    });
    it('says nothing where it is too little, or not known', async () => {
        expect((await sand('sand disc { flush then 0.05 mm grits 80, 120, 180 }')).sand!.takes).toEqual([]);
        expect((await sand('sand disc { flush grits 120, 180 }')).sand!.takes).toEqual([]);
    });
});

describe('paper on the shopping list', () => {
    it('tells the other scale’s number where it differs', async () => {
        const plan = await planOf(fillRecipe({ after: 'sand disc { flush then 0.30 mm grits 180, 240, 400 }' }));
        const notes = plan.supplies.filter((supply) => supply.kind === 'abrasive').map(({ item, note }) => `${item}: ${note}`);
        expect(notes).toEqual(['abrasive P180: ', 'abrasive P240: ', 'abrasive P400: about 320 on papers without a P']);
    });
});
