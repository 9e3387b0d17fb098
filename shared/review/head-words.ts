import { changeWords } from './change-words';
import type { Consequence } from './consequences';
import { cut, type DigestLine, digestOf, staleWords } from './digest';
import { type HeadRow, isPriceAlone, type ReviewHead, type SharedGain, type StockRow } from './head';
import { oneLine } from './one-line';
import type { Review } from './review';

/** A head in words, a string for each line; names that the program quotes stand between back quotes. */
export interface HeadWords {
    readonly summary: string;
    /** Where a line for each recipe would be too many: the worst consequences of all, several on a line. */
    readonly digest: readonly DigestLine[];
    readonly stock: readonly string[];
    readonly rows: readonly RowWords[];
    /** What stands together on a line: recipes that only their stock reaches, and those in which nothing differs. */
    readonly together: readonly string[];
}

export interface RowWords {
    /** Index into the reviews. */
    readonly review: number;
    readonly name: string;
    /** A finding's severity, "change", "new" or "gone". */
    readonly mark: string;
    readonly text: string;
}

/** Longest consequence in a head, characters. */
const longest = 140;
/** More names than these are not listed in a line. */
const mostNames = 6;

export function headWords(head: ReviewHead, reviews: readonly Review[]): HeadWords {
    const { counts, gained, byStock, untouched } = head;
    const { digest, rows, stock } = digestOf(head, reviews);
    const findings = [...some(gained.error, 'error'), ...some(gained.warning, 'warning')];
    const all = [
        ...(counts.changed > 0 ? [`${counts.changed} changed`] : []),
        ...(counts.added > 0 ? [`${counts.added} new`] : []),
        ...(counts.removed > 0 ? [`${counts.removed} gone`] : []),
        ...(counts.untouched > 0 ? [`${counts.untouched} untouched`] : []),
    ];
    return {
        summary: `${all.length === 0 ? 'No recipe differs' : `Of the recipes ${all.join(', ')}`}${findings.length > 0 ? `; gained: ${findings.join(', ')}` : ''}`,
        digest,
        stock: [
            ...stock.map(stockWords),
            ...head.gains.slice(0, mostGains).map((gain) => `${gainWords(gain)}, in ${these(gain.recipes)}`),
        ],
        rows: rows.map((row) => rowWords(row, reviews[row.review]!)),
        together: [
            ...head.stock.filter(isPriceAlone).map(stockWords),
            ...(byStock.length > 0 ? [`Reached by the stock alone: ${names(byStock)}`] : []),
            ...(untouched.length > 0 ? [`Untouched: ${names(untouched)}`] : []),
        ],
    };
}

function stockWords({ thing: { thing, status, changes, findings = [] }, recipes, gains }: StockRow): string {
    const what = status === 'changed' ? changes.slice(0, 2).map(changeWords).join('; ') : status;
    const more = status === 'changed' && changes.length > 2 ? `; and ${changes.length - 2} more` : '';
    const follows = [...findings.map((each) => `${each.severity}: ${cut(each.message, longest)}`), ...gainsWords(gains)];
    const worst = follows
        .slice(0, 1)
        .map((first) => `: ${first}${follows.length > 1 ? ` (and ${follows.length - 1} more)` : ''}`);
    return `${thing}: ${what}${more}, in ${these(recipes)}${worst.join('')}`;
}

/** Coupons that are older than a change of the laser are counted. */
function gainsWords(gains: readonly SharedGain[]): string[] {
    const stale = staleWords(gains);
    if (stale === undefined) return gains.map(gainWords);
    return [`warning: ${stale}`, ...gains.filter(({ consequence }) => consequence.rule !== 'stale-coupon').map(gainWords)];
}

function gainWords({ consequence: { kind, text } }: SharedGain): string {
    return `${kind === 'change' ? '' : `${kind}: `}${cut(text, longest)}`;
}

/** More causes than these are not told one by one. */
const mostGains = 5;

function rowWords({ review, name, status, consequences }: HeadRow, of: Review): RowWords {
    const [first] = consequences;
    if (status === 'removed') return { review, name, mark: 'gone', text: of.before.title };
    if (status === 'added') {
        const worst = first !== undefined && first.kind !== 'change' ? `: ${consequenceWords(first, of)}` : '';
        return { review, name, mark: 'new', text: `${of.after.title}${worst}` };
    }
    if (first === undefined) return { review, name, mark: 'change', text: 'see below' };
    const others = consequences.length - 1;
    return { review, name, mark: first.kind, text: `${consequenceWords(first, of)}${others > 0 ? ` (and ${others} more)` : ''}` };
}

/** "Engrave deep, speed: 250 mm/s → 25 mm/s: The deep is …". */
export function consequenceWords({ step, cause, text }: Consequence, { steps }: Review): string {
    const lead = [...(step === undefined ? [] : [steps[step]!.title]), ...(cause === undefined ? [] : [cause])];
    return oneLine(`${lead.length > 0 ? `${lead.join(', ')}: ` : ''}${cut(text, longest)}`);
}

function some(count: number, word: string): string[] {
    return count === 0 ? [] : [`${count} ${word}${count === 1 ? '' : 's'}`];
}

function these(recipes: readonly string[]): string {
    return recipes.length <= 3 ? recipes.join(', ') : `${recipes.length} recipes`;
}

function names(all: readonly string[]): string {
    const shown = all.slice(0, mostNames).join(', ');
    return all.length > mostNames ? `${shown} and ${all.length - mostNames} more` : shown;
}
