import type { FindingView } from '../../../../shared/view/bench-view';

/**
 * Keys by which findings are known again in the next picture: their rule and how many of that rule
 * come before them. Not their places, which move with every letter typed above them.
 */
export function findingKeys(findings: readonly Pick<FindingView, 'rule'>[]): string[] {
    const seen = new Map<string, number>();
    return findings.map(({ rule }) => {
        const before = seen.get(rule) ?? 0;
        seen.set(rule, before + 1);
        return `${rule} ${before}`;
    });
}
