import type { Change } from './change';
import { consequencesOf } from './consequences';
import { consequenceWords } from './head-words';
import { oneLine } from './one-line';
import type { Review } from './review';

/** What is told of a recipe that is new, or gone: what it is made of, its steps, its time and money, its worst findings. At most four lines. */
export function newRecipeLines(review: Review): string[] {
    const { recipe, things, steps, run, cost } = review;
    const values = (list: readonly Change[], ...labels: string[]): string[] =>
        labels.flatMap((label) => {
            const found = list.find((change) => change.label === label);
            const value = found?.after ?? found?.before;
            return value === undefined ? [] : [`${label} ${value}`];
        });
    const blanks = things
        .filter(({ thing }) => thing.startsWith('blank '))
        .map(({ thing, changes }) => {
            const parts = ['sheet', 'size'].flatMap((label) => {
                const change = changes.find((each) => each.label === label);
                return change?.after ?? change?.before ?? [];
            });
            return `${thing}: ${parts.join(', ')}`;
        });
    const findings =
        review.before.recipe === undefined
            ? consequencesOf(review).filter(({ kind }) => kind === 'error' || kind === 'warning')
            : [];
    return [
        [...values(recipe, 'make', 'laser'), ...blanks].join('; '),
        steps.map(({ title }) => title).join(', '),
        [...values(run, 'ready after', 'attended'), ...values(cost, 'cost of one', 'price of one')].join(', '),
        findings
            .slice(0, 3)
            .map((each) => `${each.kind}: ${consequenceWords(each, review)}`)
            .join('; ') + (findings.length > 3 ? `; and ${findings.length - 3} more` : ''),
    ]
        .filter((line) => line !== '')
        .map((line) => oneLine(line, 600));
}
