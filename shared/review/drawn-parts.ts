import type { Memo } from '../plan/memo';
import type { Plan, StepPlan } from '../plan/plan';
import type { ArtDifference } from './art-difference';
import { artDifferences } from './art-difference';
import type { Figure } from './figure';
import { woodLeft } from './wood-left';

/** What of a comparison takes geometry. It is handed over, so that a comparison of two recipes that draw the same does without. */
export interface DrawnParts {
    artDifferences(before: Plan, after: Plan, memo: Memo): ArtDifference[];
    woodLeft(step: StepPlan, plan: Plan): Figure[];
}

export const drawnParts: DrawnParts = { artDifferences, woodLeft };
