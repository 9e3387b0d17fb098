import type { Memo } from '../../shared/plan/memo';
import { sketchPlan } from '../../shared/plan/sketch';
import { comparePlans, type Version } from '../../shared/review/compare-plans';
import { isWorkedAlike } from '../../shared/review/worked-alike';
import { runMissesCheck } from '../../shared/rules/depth/run-misses-check';
import { runOutsideTold } from '../../shared/rules/depth/run-outside-told';
import { askOnce, examineBy } from '../../shared/rules/examine-by';
import type { ArtFile, ReviewAnswer, ReviewJob, VersionAsked } from './jobs';

/** The rules that ask which issue a run was of; all others say the same of two recipes that are worked out alike. */
const rulesOfIssues = [runMissesCheck, runOutsideTold];

/**
 * A brief review of two versions that are worked out alike and draw the same art: without drawing it, since all that follows from it
 * is the same. Undefined where something of it could differ, or where more than that is asked for.
 */
export function reviewInBrief(job: ReviewJob, files: ReadonlyMap<string, ArtFile>, memo: Memo): ReviewAnswer | undefined {
    const { before, brief = false, pictures } = job;
    if (!brief || pictures || !job.exists || !before.exists || !isWorkedAlike(before.recipe, job.recipe)) return undefined;
    const versionsThen = new Map(before.arts.map(({ uri, version }) => [uri, version]));
    const isSameArt = job.recipe.arts.every(({ uri }) => files.get(uri)?.version === versionsThen.get(uri));
    if (!isSameArt) return undefined;
    const { review, places } = comparePlans(sketched(before, memo), sketched(job, memo), memo);
    return { review, places };
}

function sketched({ recipe, from, exists, textFindings }: VersionAsked, memo: Memo): Version {
    const plan = sketchPlan(recipe, memo);
    return { from, exists, plan, findings: [...textFindings, ...examineBy(plan, rulesOfIssues, askOnce)] };
}
