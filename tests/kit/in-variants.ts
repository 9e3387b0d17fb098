import { expect } from 'vitest';
import type { Finding } from '../../shared/recipe/finding';
import type { MemoryWorkshop } from './memory-workshop';

/** What these say comes from runs of a recipe, and a variant has runs of its own. */
const ofRuns = ['run-misses-check', 'run-outside-told', 'power-drifts'];

/** There is time for them only with the long tests. */
export const looksAtVariants = process.env.KERFBOOK_TESTS === 'long';

/** Asserts that rules say in variants that change nothing as often what they say in their bases; what stands outside of a recipe is said once. */
export async function expectInVariants(kit: MemoryWorkshop, text: string, rules: readonly string[]): Promise<void> {
    const { workshop } = kit;
    const bases = workshop.recipes(await kit.open(text));
    const variants = bases.map(({ name }) => `recipe bare-${name} based on ${name} { }`);
    const found = (await workshop.tradeFindings(await kit.open(`${text}\n${variants.join('\n')}`))) ?? [];
    const isOfBase = ({ where }: Finding): boolean =>
        bases.some(({ whole }) => where.offset >= whole.offset && where.offset < whole.offset + whole.length);
    for (const rule of new Set(rules.filter((each) => !ofRuns.includes(each)))) {
        const mine = found.filter((finding) => finding.rule === rule);
        const inherited = mine.filter(({ where }) => where.offset > text.length);
        expect(inherited.length, `${rule} in variants of\n${text}`).toBe(mine.filter(isOfBase).length);
    }
}
