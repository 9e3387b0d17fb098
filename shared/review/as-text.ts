import { changeWords } from './change-words';
import { headOf, inOrder, isOneSided } from './head';
import { consequenceWords, type HeadWords, headWords } from './head-words';
import { newRecipeLines } from './new-recipe';
import { oneLine } from './one-line';
import type { AllowReview, ArtReview, FindingReview, Review, StepReview, ThingReview } from './review';
import { withoutNoise } from './without-noise';
import { artLine, headline, isQuiet, signOf } from './wording';
import { worstOf } from './worst';

/**
 * Reviews for a terminal: first what is worst of each recipe, a line each, then what differs, worst recipe first.
 * @param untouched names of recipes that the change does not reach
 */
export function reviewsText(all: readonly Review[], untouched: readonly string[] = []): string {
    if (all.length === 1) return reviewText(all[0]!);
    const reviews = all.map(withoutNoise);
    const head = headOf(reviews, untouched);
    return [...headLines(headWords(head, reviews)), '', ...inOrder(head, reviews).map(reviewText)].join('\n');
}

function headLines({ summary, digest, stock, rows, together }: HeadWords): string[] {
    const width = Math.max(0, ...rows.map(({ name }) => Math.min(name.length, 24)));
    return [
        summary,
        ...digest.map(
            ({ mark, told }) => `  ${mark.padEnd(8)} ${told.map(({ name, text }) => `${oneLine(name)}: ${text}`).join('; ')}`,
        ),
        ...stock.map((line) => `  stock    ${oneLine(line)}`),
        ...rows.map(({ name, mark, text }) => `  ${mark.padEnd(8)} ${oneLine(name).padEnd(width)}  ${text}`),
        ...together.map((line) => `  ${oneLine(line)}`),
    ];
}

/** A review of one recipe: what is worst, then what differs, grouped by step. */
export function reviewText(whole: Review): string {
    const review = withoutNoise(whole);
    if (review.same) return `${headline(review)}\n  nothing that matters differs\n`;
    if (isOneSided(review)) return [headline(review), ...newRecipeLines(review).map((line) => `  ${line}`), ''].join('\n');
    const steps = review.steps.flatMap((step, index) => stepLines(step, findingsOf(review, index)));
    const { guesses, pinned, cautions } = review;
    return [
        headline(review),
        ...worstLines(review),
        ...review.recipe.map((change) => `  ${changeWords(change)}`),
        ...section('Blanks and stock', review.things.flatMap(thingLines)),
        ...section('Steps', steps),
        ...section('Art', review.art.flatMap(artLines)),
        ...section('For one piece', review.times.map(changeWords)),
        ...section('For all the pieces', review.run.map(changeWords)),
        ...section('To have on the bench', review.supplies.map(changeWords)),
        ...section('What it costs', review.cost.map(changeWords)),
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

function worstLines(review: Review): string[] {
    const { shown, more } = worstOf(review);
    return [
        ...shown.map((each) => `  ! ${each.kind}: ${consequenceWords(each, review)}`),
        ...(more > 0 ? [`  ! and ${more} more`] : []),
    ];
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
        ...step.settings.map((change) => `    ${changeWords(change)}`),
        ...(step.follows.length === 0 ? [] : ['    follows from it:']),
        ...step.follows.map((change) => `      ${changeWords(change)}`),
        ...findings.map((finding) => `    ${findingLine(finding)}`),
    ];
}

function stepNote({ titleBefore, moved, before, after }: StepReview): string {
    const was = titleBefore === undefined ? '' : `, before: ${oneLine(titleBefore)}`;
    return `${was}${moved ? ` (moved from place ${before! + 1} to ${after! + 1})` : ''}`;
}

function thingLines({ thing, status, changes, findings = [] }: ThingReview): string[] {
    return [
        `${signOf(status)} ${oneLine(thing)}`,
        ...changes.map((change) => `    ${changeWords(change)}`),
        ...findings.map(({ severity, message, rule }) => `    ${oneLine(`+ ${severity}: ${message} [${rule}]`)}`),
    ];
}

function artLines(art: ArtReview): string[] {
    return [
        `${signOf(art.status)} ${oneLine(art.name)}: ${artLine(art)}`,
        ...art.changes.map((change) => `    ${changeWords(change)}`),
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
