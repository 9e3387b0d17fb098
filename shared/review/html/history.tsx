import { renderToString } from 'preact-render-to-string';
import { powerWords } from '../../burn/drift-words';
import { showRatio } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import { heading, runCount } from '../history-text';
import { oneLine } from '../one-line';
import { metWords, plannedWords } from '../planned-words';
import { keptBeside, type PastRun, type RunHistory } from '../run-history';
import { DriftPlot } from './drift-plot';
import { type Links, LinksHere, ToPlace } from './links';
import { page } from './page';
import { TableHead } from './table-head';

/** Histories as one page to open, print or attach. */
export function historyHtml(histories: readonly RunHistory[]): string {
    const title = histories.map(({ recipe }) => recipe).join(', ');
    return page(`${title}, runs`, historyBody(histories));
}

/** @param places where the runs stand in the text, by their day, for a page that can lead there */
export function historyBody(
    histories: readonly RunHistory[],
    links?: Links,
    places: ReadonlyMap<string, Where> = new Map(),
): string {
    return renderToString(
        <LinksHere.Provider value={links}>
            {histories.map((history) => (
                <article key={history.recipe}>
                    <h1>{oneLine(history.title || history.recipe)}</h1>
                    <p class="from">
                        {runCount(history.runs.length + history.earlier)}
                        {history.earlier > 0 && `, the last ${history.runs.length}`}
                    </p>
                    {history.met.length + history.boards.length > 0 && <h2>Where the depths are going</h2>}
                    {history.boards.map((board) => (
                        <section key={`${board.sheet} ${board.laser}`}>
                            <h3>{oneLine(`${board.sheet} on ${board.laser}, power by all runs`)}</h3>
                            <p>{oneLine(powerWords(board))}.</p>
                            <DriftPlot
                                drift={board.drift}
                                label={oneLine(`${board.sheet} on ${board.laser}, power by all runs`)}
                            />
                        </section>
                    ))}
                    {history.met.map((met) => (
                        <section key={`${met.sheet} ${met.laser}`}>
                            <h3>{oneLine(`${met.sheet} on ${met.laser}, measured over planned`)}</h3>
                            <p>{oneLine(metWords(met))}.</p>
                        </section>
                    ))}
                    <h2>Runs</h2>
                    {history.runs.toReversed().map((run, index) => (
                        <Run key={String(index)} run={run} where={places.get(run.date)} />
                    ))}
                </article>
            ))}
        </LinksHere.Provider>,
    );
}

function Run({ run, where }: { run: PastRun; where: Where | undefined }) {
    const rows = run.steps.flatMap(({ step, sheet, rows: all }) => all.map((row) => ({ step, sheet, ...row })));
    return (
        <section>
            <h3>
                <ToPlace where={where}>{heading(run)}</ToPlace>
            </h3>
            <p class="note">{oneLine(plannedWords(run.planned))}</p>
            {rows.length > 0 && (
                <table class="changes">
                    <TableHead columns={['step', 'what', 'planned', 'measured or set', 'of plan']} />
                    <tbody>
                        {rows.map(({ step, sheet, what, planned, actual, ratio }, index) => (
                            <tr key={String(index)}>
                                <td>{oneLine(`${step}${sheet === undefined ? '' : ` of ${sheet}`}`)}</td>
                                <td>{what}</td>
                                <td>{planned ?? '–'}</td>
                                <td>{actual ?? '–'}</td>
                                <td>{ratio === undefined ? '' : showRatio(ratio)}</td>
                            </tr>
                        ))}
                    </tbody>
                </table>
            )}
            {[...run.notes, ...keptBeside(run)].map((note, index) => (
                <p key={String(index)}>{oneLine(note)}</p>
            ))}
        </section>
    );
}
