import type { Plan } from '../plan/plan';
import type { Where } from '../quantity/where';
import { groupBy } from './group-by';
import type { Match } from './match-steps';
import { allowsOf } from './notes';
import type { AllowReview } from './review';

export interface ComparedAllows {
    readonly allows: readonly AllowReview[];
    /** Where each of them stands in the later text; absent for those that were taken out. */
    readonly places: readonly (Where | undefined)[];
}

/** Every exception of both versions: the same one when it silences the same rule in the same step. */
export function compareAllows(before: Plan, after: Plan, matches: readonly Match[]): ComparedAllows {
    const old = byPlace(before, new Map(matches.map((match, row) => [match.before, row])));
    const now = byPlace(after, new Map(matches.map((match, row) => [match.after, row])));
    const pairs = [...new Set([...now.keys(), ...old.keys()])].flatMap((place) => {
        const was = old.get(place) ?? [];
        const is = now.get(place) ?? [];
        return Array.from({ length: Math.max(was.length, is.length) }, (_, nth) => [was[nth], is[nth]] as const);
    });
    return { allows: pairs.map(([was, is]) => reportChange(was, is)), places: pairs.map(([, is]) => is?.allow.where) };
}

type WrittenAllow = ReturnType<typeof allowsOf>[number];

function byPlace(plan: Plan, rows: ReadonlyMap<number | undefined, number>): Map<string, WrittenAllow[]> {
    return groupBy(allowsOf(plan), ({ allow, step }) => `${allow.rule} ${step === undefined ? '' : rows.get(step)}`);
}

function reportChange(old: WrittenAllow | undefined, now: WrittenAllow | undefined): AllowReview {
    const {
        allow: { rule, reason },
        title,
    } = (now ?? old)!;
    const reworded = old !== undefined && now !== undefined && old.allow.reason !== now.allow.reason;
    return {
        status: old === undefined ? 'added' : now === undefined ? 'removed' : reworded ? 'changed' : 'same',
        rule,
        reason,
        ...(reworded ? { reasonBefore: old.allow.reason } : {}),
        ...(title === undefined ? {} : { step: title }),
    };
}
