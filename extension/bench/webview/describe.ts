import { showLength } from '../../../shared/quantity/show';
import type { BlankView, LayerView, PieceView } from '../../../shared/view/bench-view';

const words: Readonly<Record<LayerView['kind'], string>> = {
    burnt: 'dug out',
    toned: 'darkened',
    through: 'burnt through',
    filled: 'filled',
    inlaid: 'let in',
    spilled: 'flooded',
    cut: 'cut line',
};

/** What a layer is, in few words: "Engrave pocket: dug out, 0.5 mm deep". */
export function describeLayer({ kind, label, depth }: LayerView, unit?: string): string {
    const deep = kind === 'burnt' && depth > 0 ? `, ${showLength(depth, unit)} deep` : '';
    return `${label}: ${words[kind]}${deep}`;
}

/** The picture in words, for those who do not see it. */
export function describePiece(blank: BlankView, piece: PieceView): string {
    const { unit } = blank;
    const size = `${showLength(blank.width, unit)} wide, ${showLength(blank.height, unit)} high, ${showLength(blank.thickness, unit)} thick`;
    const grain = blank.grain === undefined ? '' : `, grain along the ${blank.grain}`;
    const layers =
        piece.layers.length === 0
            ? ' Nothing burnt yet.'
            : ` ${[...new Set(piece.layers.map((layer) => describeLayer(layer, unit)))].join('; ')}.`;
    const states = statesOf(piece);
    const side = piece.side === undefined ? '' : ` Its ${piece.side} is up.`;
    return `${blank.name} of ${blank.label}: ${size}${grain}.${side}${layers}${states.length > 0 ? ` Now ${states.join(', ')}.` : ''}`;
}

export function statesOf(piece: PieceView): string[] {
    return (['masked', 'sealed', 'sanded', 'finished'] as const).filter((state) => piece[state]);
}
