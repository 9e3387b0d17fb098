import { useState } from 'preact/hooks';
import { fromBase, toBase } from '../../../../shared/quantity/quantity';
import { showNumber } from '../../../../shared/quantity/show';
import type { BlankView } from '../../../../shared/view/bench-view';
import type { BenchState } from '../state';

interface LiesHereProps {
    readonly blank: BlankView;
    readonly place: BenchState['place'];
    readonly lies: BenchState['lies'];
    readonly pointAt: (x: number, y: number) => void;
}

/**
 * What lies in one place of the piece, in words. The place follows the pointer over the picture; typed, or moved with the arrow
 * keys, it is read out as well.
 */
export function LiesHere({ blank, place, lies, pointAt }: LiesHereProps) {
    const [typing, setTyping] = useState(false);
    const shown = typing ? place : (lies ?? place);
    const unit = blank.unit ?? 'mm';
    const field = (label: string, at: number | undefined, most: number, choose: (mm: number) => void) => (
        <label>
            {label}
            <input
                type="number"
                min={0}
                max={Number(showNumber(fromBase(most, unit), 2))}
                step={unit === 'mm' ? 1 : 'any'}
                value={at === undefined ? '' : showNumber(fromBase(at, unit), 2)}
                onInput={({ currentTarget: { valueAsNumber } }) => {
                    const mm = Number.isFinite(valueAsNumber) ? toBase(valueAsNumber, unit) : undefined;
                    if (mm !== undefined && mm >= 0 && mm <= most) choose(mm);
                }}
            />
        </label>
    );
    return (
        <fieldset class="lies" onFocusIn={() => setTyping(true)} onFocusOut={() => setTyping(false)}>
            <legend>What lies there</legend>
            {field('from the left', shown?.x, blank.width, (x) => pointAt(x, place?.y ?? blank.height / 2))}
            {field('from the top', shown?.y, blank.height, (y) => pointAt(place?.x ?? blank.width / 2, y))}
            <span class="unit">{unit}</span>
            <output aria-live={typing ? 'polite' : 'off'}>
                {lies?.words ?? 'Point at the picture, or give a place, and it is said here.'}
            </output>
        </fieldset>
    );
}
