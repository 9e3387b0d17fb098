import { describe, expect, it } from 'vitest';
import type { Plan } from '../../shared/plan/plan';
import { nowhere } from '../../shared/quantity/where';
import { allRules } from '../../shared/rules/all-rules';
import { examine } from '../../shared/rules/examine';
import { pageText } from '../../shared/rules/page';

describe('the rules together', () => {
    it('have ids of their own, in kebab-case', () => {
        const ids = allRules.map((rule) => rule.page.id);
        expect(new Set(ids).size).toBe(ids.length);
        for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    });
    it('explain themselves in whole sentences', () => {
        for (const { page } of allRules) {
            for (const text of [page.condition, page.why, page.mend, page.source])
                expect(text, page.id).toMatch(/^\S.{10,}[.!?…”"]\)?$/s);
            expect(pageText(page)).toContain(page.title);
        }
    });
    it('promise nobody that a thing is safe', () => {
        for (const { page } of allRules) expect(pageText(page), page.id).not.toMatch(/\bsafe(ly)?\b/i);
    });
    it('a rule that fails says so and leaves the others alone', () => {
        const failing = {
            page: { ...allRules[0]!.page, id: 'failing' },
            examine: () => {
                throw new Error('no luck');
            },
        };
        const plan = {
            recipe: { where: nowhere, allows: [], steps: [], arts: [], runs: [] },
            steps: [],
            blanks: [],
            frames: [],
            faces: [],
            arts: new Map(),
            cuttings: [],
            boards: [],
        } as unknown as Plan;
        expect(examine(plan, [failing, ...allRules]).map((finding) => finding.message)).toEqual([
            'The check failing could not be made: no luck',
        ]);
    });
});
