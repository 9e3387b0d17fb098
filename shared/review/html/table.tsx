import { renderToString } from 'preact-render-to-string';
import type { Where } from '../../quantity/where';
import { oneLine } from '../one-line';
import type { TableGroup, VariantTable } from '../variant-table';
import { type Links, LinksHere, ToPlace } from './links';
import { page } from './page';

/** A table as one page to open, print or attach. */
export function tableHtml(table: VariantTable): string {
    return page(`${titleOf(table)}, side by side`, tableBody(table));
}

/** @param places where each recipe stands in the text, for a page that can lead there */
export function tableBody(table: VariantTable, links?: Links, places: readonly Where[] = []): string {
    const { columns, groups } = table;
    return renderToString(
        <LinksHere.Provider value={links}>
            <h1>{titleOf(table)}</h1>
            <p class="from">{groups.length === 0 ? 'They differ in nothing.' : 'What differs, side by side.'}</p>
            {groups.length > 0 && (
                <div class="wide">
                    <table class="beside">
                        <thead>
                            <tr>
                                <th scope="col">what</th>
                                {columns.map(({ recipe, title }, index) => (
                                    <th key={String(index)} scope="col">
                                        <ToPlace where={places[index]}>{oneLine(title || recipe)}</ToPlace>
                                    </th>
                                ))}
                            </tr>
                        </thead>
                        {groups.map((group, index) => (
                            <Group key={String(index)} group={group} span={columns.length + 1} />
                        ))}
                    </table>
                </div>
            )}
        </LinksHere.Provider>,
    );
}

function Group({ group: { title, rows }, span }: { group: TableGroup; span: number }) {
    return (
        <tbody>
            <tr class="group">
                <th scope="rowgroup" colSpan={span}>
                    {oneLine(title)}
                </th>
            </tr>
            {rows.map(({ label, kind, cells, differs }, index) => (
                <tr key={String(index)} class={`${kind}${differs ? '' : ' alike'}`}>
                    <th scope="row">{oneLine(label)}</th>
                    {cells.map((cell, at) => (
                        <td key={String(at)}>{cell === null ? <span class="note">–</span> : oneLine(cell.text)}</td>
                    ))}
                </tr>
            ))}
        </tbody>
    );
}

function titleOf({ columns }: VariantTable): string {
    const [first] = columns;
    return oneLine(first === undefined ? 'Recipes' : first.title || first.recipe);
}
