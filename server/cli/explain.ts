import { nearest } from '../../shared/recipe/nearest';
import { plainJson } from '../../shared/review/one-line';
import { type Page, pageText } from '../../shared/rules/page';
import { allPages, rulePage } from '../rule-pages';
import { say } from './say';
import { readArgs } from './usage/read-args';
import { explainUsage } from './usage/reference-usages';
import { UsageError } from './usage-error';

/** `kerfbook explain`: what a rule looks at, why it matters and how it is mended; without a name, a line for each rule. */
export async function explain(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(explainUsage, args);
    const pages = positionals.length === 0 ? allPages().toSorted((a, b) => (a.id < b.id ? -1 : 1)) : positionals.map(pageNamed);
    if (values.format === 'json') say(`${plainJson(pages)}\n`);
    else if (positionals.length === 0) say(pages.map(({ id, title }) => `${id}: ${title}\n`).join(''));
    else say(pages.map(pageText).join('\n'));
    return 0;
}

function pageNamed(id: string): Page {
    const page = rulePage(id);
    if (page !== undefined) return page;
    const near = nearest(
        id,
        allPages().map((each) => each.id),
    );
    throw new UsageError(
        `There is no rule ${id}. ${near === undefined ? 'kerfbook explain lists them.' : `Do you mean ${near}?`}`,
    );
}
