import type { LayerView, PieceView } from '../../../../shared/view/bench-view';
import { type Hideable, hideable } from '../../../../shared/view/hideable';

/** What can be left out of the picture: what lies on the piece, in the round too, and what is drawn over it. */
export type Shown = Hideable | 'lines' | 'sizes' | 'findings';

const all: readonly Shown[] = [...hideable, 'lines', 'sizes', 'findings'];

/** What is called so in the row of boxes. */
export const shownWords: Readonly<Record<Shown, string>> = {
    char: 'burnt colour',
    fill: 'fill',
    veneer: 'veneer',
    tape: 'tape',
    coat: 'coats',
    lines: 'cut lines',
    sizes: 'sizes and section line',
    findings: 'rings of findings',
};

const groups: Readonly<Record<LayerView['kind'], Shown | undefined>> = {
    burnt: 'char',
    toned: 'char',
    // A hole is no layer: there is nothing below it.
    through: undefined,
    filled: 'fill',
    spilled: 'fill',
    inlaid: 'veneer',
    cut: 'lines',
};

export function groupOf({ kind }: LayerView): Shown | undefined {
    return groups[kind];
}

/** What there is to hide on a piece, in the order of the row. */
export function hideableOn(piece: PieceView, findings: number): Shown[] {
    const there = new Set<Shown | undefined>(piece.layers.map(groupOf));
    if (piece.masked) there.add('tape');
    if (piece.sealed || piece.finished) there.add('coat');
    if (findings > 0) there.add('findings');
    there.add('sizes');
    return all.filter((each) => there.has(each));
}

/** The piece as somebody sees it who has left something out. */
export function withoutHidden(piece: PieceView, hidden: readonly Shown[]): PieceView {
    if (!hidden.some((each) => isOnPiece(each))) return piece;
    return {
        ...piece,
        layers: piece.layers.flatMap((layer) => {
            const group = groupOf(layer);
            if (group !== undefined && hidden.includes(group)) return [];
            return layer.tint !== undefined && hidden.includes('coat') ? [{ ...layer, tint: undefined }] : [layer];
        }),
        masked: piece.masked && !hidden.includes('tape'),
        sealed: piece.sealed && !hidden.includes('coat'),
        finished: piece.finished && !hidden.includes('coat'),
        ...(hidden.includes('coat') ? { tint: undefined } : {}),
    };
}

/** What of it lies on the piece, and is left out in the round as well. */
export function hiddenInRound(hidden: readonly Shown[]): Hideable[] {
    return hideable.filter((each) => hidden.includes(each));
}

function isOnPiece(what: Shown): boolean {
    return what !== 'sizes' && what !== 'findings';
}

export function isShown(value: unknown): value is Shown {
    return (all as readonly unknown[]).includes(value);
}
