import type { Plan } from '../plan/plan';
import type { Where } from '../quantity/where';
import type { Finding } from '../recipe/finding';
import { groupBy } from './group-by';
import type { Match } from './match-steps';
import type { FindingReview } from './review';

export interface ComparedFindings {
    readonly findings: readonly FindingReview[];
    /** Where each of them stands in the later text; absent for those that are lost. */
    readonly places: readonly (Where | undefined)[];
    /** How many both versions have. */
    readonly kept: number;
}

/** Findings gained, lost and changed; a finding is the same one when its rule and its step are. */
export function compareFindings(
    before: { readonly plan: Plan; readonly findings: readonly Finding[] },
    after: { readonly plan: Plan; readonly findings: readonly Finding[] },
    matches: readonly Match[],
): ComparedFindings {
    const old = placed(before.findings, before.plan, new Map(matches.map((match, row) => [match.before, row])));
    const now = placed(after.findings, after.plan, new Map(matches.map((match, row) => [match.after, row])));
    const findings: FindingReview[] = [];
    const places: (Where | undefined)[] = [];
    let kept = 0;
    for (const place of new Set([...now.keys(), ...old.keys()])) {
        const was = [...(old.get(place) ?? [])];
        const fresh: Placed[] = [];
        for (const one of now.get(place) ?? []) {
            const same = was.findIndex(({ finding }) => says(finding) === says(one.finding));
            if (same < 0) fresh.push(one);
            else {
                was.splice(same, 1);
                kept += 1;
            }
        }
        for (const one of fresh) {
            findings.push(reportChange(was.shift(), one));
            places.push(one.finding.where);
        }
        for (const one of was) {
            findings.push(reportChange(one, undefined));
            places.push(undefined);
        }
    }
    return { findings, places, kept };
}

interface Placed {
    readonly finding: Finding;
    readonly row: number | undefined;
}

function placed(findings: readonly Finding[], plan: Plan, rows: ReadonlyMap<number | undefined, number>): Map<string, Placed[]> {
    const all = findings.map((finding) => {
        const step = finding.step ?? stepAt(finding, plan);
        return { finding, row: step === undefined ? undefined : rows.get(step) };
    });
    return groupBy(all, ({ finding, row }) => `${finding.rule} ${row ?? ''}`);
}

/** Findings of the text know their place but not their step. */
function stepAt({ where }: Finding, { recipe }: Plan): number | undefined {
    return recipe.steps.find(
        ({ whole }) => whole.uri === where.uri && whole.offset <= where.offset && where.offset < whole.offset + whole.length,
    )?.index;
}

function says({ severity, message }: Finding): string {
    return `${severity} ${message}`;
}

function reportChange(old: Placed | undefined, now: Placed | undefined): FindingReview {
    const { finding, row } = (now ?? old)!;
    return {
        change: old === undefined ? 'gained' : now === undefined ? 'lost' : 'changed',
        rule: finding.rule,
        severity: finding.severity,
        message: finding.message,
        ...(old !== undefined && now !== undefined
            ? { before: { severity: old.finding.severity, message: old.finding.message } }
            : {}),
        ...(row === undefined ? {} : { step: row }),
    };
}
