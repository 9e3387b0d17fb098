import { renderToString } from 'preact-render-to-string';
import { showNumber } from '../../quantity/show';
import { page } from '../../review/html/page';
import { TableHead } from '../../review/html/table-head';
import { oneLine } from '../../review/one-line';
import type { Week, WeekCutting } from '../week';
import {
    buyWords,
    byDay,
    cuttingWords,
    headWords,
    jobWords,
    lateWords,
    loadWords,
    meanwhileWords,
    orderCells,
    sheetWords,
    timesOf,
} from '../week-words';

/** The book as one page to open, print or attach. */
export function weekHtml(week: Week): string {
    return page('The week', weekBody(week));
}

export function weekBody(week: Week): string {
    const late = week.orders.filter((order) => order.late !== undefined);
    return renderToString(
        <article>
            <h1>The week</h1>
            {headWords(week).map((words, index) => (
                <p key={String(index)}>{oneLine(words)}</p>
            ))}
            {late.length > 0 && (
                <section>
                    <h2>Late</h2>
                    <ul>
                        {late.map((order, index) => (
                            <li key={String(index)} class="worse">
                                {oneLine(lateWords(order))}
                            </li>
                        ))}
                    </ul>
                </section>
            )}
            <Orders week={week} />
            <h2>Load</h2>
            <ul>
                {loadWords(week).map((words) => (
                    <li key={words}>{oneLine(words)}</li>
                ))}
            </ul>
            <Days week={week} />
            {week.cuttings.length > 0 && <h2>Cut</h2>}
            {week.cuttings.map((cutting, index) => (
                <Sheets key={String(index)} cutting={cutting} />
            ))}
            <Shopping week={week} />
        </article>,
    );
}

function Orders({ week }: { week: Week }) {
    return (
        <section>
            <h2>Orders</h2>
            <div class="wide">
                <table>
                    <TableHead columns={['ready', 'pieces', 'recipe', 'for', 'due', 'hands']} />
                    <tbody>
                        {week.orders.map((order, index) => (
                            <tr key={String(index)}>
                                {orderCells(order).map((cell, at) => (
                                    <td key={String(at)} class={at === 0 && order.late !== undefined ? 'worse' : undefined}>
                                        {oneLine(cell)}
                                    </td>
                                ))}
                            </tr>
                        ))}
                    </tbody>
                </table>
            </div>
        </section>
    );
}

function Days({ week }: { week: Week }) {
    return (
        <section>
            <h2>Days</h2>
            {byDay(week).map(({ day, sittings }) => (
                <section key={day}>
                    <h3>{day}</h3>
                    {sittings.map((sitting, index) => (
                        <div key={String(index)}>
                            <p class="from">
                                {timesOf(sitting)}
                                {week.makers > 1 && `, hands ${sitting.hands}`}
                            </p>
                            <ul>
                                {sitting.jobs.map((job, at) => (
                                    <li key={String(at)}>{oneLine(jobWords(job))}</li>
                                ))}
                            </ul>
                            {sitting.meanwhile.length > 0 && <p class="note">Meanwhile: {oneLine(meanwhileWords(sitting))}</p>}
                        </div>
                    ))}
                </section>
            ))}
        </section>
    );
}

/** The sheets of one kind, drawn: those cut alike once. */
function Sheets({ cutting }: { cutting: WeekCutting }) {
    const { size, yielded } = cutting;
    const alike = new Map(yielded.layout.map((laid) => [JSON.stringify(laid), laid]));
    return (
        <section>
            <h3>{oneLine(cuttingWords(cutting))}</h3>
            <ul>
                {sheetWords(cutting).map((words) => (
                    <li key={words}>{oneLine(words)}</li>
                ))}
            </ul>
            {[...alike].map(([key, laid]) => (
                <svg
                    key={key}
                    class="plot"
                    role="img"
                    aria-label={`A sheet with ${laid.length} blanks on it`}
                    viewBox={`0 0 ${showNumber(size.width)} ${showNumber(size.height)}`}
                >
                    {laid.map(({ name, x, y, width, height }, index) => (
                        <g key={String(index)}>
                            <rect
                                x={showNumber(x)}
                                y={showNumber(y)}
                                width={showNumber(width)}
                                height={showNumber(height)}
                                fill="#e9dcc3"
                                stroke="#1d1a16"
                                stroke-width={showNumber(size.width / 400)}
                            />
                            <title>{oneLine(name)}</title>
                        </g>
                    ))}
                </svg>
            ))}
        </section>
    );
}

function Shopping({ week }: { week: Week }) {
    const lines = week.shopping.filter(({ buy }) => buy > 0);
    if (lines.length === 0) return null;
    return (
        <section>
            <h2>Buy</h2>
            <div class="wide">
                <table>
                    <TableHead columns={['item', 'amount', 'unit', 'on hand', 'costs', 'for']} />
                    <tbody>
                        {lines.map((line, index) => (
                            <tr key={String(index)}>
                                {buyWords(line, week.currency).map((cell, at) => (
                                    <td key={String(at)}>{oneLine(cell)}</td>
                                ))}
                            </tr>
                        ))}
                    </tbody>
                </table>
            </div>
        </section>
    );
}
