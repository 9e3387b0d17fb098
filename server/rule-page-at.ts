import type { ClientAbilities } from '../language/workspace/client';

/** Rules' pages as texts without a file, which an editor asks the server for. */
export const pageScheme = 'kerfbook-page';

/** The address of a rule's page that a client can open; undefined where there is none. */
export function rulePageAt(rule: string, { opensTexts }: ClientAbilities, manual: string | undefined): string | undefined {
    if (opensTexts) return `${pageScheme}:/${rule}.md`;
    return manual === undefined ? undefined : `${manual}/rules.md#${rule}`;
}
