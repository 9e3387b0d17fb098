import { expect } from 'vitest';
import { rulePage } from '../../server/rule-pages';
import type { Finding } from '../../shared/recipe/finding';

/** Holds a finding to what its rule's page says of all of them, which is what users read in the list of rules. */
export function expectToKeepToItsPage({ rule, severity, firm, fixes, message, related }: Finding): void {
    for (const words of [message, ...related.map((each) => each.message), ...fixes.map(({ title }) => title)])
        expectToRead(words);
    const page = rulePage(rule);
    expect(page, `a page of ${rule}`).toBeDefined();
    const { severities, quickFix, firm: saidFirm } = page!;
    // A cause is as grave as what follows from it.
    const follows = related.filter((each) => each.rule !== undefined && each.severity === severity);
    if (follows.length === 0) expect(severities, `severities of ${rule}`).toContain(severity);
    if (quickFix !== 'sometimes') expect(fixes.length > 0, `${rule} has a quick fix`).toBe(quickFix === 'always');
    if (saidFirm !== 'sometimes') expect(firm === true, `${rule} is firm`).toBe(saidFirm === 'always');
}

/** Things counted in findings, of which there is never one alone in the plural. */
const counted = 'pieces|parts|places|bridges|layers|passes|rows|squares|marks|cups|steps|lines|strips|files|copies|notes|ways';

/** Whole words and numbers: nothing that a program says when it has no answer, no unit twice, no "1 pieces". */
function expectToRead(words: string): void {
    expect(words.trim()).not.toBe('');
    expect(words).not.toMatch(/NaN|undefined|null|Infinity|\[object|\$\{| {2}|\.\.$|,,|;;/);
    expect(words).not.toMatch(/\b(mm|cm|in|thou|%|ml|min|mm\/s|W) \1(?![\w.])/);
    expect(words).not.toMatch(new RegExp(`(?<![\\d.#])1 (${counted})\\b`));
}
