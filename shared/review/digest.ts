import { changeWords } from './change-words';
import { type Consequence, weights } from './consequences';
import { type HeadRow, isPriceAlone, type ReviewHead, type StockRow } from './head';
import { oneLine } from './one-line';
import type { Review } from './review';

/** The worst consequences of many recipes, several on a line. */
export interface DigestLine {
    /** A finding's severity, or "change". */
    readonly mark: string;
    readonly told: readonly Told[];
}

/** One consequence of one cause, in few words. */
export interface Told {
    /** Of the recipe or the stock. */
    readonly name: string;
    /** Index into the reviews; absent for stock. */
    readonly review?: number;
    readonly text: string;
}

interface Candidate extends Told {
    readonly mark: string;
    readonly weight: number;
    /** The worst of what it is of. */
    readonly isFirst: boolean;
    readonly of: HeadRow | StockRow;
}

/** With the line of the counts, ten. */
const mostLines = 9;
/** Longest line, characters, without its mark. */
const longestLine = 158;
/** What is milder than another number of pieces stands in the recipes' own lines. */
const leastWeight = 38;
/** Longest part of a line, characters. */
const longestText = 100;
/** No sentence ends before this character. */
const shortest = 24;
/** A changed square or mix reaches depths and fills of all that rest on it. */
const stockWeight = 45;

/**
 * Up to nine lines of what is worst, and what has still a line of its own: nothing is told twice. Where all of it fits on nine lines
 * anyway, there is no digest.
 */
export function digestOf(
    { rows, stock }: Pick<ReviewHead, 'rows' | 'stock'>,
    reviews: readonly Review[],
): { readonly digest: readonly DigestLine[]; readonly rows: readonly HeadRow[]; readonly stock: readonly StockRow[] } {
    const told = stock.filter((row) => !isPriceAlone(row));
    if (told.length + rows.length <= mostLines) return { digest: [], rows, stock: told };
    const weighty = [...told.map(ofStock), ...rows.flatMap((row) => ofRow(row, reviews[row.review]!))]
        .filter(({ weight }) => weight >= leastWeight)
        .toSorted((a, b) => b.weight - a.weight);
    const firsts = weighty.filter(({ isFirst }) => isFirst);
    let many = firsts.length;
    while (packed(firsts.slice(0, many)).length > mostLines) many -= 1;
    // What else a recipe has goes where room is left.
    const all = firsts.slice(0, many);
    for (const each of weighty) if (!each.isFirst && packed([...all, each]).length <= mostLines) all.push(each);
    const lines = packed(all);
    const shown = new Set(lines.flatMap((line) => line.told.map(({ of }) => of)));
    return {
        digest: lines.map((line) => ({
            mark: line.mark,
            told: line.told.map(({ name, review, text }) => ({ name, text, ...(review === undefined ? {} : { review }) })),
        })),
        rows: rows.filter((row) => !shown.has(row)),
        stock: told.filter((row) => !shown.has(row)),
    };
}

/** Each in the first line of its mark that has room for it, the longest first; then lines and what stands on them by weight. */
function packed(candidates: readonly Candidate[]): { mark: string; told: Candidate[] }[] {
    const lines: { mark: string; told: Candidate[] }[] = [];
    for (const each of candidates.toSorted((a, b) => lengthOf([b]) - lengthOf([a]))) {
        const line = lines.find(({ mark, told: on }) => mark === each.mark && lengthOf([...on, each]) <= longestLine);
        if (line === undefined) lines.push({ mark: each.mark, told: [each] });
        else line.told.push(each);
    }
    for (const { told } of lines) told.sort((a, b) => b.weight - a.weight);
    return lines.sort((a, b) => b.told[0]!.weight - a.told[0]!.weight);
}

function lengthOf(told: readonly Told[]): number {
    return told.reduce((sum, { name, text }) => sum + name.length + text.length + 4, -2);
}

function ofStock(row: StockRow): Candidate {
    const { thing, recipes, gains } = row;
    const [own] = thing.findings ?? [];
    const gain = gains[0]?.consequence;
    const [first] = thing.changes;
    const kind = own?.severity ?? gain?.kind ?? 'change';
    const worst = own === undefined ? (staleWords(gains) ?? gain?.text) : own.message;
    const what = first === undefined || thing.status !== 'changed' ? thing.status : brief(changeWords(first));
    const follows = worst === undefined ? what : sentence(worst);
    return {
        name: `${thing.thing}, in ${recipes.length} recipes`,
        text: cut(follows),
        mark: markOf(kind),
        weight: Math.max(stockWeight, gain?.weight ?? 0, own === undefined ? 0 : weights[own.severity]),
        isFirst: true,
        of: row,
    };
}

/** "4 coupons were burnt before it": one cause, however many rest on it. */
export function staleWords(gains: StockRow['gains']): string | undefined {
    const stale = gains.filter(({ consequence }) => consequence.rule === 'stale-coupon');
    if (stale.length < 2 || gains[0]!.consequence.rule !== 'stale-coupon') return undefined;
    return `${stale.length} coupons were burnt before it`;
}

function markOf(kind: Consequence['kind']): string {
    return kind === 'error' || kind === 'warning' ? kind : 'change';
}

/** The worst of it, and what else was written in it that has consequences of its own. */
function ofRow(row: HeadRow, review: Review): Candidate[] {
    // What a new recipe is made of is no change of it.
    const told = row.consequences.filter(({ kind }) => row.status === 'changed' || kind === 'error' || kind === 'warning');
    const causes = new Set<string>();
    const steps = new Set<number | undefined>();
    return told.flatMap((each, index) => {
        const isOwn = index === 0 || (each.worked === true ? each.cause !== undefined : !steps.has(each.step));
        if (!isOwn || (each.cause !== undefined && causes.has(each.cause))) return [];
        if (each.cause !== undefined) causes.add(each.cause);
        steps.add(each.step);
        return [
            {
                name: row.name,
                review: row.review,
                text: textOf(each, review),
                mark: markOf(each.kind),
                isFirst: index === 0,
                weight: row.status === 'removed' ? 0 : each.weight,
                of: row,
            },
        ];
    });
}

function textOf(consequence: Consequence, { steps }: Review): string {
    const { step, cause, text, rule } = consequence;
    if (rule === undefined) return cut(brief(step === undefined ? text : `${steps[step]!.title}: ${text}`));
    const said = sentence(text);
    const now = cause?.split('→').at(-1)?.trim();
    // A figure that the sentence has itself is not said twice.
    return cut(cause === undefined || said.includes(now!) ? said : `${brief(cause)}: ${said}`);
}

/** The first sentence of a finding, or as much of it as says something. */
function sentence(text: string): string {
    const whole = brief(text);
    const end = /[:;.](?= |$)|, (?=before )/g;
    for (const { index } of whole.matchAll(end)) if (index >= shortest) return whole.slice(0, index);
    return whole;
}

/** Without what stands in brackets, and without tolerances. */
function brief(text: string): string {
    return oneLine(text)
        .replaceAll(/ \([^()]*\)/g, '')
        .replaceAll(/ ± [\d.]+ ?(?:mm|%|°)/g, '');
}

/** The beginning of a long text, up to a word's end; a name that was cut through lacks its second quote. */
export function cut(text: string, longest = longestText): string {
    if (text.length <= longest) return text;
    const whole = text.slice(0, longest).replace(/\s+\S*$/, '');
    return `${(whole.match(/`/g)?.length ?? 0) % 2 === 1 ? whole.slice(0, whole.lastIndexOf('`')) : whole}…`;
}
