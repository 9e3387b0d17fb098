import type { FindingView } from '../../../../shared/view/bench-view';

/** A finding with its number among all, from 0. */
export interface NumberedFinding extends FindingView {
    readonly index: number;
}

/** Findings of one rule, of one severity: the first, and those that are like it. */
export interface FindingGroup {
    readonly first: NumberedFinding;
    readonly alike: readonly NumberedFinding[];
}

const order = { error: 0, warning: 1, info: 2, hint: 3 } as const;

/** Worst first, and in the order of the text among equals. Of findings that are alike the first stands for all. */
export function groupFindings(findings: readonly FindingView[]): FindingGroup[] {
    const groups = new Map<string, NumberedFinding[]>();
    for (const [index, finding] of findings.entries()) {
        const key = `${finding.severity} ${finding.rule}`;
        const known = groups.get(key);
        if (known === undefined) groups.set(key, [{ ...finding, index }]);
        else known.push({ ...finding, index });
    }
    return [...groups.values()]
        .map(([first, ...alike]) => ({ first: first!, alike }))
        .sort((a, b) => order[a.first.severity] - order[b.first.severity] || a.first.index - b.first.index);
}

/** How many there are of each severity, the worst first; none of which there are none. */
export function countBySeverity(findings: readonly FindingView[]): readonly (readonly [FindingView['severity'], number])[] {
    const severities = Object.keys(order) as FindingView['severity'][];
    return severities
        .map((severity) => [severity, findings.filter((finding) => finding.severity === severity).length] as const)
        .filter(([, count]) => count > 0);
}
