import type { Change } from './change';
import { codeSpan, escapeMarkdown as md, spokenMarkdown, table } from './markdown';
import type { PinnedNote } from './pinned';
import type { AllowReview, FindingReview, Review, StepReview, ThingReview } from './review';
import { artLine, headline, isQuiet, marked } from './wording';

/** A pull request's comment holds 65 536 characters; what is beyond this is left out and said so. */
const longest = 60_000;

/** Reviews for a pull request: what differs, grouped by step, then every exception and every guess. */
export function reviewMarkdown(reviews: readonly Review[]): string {
    if (reviews.length === 0) return 'No recipe differs.\n';
    const lines = reviews.flatMap(oneReview);
    let length = 0;
    const fitting = lines.findIndex((line) => {
        length += line.length + 1;
        return length > longest;
    });
    return fitting < 0
        ? lines.join('\n')
        : [...lines.slice(0, fitting), '', '… there is more than a comment can hold.', ''].join('\n');
}

function oneReview(review: Review): string[] {
    const title = `### ${md(headline(review))}`;
    if (review.same) return [title, '', 'Nothing that matters differs.', ''];
    const { guesses, pinned, cautions } = review;
    return [
        title,
        '',
        ...changes(review.recipe),
        ...review.things.flatMap(thingLines),
        ...review.steps.flatMap((step, index) => stepLines(step, findingsOf(review, index))),
        ...review.art.flatMap((art) => [
            `**${marked(art.status, `art ${md(art.name)}`)}**: ${artLine(art)}`,
            '',
            ...changes(art.changes),
        ]),
        ...titled('For one piece', changes(review.times)),
        ...titled('For all the pieces', changes(review.run)),
        ...titled('To have on the bench', changes(review.supplies)),
        ...titled('What it costs', changes(review.cost)),
        ...review.runs.flatMap(thingLines),
        ...titled('Findings of the recipe as a whole', list(findingsOf(review, undefined).map(findingLine))),
        ...titled('Allowed', list(review.allows.map(allowLine))),
        ...titled(
            `Settings without a coupon: ${guesses.before.length} → ${guesses.after.length}`,
            guesses.before.length + guesses.after.length === 0 ? [] : list(guesses.after.map(md)),
        ),
        ...titled(`Pinned settings: ${pinned.before.length} → ${pinned.after.length}`, pinnedTable(pinned.after)),
        ...titled(
            'Cautions',
            list([
                ...cautions.gained.map((text) => `new: ${md(text)}`),
                ...cautions.lost.map((text) => `no longer: ${md(text)}`),
            ]),
        ),
    ];
}

function thingLines({ thing, status, changes: list }: ThingReview): string[] {
    return [`**${marked(status, md(thing))}**`, '', ...changes(list)];
}

function titled(title: string, body: readonly string[]): string[] {
    return body.length === 0 ? [] : [`**${title}**`, '', ...body];
}

function list(items: readonly string[]): string[] {
    return items.length === 0 ? [] : [...items.map((item) => `- ${item}`), ''];
}

function findingsOf(review: Review, step: number | undefined): FindingReview[] {
    return review.findings.filter((finding) => finding.step === step);
}

function stepLines(step: StepReview, findings: readonly FindingReview[]): string[] {
    if (isQuiet(step) && findings.length === 0) return [];
    const was = step.titleBefore === undefined ? '' : `, before: ${md(step.titleBefore)}`;
    const moved = step.moved ? `, moved from place ${step.before! + 1} to ${step.after! + 1}` : '';
    const rows = [...step.settings.map((change) => row(change, '')), ...step.follows.map((change) => row(change, '↳ '))];
    return [
        `**${marked(step.status, md(step.title))}**${was}${moved}`,
        '',
        ...table(head, rows),
        ...list(findings.map(findingLine)),
    ];
}

function pinnedTable(pinned: readonly PinnedNote[]): string[] {
    return table(
        ['', '', 'pinned', 'solving would give'],
        pinned.map(({ title, setting, written, solved }) => [md(title), setting, md(written), md(solved)]),
    );
}

const head = ['', 'before', 'after', 'difference'];

function changes(all: readonly Change[]): string[] {
    return table(
        head,
        all.map((change) => row(change, '')),
    );
}

function row({ label, before, after, by }: Change, lead: string): string[] {
    return [`${lead}${md(label)}`, md(before ?? ''), md(after ?? ''), md(by ?? '')];
}

function findingLine({ change, severity, message, rule, before }: FindingReview): string {
    const was = before === undefined ? '' : ` (before: ${before.severity}: ${spokenMarkdown(before.message)})`;
    return `**${change}** ${severity}: ${spokenMarkdown(message)} ${codeSpan(rule)}${was}`;
}

const allowWords = { added: 'new: ', removed: 'no longer: ', changed: 'reworded: ', same: '' } as const;

function allowLine({ status, rule, reason, reasonBefore, step }: AllowReview): string {
    const where = step === undefined ? '' : ` in ${md(step)}`;
    const was = reasonBefore === undefined ? '' : ` (before: ${md(reasonBefore)})`;
    return `${allowWords[status]}${codeSpan(rule)}${where}: ${reason === '' ? '*no reason given*' : md(reason)}${was}`;
}
