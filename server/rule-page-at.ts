import type { ClientAbilities } from '../language/workspace/client';
import { pageScheme } from '../language/workspace/virtual-texts';

/** The address of a rule's page that a client can open; undefined where there is none. */
export function rulePageAt(rule: string, { opensTexts }: ClientAbilities, manual: string | undefined): string | undefined {
    if (opensTexts) return `${pageScheme}:/${rule}.md`;
    return manual === undefined ? undefined : `${manual}/rules.md#${rule}`;
}
