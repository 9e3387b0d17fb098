import type { BenchView } from '../../../../shared/view/bench-view';

/** What has to be at hand, and what to take care of. */
export function Supplies({ view }: { view: BenchView }) {
    if (view.supplies.length === 0) return null;
    const hasCosts = view.supplies.some(({ cost }) => cost !== undefined);
    return (
        <section aria-labelledby="supplies-heading">
            <h2 id="supplies-heading">Supplies</h2>
            <table>
                <thead class="hidden">
                    <tr>
                        <th scope="col">Item</th>
                        <th scope="col">Amount</th>
                        {hasCosts && <th scope="col">Costs</th>}
                        <th scope="col">Note</th>
                    </tr>
                </thead>
                <tbody>
                    {view.supplies.map(({ item, amount, note, cost }) => (
                        <tr key={`${item} ${note}`}>
                            <th scope="row">{item}</th>
                            <td class="amount">{amount}</td>
                            {hasCosts && <td class="amount">{cost}</td>}
                            <td class="note">{note}</td>
                        </tr>
                    ))}
                </tbody>
            </table>
        </section>
    );
}

export function Cautions({ view }: { view: BenchView }) {
    if (view.cautions.length === 0) return null;
    return (
        <section aria-labelledby="cautions-heading">
            <h2 id="cautions-heading">Before you start</h2>
            <ul class="cautions">
                {view.cautions.map((caution) => (
                    <li key={caution}>{caution}</li>
                ))}
            </ul>
        </section>
    );
}
