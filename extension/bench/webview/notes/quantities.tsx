import { showLength, showRatio } from '../../../../shared/quantity/show';
import type { BenchView } from '../../../../shared/view/bench-view';
import type { SheetView } from '../../../../shared/view/run-view';

/** The sheets to buy, and how the blanks are cut out of them. */
export function SheetCuts({ view }: { view: BenchView }) {
    const { sheets } = view.run;
    if (sheets.length === 0) return null;
    return (
        <section aria-labelledby="sheets-heading" class="sheet-cuts">
            <h2 id="sheets-heading">Sheets to cut</h2>
            {sheets.map((sheet) => (
                <figure key={sheet.name}>
                    <figcaption>
                        {sheet.count} × {sheet.name}{' '}
                        <span class="quiet">
                            of {showLength(sheet.width, sheet.unit)} × {showLength(sheet.height, sheet.unit)},{' '}
                            {showRatio(sheet.used)} of it in blanks
                            {sheet.tooLarge.length > 0 && `; ${sheet.tooLarge.join(' and ')} does not fit`}
                        </span>
                    </figcaption>
                    {sheet.layouts.map((_, index) => (
                        <Cuts key={index} sheet={sheet} index={index} />
                    ))}
                </figure>
            ))}
        </section>
    );
}

function Cuts({ sheet, index }: { sheet: SheetView; index: number }) {
    const laid = sheet.layouts[index]!;
    const label = `Sheet ${index + 1} of ${sheet.name}: ${laid.map(({ name }) => name).join(', ')}`;
    return (
        <svg viewBox={`0 0 ${sheet.width} ${sheet.height}`} role="img" aria-label={label}>
            <rect class="left-over" width={sheet.width} height={sheet.height} />
            {laid.map(({ name, x, y, width, height }) => (
                <g key={`${x} ${y}`}>
                    <title>{name}</title>
                    <rect class="cut-blank" x={x} y={y} width={width} height={height} fill={sheet.colour} />
                    <text class="cut-name" x={x + width / 2} y={y + height / 2} font-size={sheet.height / 9}>
                        {name}
                    </text>
                </g>
            ))}
        </svg>
    );
}

/** What the run costs, and the price of one piece. */
export function Costs({ view }: { view: BenchView }) {
    const { cost } = view.run;
    if (cost === undefined) return null;
    return (
        <section aria-labelledby="cost-heading" class="costs">
            <h2 id="cost-heading">Cost and price</h2>
            <table>
                <thead class="hidden">
                    <tr>
                        <th scope="col">Part</th>
                        <th scope="col">Amount</th>
                        <th scope="col">How</th>
                    </tr>
                </thead>
                <tbody>
                    {cost.lines.map(({ label, amount, note, sum }) => (
                        <tr key={label} class={sum === true ? 'sum' : undefined}>
                            <th scope="row">{label}</th>
                            <td class="amount">{amount}</td>
                            <td class="note">{note}</td>
                        </tr>
                    ))}
                </tbody>
            </table>
            <p class="quiet">At the rates of {cost.shop}, without taxes.</p>
        </section>
    );
}
