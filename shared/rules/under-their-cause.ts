import type { Plan } from '../plan/plan';
import type { Where } from '../quantity/where';
import { byGravity, type Finding } from '../recipe/finding';

/** By rule: those from whose findings its own follow, where both are about the same step or line of stock. */
const causes: Readonly<Record<string, readonly string[]>> = {
    'finish-before-sanding': ['oil-before-filling'],
    'fill-runs-over': ['pocket-in-pocket'],
    'laser-on-resin': ['glued-under'],
    'moisture-mismatch': ['wet-wood'],
    'pocket-in-pocket': ['depth-in-sum'],
    'sand-before-cure': ['peel-before-dry', 'too-cold'],
    'shallow-fill': ['floor-in-glue'],
    'unsealed-fill': ['wood-not-wiped', 'laser-on-wet'],
    'veneer-thin': ['veneer-proud'],
};

/** What one sanding takes off is one finding, however much of it there is. */
const sandedOff: ReadonlySet<string> = new Set(['fill-sanded-away', 'tone-sanded-away', 'veneer-thin']);

/**
 * What follows from another finding stands under it as related, and no longer beside it. Where it is the graver one, the cause takes its
 * gravity over. What `allow` keeps quiet is no cause: what follows from it then stands by itself.
 */
export function underTheirCause(findings: readonly Finding[], plan: Plan): readonly Finding[] {
    const ordered = findings.toSorted(byGravity);
    const causeOf = new Map<Finding, Finding>();
    for (const [at, finding] of ordered.entries()) {
        const among = causes[finding.rule] ?? [];
        const before = sandedOff.has(finding.rule) ? ordered.slice(0, at) : [];
        const cause =
            ordered.find((other) => among.includes(other.rule) && isOfSame(other, finding, plan)) ??
            before.find((other) => sandedOff.has(other.rule) && other.step === finding.step);
        if (cause !== undefined) causeOf.set(finding, cause);
    }
    if (causeOf.size === 0) return findings;
    const under = new Map<Finding, Finding[]>();
    for (const finding of ordered) {
        let root = finding;
        for (let next = causeOf.get(root); next !== undefined; next = causeOf.get(root)) root = next;
        if (root !== finding) under.set(root, [...(under.get(root) ?? []), finding]);
    }
    return findings
        .filter((finding) => !causeOf.has(finding))
        .map((finding) => {
            const others = under.get(finding);
            if (others === undefined) return finding;
            const [{ severity }] = [finding, ...others].toSorted(byGravity) as [Finding];
            const more = others.map(({ message, where, rule, severity }) => ({ message, where, rule, severity }));
            return { ...finding, severity, related: [...finding.related, ...more] };
        });
}

/** Whether two findings speak of one step or of one line of stock. */
function isOfSame(one: Finding, other: Finding, plan: Plan): boolean {
    const places = new Set(placesOf(one, plan));
    return placesOf(other, plan).some((place) => places.has(place));
}

function placesOf({ where, related, step }: Finding, { recipe }: Plan): string[] {
    const own = step === undefined ? [] : [`step ${step}`];
    return [...own, ...[where, ...related.map((each) => each.where)].map((place) => placeOf(place, recipe.steps))];
}

function placeOf({ uri, offset, length }: Where, steps: Plan['recipe']['steps']): string {
    const step = steps.find(
        ({ whole }) => whole.uri === uri && whole.offset <= offset && offset + length <= whole.offset + whole.length,
    );
    return step === undefined ? `${uri} ${offset}` : `step ${step.index}`;
}
