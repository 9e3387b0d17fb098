import { historyCsv, historyMarkdown, historyText } from '../../shared/review/history-text';
import { historyHtml } from '../../shared/review/html/history';
import { plainJson } from '../../shared/review/one-line';
import { historySchema, type RunHistory } from '../../shared/review/run-history';
import { LocalAsker } from '../engine/asker';
import { GitVersions } from '../git/git-versions';
import { historyJob, isToldBy } from '../review/history-jobs';
import { allRecipes } from '../review/table-jobs';
import type { HistoryDocument } from './formats/documents';
import { openFiles } from './open-files';
import { Progress, say } from './say';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { historyUsage } from './usage/usages';
import { UsageError } from './usage-error';

const formats: Readonly<Record<ChoiceOf<typeof historyUsage, 'format'>, (histories: readonly RunHistory[]) => string>> = {
    text: historyText,
    markdown: historyMarkdown,
    csv: historyCsv,
    json: (histories) => `${plainJson({ schema: historySchema, histories } satisfies HistoryDocument)}\n`,
    html: historyHtml,
};

/** `kerfbook history`: the last runs of each recipe against the plans that they followed, and where its depths are going. */
export async function history(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(historyUsage, args);
    const format = formats[values.format];
    if (!/^[1-9]\d{0,3}$/.test(values.last)) throw new UsageError('--last is how many runs to tell: 1 to 9999.');
    const { workshop, documents, files } = await openFiles(positionals);
    const versions = new GitVersions(files, new LocalAsker());
    const known = allRecipes(workshop);
    const wanted = known.filter((placed) =>
        values.recipe === undefined
            ? documents.some((document) => isToldBy(document, placed))
            : placed.recipe.name === values.recipe,
    );
    if (wanted.length === 0)
        throw new UsageError(
            values.recipe === undefined ? 'No run is written down in these files.' : `There is no recipe ${values.recipe}.`,
        );
    const histories: RunHistory[] = [];
    for (const placed of wanted) {
        const progress = new Progress(`Looking through the versions of ${placed.recipe.name}`);
        const tell = (part: number): void => progress.tell(part);
        histories.push(await workshop.ask(await historyJob('history', versions, placed, Number(values.last), tell)));
        progress.end();
    }
    say(format(histories));
    return 0;
}
