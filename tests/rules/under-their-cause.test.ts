import { describe, expect, it } from 'vitest';
import { fails } from '../../server/cli/formats/check-report';
import { findingLines } from '../../server/cli/formats/text';
import type { Plan } from '../../shared/plan/plan';
import type { Finding, Severity } from '../../shared/recipe/finding';
import { underTheirCause } from '../../shared/rules/under-their-cause';
import { coupon, inlayRecipe } from '../kit/shop';
import { all, recipe, workshop } from './harness';

workshop();

const board = 'blank b { of ash-10 size 100 x 100 mm grain along width }';
const shallow = (more = '') =>
    inlayRecipe()
        .replace('recipe tray', `${coupon('maple-06', 'shed')} recipe tray`)
        .replace('engrave relief', `${more} sand bird { take 0.45 mm grits 120 } engrave relief`);

describe('one cause is one finding', () => {
    it('what follows stands under its cause, and no longer beside it', async () => {
        const found = await all(shallow());
        const cause = found.find(({ rule }) => rule === 'veneer-proud');
        expect(cause?.related.filter(({ rule }) => rule !== undefined)).toEqual([
            {
                rule: 'veneer-thin',
                severity: 'warning',
                message: expect.stringContaining('0.15 mm of veneer is left') as string,
                where: expect.anything() as object,
            },
        ]);
        expect(found.map(({ rule }) => rule)).not.toContain('veneer-thin');
    });
    it('stands by itself where the cause is allowed', async () => {
        const found = await all(shallow('allow veneer-proud because "it is meant to stand out"'));
        const rules = found.map(({ rule }) => rule);
        expect(rules).toContain('veneer-thin');
        expect(rules).not.toContain('veneer-proud');
    });
    it('the gravest comes first, whatever stands above it', async () => {
        const text = recipe(
            `${board}\n engrave one on b { rectangle 40 x 40 mm depth 2.4 mm air off }\n engrave two on b { rectangle 20 x 20 mm depth 12 mm air off }`,
        );
        const order = ['error', 'warning', 'info', 'hint'];
        const grave = (await all(text))
            .filter(({ rule }) => rule !== 'unused-name')
            .map(({ severity }) => order.indexOf(severity));
        expect(grave.length).toBeGreaterThan(1);
        expect(grave[0]).toBe(0);
        expect(grave).toEqual(grave.toSorted());
    });
});

describe('causes and what follows', () => {
    const where = (offset: number) => ({ uri: 'file:///a.kerf', offset, length: 4 });
    const said = (rule: string, severity: Severity, offset: number, step: number, more: Partial<Finding> = {}): Finding => ({
        rule,
        severity,
        message: `${rule} speaks.` as Finding['message'],
        where: where(offset),
        step,
        related: [],
        fixes: [],
        ...more,
    });
    const plan = { recipe: { steps: [] } } as unknown as Plan;
    const proud = said('veneer-proud', 'warning', 10, 0);
    const thin = (step: number) =>
        said('veneer-thin', 'error', 50, 4, { related: [{ message: 'Its pocket.' as Finding['message'], where: where(step) }] });

    it('a cause takes over how grave it becomes, and fails a check by what follows', () => {
        const [only, ...others] = underTheirCause([thin(10), proud], plan);
        expect(others).toEqual([]);
        expect([only?.rule, only?.severity]).toEqual(['veneer-proud', 'error']);
        expect(fails(only!, { on: new Set(['veneer-thin']), allowed: new Set() })).toBe(true);
        expect(fails(only!, { on: new Set(['tone-sanded-away']), allowed: new Set() })).toBe(false);
    });
    it('only what is about the same step follows', () => {
        const found = [proud, thin(30)];
        expect(underTheirCause(found, plan)).toEqual(found);
    });
    it('what one sanding takes off is one finding, the gravest', () => {
        const found = underTheirCause([said('veneer-thin', 'warning', 50, 4), said('fill-sanded-away', 'error', 50, 4)], plan);
        expect(found.map(({ rule, related }) => [rule, related.map((each) => each.rule)])).toEqual([
            ['fill-sanded-away', ['veneer-thin']],
        ]);
    });
    it('what follows from what follows stands under the first cause', () => {
        const sum = said('depth-in-sum', 'warning', 10, 0);
        const runs = said('fill-runs-over', 'warning', 50, 4, { related: thin(10).related });
        const [only, ...others] = underTheirCause([runs, said('pocket-in-pocket', 'warning', 10, 0), sum], plan);
        expect(others).toEqual([]);
        expect([only?.rule, only?.related.map(({ rule }) => rule)]).toEqual([
            'depth-in-sum',
            ['pocket-in-pocket', 'fill-runs-over'],
        ]);
    });
    it('is read below its cause on the command line', () => {
        const place = { file: 'a.kerf', line: 3, column: 5, endLine: 3, endColumn: 9 };
        const related = [{ ...place, line: 7, message: 'Nothing is left.' as Finding['message'], rule: 'veneer-thin' }];
        expect(findingLines({ ...place, finding: proud, related })).toEqual([
            'a.kerf:3:5: warning: veneer-proud speaks. [veneer-proud]',
            '    it follows: a.kerf:7:5: Nothing is left. [veneer-thin]',
        ]);
    });
});
