import type { Change } from './change';
import { oneLine } from './one-line';
import type { AllowReview, ArtReview, FindingReview, Review, StepReview, ThingReview } from './review';
import { artLine, headline, isQuiet, signOf } from './wording';

/** A review for a terminal: only what differs, grouped by step. */
export function reviewText(review: Review): string {
    if (review.same) return `${headline(review)}\n  nothing that matters differs\n`;
    const steps = review.steps.flatMap((step, index) => stepLines(step, findingsOf(review, index)));
    const { guesses, pinned, cautions } = review;
    return [
        headline(review),
        ...review.recipe.map((change) => `  ${changeLine(change)}`),
        ...section('Blanks and stock', review.things.flatMap(thingLines)),
        ...section('Steps', steps),
        ...section('Art', review.art.flatMap(artLines)),
        ...section('For one piece', review.times.map(changeLine)),
        ...section('For all the pieces', review.run.map(changeLine)),
        ...section('To have on the bench', review.supplies.map(changeLine)),
        ...section('What it costs', review.cost.map(changeLine)),
        ...section('Runs', review.runs.flatMap(thingLines)),
        ...section('Findings of the recipe as a whole', findingsOf(review, undefined).map(findingLine)),
        ...section('Allowed', review.allows.map(allowLine)),
        ...section('Settings that no coupon stands behind', guessLines(guesses.before, guesses.after)),
        ...section(
            'Pinned settings, and what solving would give',
            pinned.after.map(({ title, setting, written, solved }) =>
                oneLine(`${title}: ${setting} ${written}, solved ${solved}`),
            ),
        ),
        ...section('Cautions', [
            ...cautions.gained.map((text) => `+ ${oneLine(text)}`),
            ...cautions.lost.map((text) => `- ${oneLine(text)}`),
        ]),
        '',
    ].join('\n');
}

function section(title: string, lines: readonly string[]): string[] {
    return lines.length === 0 ? [] : [`  ${title}`, ...lines.map((line) => `    ${line}`)];
}

function findingsOf(review: Review, step: number | undefined): FindingReview[] {
    return review.findings.filter((finding) => finding.step === step);
}

function stepLines(step: StepReview, findings: readonly FindingReview[]): string[] {
    if (isQuiet(step) && findings.length === 0) return [];
    return [
        `${signOf(step.status)} ${oneLine(step.title)}${stepNote(step)}`,
        ...step.settings.map((change) => `    ${changeLine(change)}`),
        ...(step.follows.length === 0 ? [] : ['    follows from it:']),
        ...step.follows.map((change) => `      ${changeLine(change)}`),
        ...findings.map((finding) => `    ${findingLine(finding)}`),
    ];
}

function stepNote({ titleBefore, moved, before, after }: StepReview): string {
    const was = titleBefore === undefined ? '' : `, before: ${oneLine(titleBefore)}`;
    return `${was}${moved ? ` (moved from place ${before! + 1} to ${after! + 1})` : ''}`;
}

function changeLine({ label, before, after, by }: Change): string {
    const difference = by === undefined ? '' : ` (${by})`;
    return oneLine(`${label}: ${before ?? 'nothing'} → ${after ?? 'nothing'}${difference}`);
}

function thingLines({ thing, status, changes }: ThingReview): string[] {
    return [`${signOf(status)} ${oneLine(thing)}`, ...changes.map((change) => `    ${changeLine(change)}`)];
}

function artLines(art: ArtReview): string[] {
    return [
        `${signOf(art.status)} ${oneLine(art.name)}: ${artLine(art)}`,
        ...art.changes.map((change) => `    ${changeLine(change)}`),
    ];
}

function findingLine({ change, severity, message, rule, before }: FindingReview): string {
    const sign = change === 'gained' ? '+' : change === 'lost' ? '-' : '~';
    const was = before === undefined ? '' : `, before: ${before.severity}: ${before.message}`;
    return oneLine(`${sign} ${severity}: ${message} [${rule}]${was}`);
}

function allowLine({ status, rule, reason, reasonBefore, step }: AllowReview): string {
    const where = step === undefined ? '' : ` in ${step}`;
    const was = reasonBefore === undefined ? '' : `, before: ${reasonBefore}`;
    return oneLine(`${signOf(status)} ${rule}${where}: ${reason === '' ? 'no reason given' : reason}${was}`);
}

function guessLines(before: readonly string[], after: readonly string[]): string[] {
    if (before.length + after.length === 0) return [];
    return [`${before.length} → ${after.length}${after.length === 0 ? '' : `: ${oneLine(after.join(', '))}`}`];
}
