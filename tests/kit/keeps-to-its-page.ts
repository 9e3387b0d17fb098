import { expect } from 'vitest';
import { rulePage } from '../../server/rule-pages';
import type { Finding } from '../../shared/recipe/finding';

/** Holds a finding to what its rule's page says of all of them, which is what users read in the list of rules. */
export function expectToKeepToItsPage({ rule, severity, firm, fixes }: Finding): void {
    const page = rulePage(rule);
    expect(page, `a page of ${rule}`).toBeDefined();
    const { severities, quickFix, firm: saidFirm } = page!;
    expect(severities, `severities of ${rule}`).toContain(severity);
    if (quickFix !== 'sometimes') expect(fixes.length > 0, `${rule} has a quick fix`).toBe(quickFix === 'always');
    if (saidFirm !== 'sometimes') expect(firm === true, `${rule} is firm`).toBe(saidFirm === 'always');
}
