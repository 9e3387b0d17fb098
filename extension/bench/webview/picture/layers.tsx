import type { BlankView, LayerView, PieceView } from '../../../../shared/view/bench-view';
import { describeLayer, statesOf } from '../describe';
import { WrittenNumber } from '../notes/written-number';

/** Swatches for one thing. */
const MOST = 8;

interface LayersProps {
    readonly piece: PieceView;
    readonly blank: BlankView;
    readonly textVersion: number;
}

/** What is on the piece, by its look, and the piece's own size and state. */
export function Layers({ piece, blank, textVersion }: LayersProps) {
    return (
        <ul class="layers" aria-label="What is on the piece">
            {byWords(piece.layers, blank.unit).map(([words, layers]) => (
                <li key={words}>
                    <span class="swatches" style={{ background: blank.colour }}>
                        {layers.slice(0, MOST).map(({ colour }, index) => (
                            <span key={index} class="swatch" style={{ background: colour, opacity: covered(layers, index) }} />
                        ))}
                    </span>
                    {words}
                </li>
            ))}
            {blank.size !== undefined && blank.size.text !== '' && (
                <li>
                    size {blank.size.text}
                    <WrittenNumber name={`size of ${blank.name}`} written={blank.size} textVersion={textVersion} />
                </li>
            )}
            {[...(piece.side === undefined ? [] : [`${piece.side} up`]), ...statesOf(piece)].map((state) => (
                <li key={state} class="state">
                    {state}
                </li>
            ))}
        </ul>
    );
}

/** How much of the wood is covered where the layers up to this one lie upon each other. */
function covered(layers: readonly LayerView[], last: number): number {
    return 1 - layers.slice(0, last + 1).reduce((bare, { opacity }) => bare * (1 - opacity), 1);
}

/** The greys of a picture are many layers and one thing to be told. */
function byWords(layers: readonly LayerView[], unit: string | undefined): [string, LayerView[]][] {
    const all = new Map<string, LayerView[]>();
    for (const layer of layers) {
        const words = describeLayer(layer, unit);
        all.set(words, [...(all.get(words) ?? []), layer]);
    }
    return [...all];
}
