import { expect, test } from 'vitest';
import { rulePage } from '../../server/rule-pages';
import { ruleFamilies } from '../../shared/rules/all-rules';
import { rulesPage } from '../kit/rules-page';

test('extension/docs/rules.md says what the rules say (else: npm run rules)', async () => {
    await expect(rulesPage()).toMatchFileSnapshot('../../extension/docs/rules.md');
});

test('every link in it leads to a heading', () => {
    const text = rulesPage();
    const headings = new Set([...text.matchAll(/^#+ (.+)$/gm)].map(([, heading]) => heading!.toLowerCase().replaceAll(' ', '-')));
    const links = [...text.matchAll(/\]\(#([^)]+)\)/g)].map(([, anchor]) => anchor!);
    expect(links.length).toBeGreaterThan(100);
    expect(links.filter((anchor) => !headings.has(anchor))).toEqual([]);
});

test('every rule in it has a page behind Explain', () => {
    const ids = [...rulesPage().matchAll(/^### (.+)$/gm)].map(([, id]) => id!);
    expect(ids.filter((id) => rulePage(id) === undefined)).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
});

test('every rule of the trade that gives errors says when, and why nothing can come of it', () => {
    const pages = ruleFamilies.flatMap(({ rules }) => rules.map(({ page }) => page));
    const wrong = pages.filter(({ severities, error }) => severities.includes('error') !== (error !== undefined));
    expect(wrong.map(({ id }) => id)).toEqual([]);
});
