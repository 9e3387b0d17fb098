import { describe, expect, it } from 'vitest';
import { readKeptState } from '../../extension/bench/kept-state';
import { hiddenInRound, hideableOn, withoutHidden } from '../../extension/bench/webview/picture/shown';
import type { LayerView, PieceView } from '../../shared/view/bench-view';

const layer = (kind: LayerView['kind']): LayerView => ({
    path: kind,
    kind,
    colour: '#000000',
    opacity: 1,
    step: 0,
    depth: 0.5,
    label: kind,
});
const piece: PieceView = {
    blank: 'tray',
    gone: false,
    masked: true,
    sealed: true,
    finished: false,
    sanded: false,
    layers: (['burnt', 'filled', 'through', 'cut'] as const).map(layer),
    section: { y: 0, width: 0, top: 0, face: 0, spans: [] },
};

describe('what is left out of a picture', () => {
    it('is offered where it is there', () => {
        expect(hideableOn(piece, 0)).toEqual(['char', 'fill', 'tape', 'coat', 'lines', 'sizes']);
        expect(hideableOn({ ...piece, masked: false, sealed: false, layers: [] }, 2)).toEqual(['sizes', 'findings']);
    });

    it('takes away its layers and states, and no hole', () => {
        const open = withoutHidden(piece, ['fill', 'tape', 'lines']);
        expect(open.layers.map(({ kind }) => kind)).toEqual(['burnt', 'through']);
        expect(open).toMatchObject({ masked: false, sealed: true });
        expect(withoutHidden(piece, ['sizes', 'findings'])).toBe(piece);
    });

    it('is asked for in the round only where it lies on the piece', () => {
        expect(hiddenInRound(['sizes', 'fill', 'lines', 'char'])).toEqual(['char', 'fill']);
    });

    it('is kept by the editor', () => {
        expect(readKeptState({ uri: 'file:///a', hidden: ['fill'] })).toEqual({ uri: 'file:///a', hidden: ['fill'] });
        expect(readKeptState({ uri: 'file:///a', hidden: [3] })).toEqual({ uri: 'file:///a' });
    });
});
