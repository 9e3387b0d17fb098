import { daysSince1970 } from '../../shared/quantity/calendar';
import { plainJson } from '../../shared/review/one-line';
import { seasonHtml } from '../../shared/week/html/season-page';
import type { Season } from '../../shared/week/season';
import { seasonCsv, seasonText } from '../../shared/week/season-words';
import { seasonJob } from '../week/season-jobs';
import { openFiles } from './open-files';
import { say } from './say';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { seasonUsage } from './usage/usages';
import { UsageError } from './usage-error';

const formats: Readonly<Record<ChoiceOf<typeof seasonUsage, 'format'>, (season: Season) => string>> = {
    text: seasonText,
    csv: seasonCsv,
    json: (season) => `${plainJson(season)}\n`,
    html: seasonHtml,
};

/** `kerfbook season`: what runs made, spoiled, took and cost, by recipe and in all. */
export async function season(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(seasonUsage, args);
    for (const name of ['from', 'to'] as const) {
        const day = values[name];
        if (day !== undefined && (day.length !== 10 || daysSince1970(day) === undefined))
            throw new UsageError(`--${name} is a day, such as 2026-11-26.`);
    }
    const { workshop, documents } = await openFiles(positionals);
    const job = await seasonJob('season', workshop, documents, values.from, values.to);
    if (job.runs.length === 0) throw new UsageError('No run is written down in these files for these days.');
    say(formats[values.format](await workshop.ask(job)));
    return 0;
}
