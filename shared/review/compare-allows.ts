import type { Plan } from '../plan/plan';
import { groupBy } from './group-by';
import type { Match } from './match-steps';
import { type AllowNote, allowNotes } from './notes';
import type { AllowReview } from './review';

/** Every exception of both versions: the same one when it silences the same rule in the same step. */
export function compareAllows(before: Plan, after: Plan, matches: readonly Match[]): AllowReview[] {
    const old = byPlace(before, new Map(matches.map((match, row) => [match.before, row])));
    const now = byPlace(after, new Map(matches.map((match, row) => [match.after, row])));
    return [...new Set([...now.keys(), ...old.keys()])].flatMap((place) => {
        const was = old.get(place) ?? [];
        const is = now.get(place) ?? [];
        return Array.from({ length: Math.max(was.length, is.length) }, (_, nth) => told(was[nth], is[nth]));
    });
}

function byPlace(plan: Plan, rows: ReadonlyMap<number | undefined, number>): Map<string, AllowNote[]> {
    return groupBy(allowNotes(plan), ({ rule, step }) => `${rule} ${step === undefined ? '' : rows.get(step)}`);
}

function told(old: AllowNote | undefined, now: AllowNote | undefined): AllowReview {
    const { rule, reason, title } = (now ?? old)!;
    const reworded = old !== undefined && now !== undefined && old.reason !== now.reason;
    return {
        status: old === undefined ? 'added' : now === undefined ? 'removed' : reworded ? 'changed' : 'same',
        rule,
        reason,
        ...(reworded ? { reasonBefore: old.reason } : {}),
        ...(title === undefined ? {} : { step: title }),
    };
}
