import type { PlaceView } from '../../../../shared/view/bench-view';
import type { Placing } from '../picture/zoom';
import { wordsWidth } from '../words-width';
import { type HalvesProps, shownOf } from './halves';

/** What is what in the picture of the halves, and what does not meet, in words. In px. */
export function HalvesLabels({ inlay, pose, whole, gap, placing }: HalvesProps & { readonly placing: Placing }) {
    const { relief, pocket, amiss } = inlay;
    const { scale, shiftX, shiftY } = placing;
    const top = shiftY + ((whole.height - pocket.height) / 2) * scale;
    const right = shiftX + pocket.width * scale;
    const shown = shownOf(inlay, pose);
    const beside = shiftX + (pocket.width + gap + relief.width / 2) * scale;
    const board = { x: shiftX + (pocket.width / 2) * scale, y: top + pocket.height * scale + 16 };
    const boardWords =
        shown > 0.5
            ? `${relief.blank} ${inlay.faceUp ? 'face up in' : 'turned over onto'} ${pocket.blank}`
            : `pocket in ${pocket.blank}`;
    const longWords = `${relief.blank} as it is burnt, face up`;
    const middle = shiftY + (whole.height / 2) * scale;
    const half = (relief.height / 2) * scale;
    // Where both would run into each other, the veneer's are shorter and stand above it, and a low board has the callouts above.
    const tight = beside - board.x < (wordsWidth(boardWords) + wordsWidth(longWords)) / 2 + 8;
    const callouts = pocket.height * scale < 90 ? top - 24 : top + 16;
    const on = (place: PlaceView | undefined) => place && { x: shiftX + place.x * scale, y: top + place.y * scale };
    return (
        <g class="dimension">
            <text x={board.x} y={board.y}>
                {boardWords}
            </text>
            {pose.way === 0 && (
                <text x={beside} y={tight ? middle - half - 7 : middle + half + 16}>
                    {tight ? `${relief.blank}, face up` : longWords}
                </text>
            )}
            {amiss !== undefined && shown > 0 && (
                <g opacity={shown}>
                    <Callout at={on(amiss.collides)} text="lands on wood" left={shiftX} right={right} top={callouts} />
                    <Callout at={on(amiss.empty)} text="stays empty" left={shiftX} right={right} top={callouts + 20} />
                </g>
            )}
        </g>
    );
}

interface CalloutProps {
    readonly at: { readonly x: number; readonly y: number } | undefined;
    readonly text: string;
    /** Edges of the board, px. */
    readonly left: number;
    readonly right: number;
    readonly top: number;
}

/** A word at that side of the board to which the place is nearer, with a line to it. */
function Callout({ at, text, left, right, top }: CalloutProps) {
    if (at === undefined) return null;
    const toRight = at.x > (left + right) / 2;
    const x = toRight ? right - 8 : left + 8;
    const line = `M${toRight ? right - 50 : left + 50} ${top + 4}L${at.x} ${at.y}`;
    return (
        <g class="callout">
            <path class="under" d={line} />
            <path d={line} />
            <circle cx={at.x} cy={at.y} r="3" />
            <text class={toRight ? 'end' : 'start'} x={x} y={top}>
                {text}
            </text>
        </g>
    );
}
