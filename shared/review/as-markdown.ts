import type { Change } from './change';
import { isGained } from './consequences';
import { headOf, inOrder, isOneSided, nameOf } from './head';
import { consequenceWords, headWords } from './head-words';
import { codeSpan, escapeMarkdown as md, spokenMarkdown, table } from './markdown';
import { newRecipeLines } from './new-recipe';
import type { PinnedNote } from './pinned';
import type { AllowReview, FindingReview, Review, StepReview, ThingReview } from './review';
import { withoutNoise } from './without-noise';
import { artLine, headline, isQuiet, marked } from './wording';
import { worstOf } from './worst';

/** A pull request's comment holds 65 536 characters; what is beyond this is left out and said so. */
const longest = 60_000;

/**
 * Reviews for a pull request: what is worst of each recipe, a line each with a link to it, then what differs, grouped by step, then every
 * exception and every guess. What is too long for a comment loses its tables first, from the last recipe on, then the recipes in which nothing
 * differs, then those without gained findings; one that gained findings is never left out.
 * @param untouched names of recipes that the change does not reach
 */
export function reviewMarkdown(all: readonly Review[], untouched: readonly string[] = []): string {
    if (all.length === 0) return 'No recipe differs.\n';
    const reviews = all.map(withoutNoise);
    if (reviews.length === 1) return cutToFit([], [], [blockOf(reviews[0]!)]);
    const head = headOf(reviews, untouched);
    const { summary, digest, stock, rows, together } = headWords(head, reviews);
    const link = (name: string): string => `[${md(name)}](#${encodeURIComponent(name)})`;
    const lines = [
        `**${md(summary)}**`,
        '',
        ...digest.map(({ mark, told }) => {
            const all = told.map(
                ({ name, review, text }) => `${review === undefined ? md(name) : link(name)}: ${spokenMarkdown(text)}`,
            );
            return `- **${mark}** ${all.join('; ')}`;
        }),
        ...stock.map((line) => `- stock: ${spokenMarkdown(line)}`),
        ...rows.map(({ name, mark, text }) => `- **${mark}** ${link(name)}: ${spokenMarkdown(text)}`),
        '',
    ];
    return cutToFit(
        lines,
        together.map((line) => `${md(line)}\n`),
        inOrder(head, reviews).map(blockOf),
    );
}

/** One recipe, longest form first. */
interface Block {
    readonly forms: readonly (readonly string[])[];
    readonly gained: boolean;
}

function blockOf(review: Review): Block {
    const title = [`### ${md(nameOf(review))}`, '', md(headline(review)), ''];
    if (review.same) return { forms: [[...title, 'Nothing that matters differs.', '']], gained: false };
    if (isOneSided(review))
        return {
            forms: [[...title, ...list(newRecipeLines(review).map(spokenMarkdown))]],
            gained: review.findings.some(isGained),
        };
    const { shown, more } = worstOf(review);
    const worst = list([
        ...shown.map((each) => `**${each.kind}** ${spokenMarkdown(consequenceWords(each, review))}`),
        ...(more > 0 ? [`and ${more} more`] : []),
    ]);
    const whole = [...title, ...worst, ...oneReview(review)];
    return {
        forms: [whole, whole.filter((line) => !line.startsWith('|')), [...title, ...worst]],
        gained: review.findings.some(isGained),
    };
}

interface Cut {
    /** Form of each block. */
    readonly forms: number[];
    readonly gone: Set<number>;
    quiet: readonly string[];
}

function cutToFit(head: readonly string[], quiet: readonly string[], blocks: readonly Block[]): string {
    const cut: Cut = { forms: blocks.map(() => 0), gone: new Set(), quiet };
    const lines = (): string[] => [
        ...head,
        ...cut.quiet,
        ...blocks.flatMap(({ forms }, index) =>
            cut.gone.has(index) ? [] : forms[Math.min(cut.forms[index]!, forms.length - 1)]!,
        ),
    ];
    let shown = lines();
    if (lengthOf(shown) <= longest) return shown.join('\n');
    for (const shorten of waysToCut(cut, blocks)) {
        shorten();
        shown = lines();
        if (lengthOf(shown) <= longest) break;
    }
    let length = 0;
    const fitting = shown.findIndex((line) => {
        length += line.length + 1;
        return length > longest;
    });
    return [...(fitting < 0 ? shown : shown.slice(0, fitting)), '', '… there is more than a comment can hold.', ''].join('\n');
}

function lengthOf(lines: readonly string[]): number {
    return lines.reduce((sum, line) => sum + line.length + 1, 0);
}

/** What is left out one after the other until it fits. */
function waysToCut(cut: Cut, blocks: readonly Block[]): (() => void)[] {
    const fromLast = [...blocks.keys()].reverse();
    const toForm = (form: number) => (index: number) => () => {
        cut.forms[index] = form;
    };
    return [
        ...fromLast.map(toForm(1)),
        () => {
            cut.quiet = [];
        },
        ...fromLast.filter((index) => !blocks[index]!.gained).map((index) => () => void cut.gone.add(index)),
        ...fromLast.map(toForm(2)),
    ];
}

function oneReview(review: Review): string[] {
    const { guesses, pinned, cautions } = review;
    return [
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

function thingLines({ thing, status, changes: all, findings = [] }: ThingReview): string[] {
    const noticed = findings.map(({ severity, message, rule }) => `gained ${severity}: ${spokenMarkdown(message)} (${rule})`);
    return [`**${marked(status, md(thing))}**`, '', ...changes(all), ...list(noticed)];
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
