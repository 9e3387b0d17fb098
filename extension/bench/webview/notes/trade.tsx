import type { StepView } from '../../../../shared/view/bench-view';
import { high, tradeDots, tradeSentence, wide } from './trade-drawing';

/** What another number of passes would cost a step: a dot each, larger where a pass takes more and chars more. */
export function Trade({ step: { title, trade } }: { readonly step: StepView }) {
    if (trade === undefined) return null;
    const dots = tradeDots(trade);
    return (
        <details class="minor">
            <summary>passes to choose from</summary>
            <svg
                class="trade"
                viewBox={`0 0 ${wide} ${high}`}
                role="img"
                aria-label={`Ways to the depth of ${title}. ${tradeSentence(trade)}.`}
            >
                <polyline
                    class="trade-line"
                    points={dots
                        .filter(({ way }) => way.sooner !== true)
                        .map(({ x, y }) => `${x},${y}`)
                        .join(' ')}
                />
                {dots.map(({ x, y, radius, way }) => (
                    <circle key={way.words} class={way.chosen ? 'trade-dot chosen' : 'trade-dot'} cx={x} cy={y} r={radius}>
                        <title>{way.words}</title>
                    </circle>
                ))}
                <text class="trade-axis" x={wide - 2} y={high - 4} text-anchor="end">
                    machine time →
                </text>
                <text class="trade-axis" x="2" y="9">
                    ↑ depth may be off by
                </text>
            </svg>
            <ul class="trade-ways">
                {trade.map(({ words, chosen }) => (
                    <li key={words} class={chosen ? 'chosen' : undefined}>
                        {words}
                        {chosen && ', as planned'}
                    </li>
                ))}
            </ul>
        </details>
    );
}
