import { fromBase } from '../../../../shared/quantity/quantity';
import { showLength, showNumber } from '../../../../shared/quantity/show';
import { followPointer } from './follow-pointer';
import { movedByKey, onPiece, type Point, pointed, type Ruler, stepWords } from './ruler';
import type { Placing, Size } from './zoom';

interface RulerLineProps {
    readonly ruler: Ruler;
    readonly unit: string;
    readonly piece: Size;
    readonly placing: Placing;
    readonly lay: (ruler: Ruler | undefined) => void;
}

/** The ruler on the picture: both ends are dragged, or moved with the arrow keys. */
export function RulerLine({ ruler, unit, piece, placing, lay }: RulerLineProps) {
    const { from, to } = ruler;
    const px = ({ x, y }: Point) => ({ x: placing.shiftX + x * placing.scale, y: placing.shiftY + y * placing.scale });
    const [a, b] = [px(from), px(to)];
    const line = `M${a.x} ${a.y}L${b.x} ${b.y}`;
    const end = (which: 'from' | 'to', name: string) => (
        <RulerEnd
            name={name}
            at={ruler[which]}
            unit={unit}
            piece={piece}
            placing={placing}
            move={(point) => lay({ ...ruler, [which]: point, open: false })}
            away={() => lay(undefined)}
        />
    );
    return (
        <g class="ruler">
            <path class="under" d={line} />
            <path d={line} />
            {end('from', 'First end of the ruler')}
            {end('to', 'Second end of the ruler')}
            <g class="dimension">
                <text x={(a.x + b.x) / 2} y={(a.y + b.y) / 2 - 9}>
                    {showLength(Math.hypot(to.x - from.x, to.y - from.y), unit)}
                </text>
            </g>
        </g>
    );
}

interface RulerEndProps {
    readonly name: string;
    readonly at: Point;
    readonly unit: string;
    readonly piece: Size;
    readonly placing: Placing;
    readonly move: (to: Point) => void;
    readonly away: () => void;
}

function RulerEnd({ name, at, unit, piece, placing, move, away }: RulerEndProps) {
    const x = placing.shiftX + at.x * placing.scale;
    const y = placing.shiftY + at.y * placing.scale;
    const show = (mm: number) => showNumber(fromBase(mm, unit), unit === 'mm' ? 2 : 4);
    const press = (event: KeyboardEvent) => {
        const next = movedByKey(at, event, unit, piece);
        if (event.key === 'Escape') away();
        else if (next === undefined) return;
        else move(next);
        event.preventDefault();
        event.stopPropagation();
    };
    const drag = (event: PointerEvent) => {
        if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
        event.stopPropagation();
        followPointer(event.currentTarget, event, (right, down) => {
            const { scale } = placing;
            move(onPiece(pointed({ x: at.x + right / scale, y: at.y + down / scale }, scale), piece));
        });
    };
    return (
        // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
        <g
            class="ruler-end"
            role="button"
            tabindex={0}
            aria-label={`${name}: ${show(at.x)}, ${show(at.y)} ${unit}. Arrow keys move it by ${stepWords(unit)}; Escape takes the ruler away.`}
            onKeyDown={press}
            onPointerDown={drag}
        >
            <title>{name}</title>
            <circle class="reach" cx={x} cy={y} r="13" />
            <path class="under" d={`M${x - 8} ${y}h16M${x} ${y - 8}v16`} />
            <path d={`M${x - 8} ${y}h16M${x} ${y - 8}v16`} />
            <circle class="eye" cx={x} cy={y} r="5" />
        </g>
    );
}
