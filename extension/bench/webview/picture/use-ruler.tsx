import { useState } from 'preact/hooks';
import type { BlankView } from '../../../../shared/view/bench-view';
import type { Drawing } from './canvas';
import { onPiece, pointed, type Ruler, rulerWords } from './ruler';

/** A stroke that went no further than this was a click, px. */
const CLICK = 4;

export interface Ruling {
    /** The tool is in hand. */
    readonly isOn: boolean;
    readonly ruler: Ruler | undefined;
    /** Lays it, or takes it away. */
    readonly lay: (ruler: Ruler | undefined) => void;
    readonly drawing: Drawing | undefined;
    /** Takes it into the hand, laid along the middle of the piece so that keys reach it, or puts it away. */
    readonly turn: () => void;
    readonly away: () => void;
}

/** The ruler over one blank: drawn in one stroke, from click to click, or moved with keys. */
export function useRuler(blank: BlankView): Ruling {
    const [isOn, setOn] = useState(false);
    const [laid, lay] = useState<Ruler>();
    const ruler = isOn && laid?.blank === blank.name ? laid : undefined;
    const away = () => {
        setOn(false);
        lay(undefined);
    };
    const turn = () => {
        if (isOn) {
            away();
            return;
        }
        const y = blank.height / 2;
        setOn(true);
        lay({ blank: blank.name, from: { x: blank.width / 4, y }, to: { x: (3 * blank.width) / 4, y }, open: false });
    };
    const at = (x: number, y: number, scale: number) => onPiece(pointed({ x, y }, scale), blank);
    const drawing: Drawing = {
        down: (x, y, scale) => {
            const place = at(x, y, scale);
            lay(ruler?.open ? { ...ruler, to: place, open: false } : { blank: blank.name, from: place, to: place, open: true });
        },
        over: (x, y, scale) => {
            if (ruler?.open) lay({ ...ruler, to: at(x, y, scale) });
        },
        up: (gone) => {
            if (ruler?.open && gone > CLICK) lay({ ...ruler, open: false });
        },
    };
    return {
        isOn,
        ruler,
        lay: (next) => (next === undefined ? away() : lay(next)),
        drawing: isOn ? drawing : undefined,
        turn,
        away,
    };
}

export function RulerButton({ isOn, turn }: Pick<Ruling, 'isOn' | 'turn'>) {
    return (
        <button type="button" class="tool" aria-pressed={isOn} onClick={turn} aria-label="Ruler (M key)" title="Ruler (M)">
            ruler
        </button>
    );
}

interface RulerWordsProps {
    readonly ruler: Ruler | undefined;
    readonly unit: string | undefined;
    readonly away: () => void;
}

/** What is measured, in words that are read out once it rests. */
export function RulerWords({ ruler, unit, away }: RulerWordsProps) {
    return (
        <p class="measured">
            <span>Ruler</span>
            <output aria-live={ruler?.open ? 'off' : 'polite'}>
                {ruler === undefined ? 'Click at two places, or draw from one to the other.' : rulerWords(ruler, unit)}
            </output>
            <button type="button" onClick={away}>
                Put the ruler away
            </button>
        </p>
    );
}
