import { renderToString } from 'preact-render-to-string';
import { page } from '../../review/html/page';
import { Spoken } from '../../review/html/spoken';
import { TableHead } from '../../review/html/table-head';
import { oneLine } from '../../review/one-line';
import type { Season } from '../season';
import { makerWords, seasonColumns, seasonHead, seasonRows } from '../season-words';

/** The season as one page to open, print or attach. */
export function seasonHtml(season: Season): string {
    return page('The season', seasonBody(season));
}

export function seasonBody(season: Season): string {
    const makers = makerWords(season);
    return renderToString(
        <article>
            <h1>The season</h1>
            {seasonHead(season).map((words) => (
                <p key={words}>
                    <Spoken text={words} />
                </p>
            ))}
            <div class="wide">
                <table>
                    <TableHead columns={seasonColumns} />
                    <tbody>
                        {seasonRows(season).map((cells, index) => (
                            <tr key={String(index)}>
                                {cells.map((cell, at) => (
                                    <td key={String(at)}>{oneLine(cell)}</td>
                                ))}
                            </tr>
                        ))}
                    </tbody>
                </table>
            </div>
            {makers.length > 0 && <h2>By whom</h2>}
            <ul>
                {makers.map((words) => (
                    <li key={words}>{oneLine(words)}</li>
                ))}
            </ul>
        </article>,
    );
}
