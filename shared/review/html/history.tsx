import { renderToString } from 'preact-render-to-string';
import type { Drift } from '../../burn/drift';
import { showRatio } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import { couponDriftWords, plannedWords, runDriftWords } from '../drift-words';
import { heading, runCount } from '../history-text';
import { oneLine } from '../one-line';
import type { PastRun, RunHistory } from '../run-history';
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
                    {history.drifts.length + history.coupons.length > 0 && <h2>Where the depths are going</h2>}
                    {history.drifts.map((drift) => (
                        <Trend
                            key={`${drift.sheet} ${drift.laser}`}
                            title={`${drift.sheet} on ${drift.laser}, measured over planned`}
                            words={runDriftWords(drift)}
                            drift={drift.drift}
                        />
                    ))}
                    {history.coupons.map((drift) => (
                        <Trend
                            key={`${drift.sheet} ${drift.laser}`}
                            title={`${drift.sheet} on ${drift.laser}, measured over what the coupon foretells`}
                            words={couponDriftWords(drift)}
                            drift={drift.drift}
                        />
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

function Trend({ title, words, drift }: { title: string; words: string; drift: Drift }) {
    return (
        <section>
            <h3>{oneLine(title)}</h3>
            <p>{oneLine(words)}.</p>
            <DriftPlot drift={drift} label={oneLine(title)} />
        </section>
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
            {run.notes.map((note, index) => (
                <p key={String(index)}>{oneLine(note)}</p>
            ))}
        </section>
    );
}
