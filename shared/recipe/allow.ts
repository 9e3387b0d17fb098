import type { Where } from '../quantity/where';

/** `allow RULE because "REASON"`: silences one rule in the step or recipe that holds it. */
export interface Allow {
    readonly rule: string;
    readonly reason: string;
    readonly where: Where;
}
