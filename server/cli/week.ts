import { ordersOf } from '../../language/lowering/orders';
import { momentOf } from '../../shared/quantity/calendar';
import { plainJson } from '../../shared/review/one-line';
import { weekHtml } from '../../shared/week/html/week-page';
import type { Week } from '../../shared/week/week';
import { weekCalendar } from '../../shared/week/week-calendar';
import { jobsCsv, ordersCsv, shoppingCsv } from '../../shared/week/week-csv';
import { weekJson } from '../../shared/week/week-json';
import { weekText } from '../../shared/week/week-text';
import { weekJob } from '../week/week-jobs';
import { openFiles } from './open-files';
import { say } from './say';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { weekUsage } from './usage/usages';
import { UsageError } from './usage-error';

const formats: Readonly<Record<ChoiceOf<typeof weekUsage, 'format'>, (week: Week) => string>> = {
    text: weekText,
    json: (week) => `${plainJson(weekJson(week))}\n`,
    html: weekHtml,
    icalendar: (week) => weekCalendar(week, Date.now() / 1000),
    'orders-csv': ordersCsv,
    'jobs-csv': jobsCsv,
    'shopping-csv': shoppingCsv,
};

const days = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
/** When a day begins that is given without a time. @commonPractice */
const morning = 8 * 3600;

/** `kerfbook week`: all that is to be made, on one bench. */
export async function week(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(weekUsage, args);
    const start = startOf(values.start);
    if (!/^[1-9]\d?$/.test(values.makers)) throw new UsageError('--makers is how many pairs of hands there are: 1 to 99.');
    const closed = closedOf(values.closed);
    const { workshop, documents } = await openFiles(positionals);
    const job = await weekJob('week', workshop, documents, { start, makers: Number(values.makers), closed });
    if (job.entries.length === 0)
        throw new UsageError(nothingToMake(documents.some((document) => ordersOf(document).length > 0)));
    say(formats[values.format](await workshop.ask(job)));
    return 0;
}

function nothingToMake(isOrdered: boolean): string {
    return isOrdered ? 'All that was ordered in these files is made or delivered.' : 'There is no recipe in these files.';
}

function startOf(written: string | undefined): number {
    if (written === undefined) throw new UsageError('Say when the work begins: --start 2026-11-26.');
    const moment = momentOf(written);
    if (moment === undefined)
        throw new UsageError('--start is a date, or a date and a time, such as 2026-11-26 or 2026-11-26T07:30.');
    return /\d[T ]\d/.test(written) ? moment : moment + morning;
}

function closedOf(written: string | undefined): number[] {
    if (written === undefined) return [];
    const closed = written.split(',').map((word) => days.indexOf(word.trim().toLowerCase()));
    if (closed.includes(-1)) throw new UsageError(`--closed is a list of ${days.join(', ')}, such as sat,sun.`);
    if (new Set(closed).size === days.length) throw new UsageError('--closed leaves no day to work on.');
    return [...new Set(closed)].sort();
}
