import { useRef } from 'preact/hooks';
import { fromBase } from '../../../../shared/quantity/quantity';
import { showNumber } from '../../../../shared/quantity/show';
import type { MovableView } from '../../../../shared/view/bench-view';
import { write } from '../editor-link';
import { pathId } from '../ids';
import { followPointer } from './follow-pointer';
import { useMoved } from './use-moved';
import type { Placing } from './zoom';

interface ArtGripProps {
    readonly movable: MovableView;
    /** What it burns, to be seen where it would go. */
    readonly path: string | undefined;
    readonly placing: Placing;
    readonly textVersion: number;
}

/** The middle of the art, to be dragged or moved with the arrow keys; where it comes to rest is written into the text. */
export function ArtGrip({ movable, path, placing, textVersion }: ArtGripProps) {
    const { unit } = movable;
    const { at, isMoved, show, nudge, settle, leave } = useMoved(
        { x: movable.x, y: movable.y },
        (place) => placeWords(place, unit),
        (text) => write(movable.where, textVersion, text),
    );
    const grip = useRef<SVGGElement>(null);
    const x = placing.shiftX + at.x * placing.scale;
    const y = placing.shiftY + at.y * placing.scale;
    const words = placeWords(at, unit);

    const press = (event: KeyboardEvent) => {
        const step = event.shiftKey ? 10 : 1;
        const way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key];
        if (event.key === 'Escape') leave();
        if (way === undefined) return;
        event.preventDefault();
        event.stopPropagation();
        nudge({ x: Math.max(0, at.x + way[0]!), y: Math.max(0, at.y + way[1]!) });
    };
    const drag = (event: PointerEvent) => {
        if (event.button !== 0) return;
        event.stopPropagation();
        let to = at;
        const tenths = (from: number, px: number) => Math.max(0, Math.round((from + px / placing.scale) * 10) / 10);
        followPointer(
            grip.current!,
            event,
            (right, down) => {
                to = { x: tenths(at.x, right), y: tenths(at.y, down) };
                show(to);
            },
            () => settle(to),
        );
    };

    return (
        <g>
            {isMoved && path !== undefined && (
                <g
                    class="art-ghost"
                    transform={`translate(${placing.shiftX + (at.x - movable.x) * placing.scale} ${placing.shiftY + (at.y - movable.y) * placing.scale}) scale(${placing.scale})`}
                >
                    <use href={`#${pathId(path)}`} />
                </g>
            )}
            {/* biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing */}
            <g
                ref={grip}
                class="art-grip"
                role="button"
                tabindex={0}
                aria-label={`Place of ${movable.what}: ${words}. Arrow keys move it, with Shift by 10 mm.`}
                onKeyDown={press}
                onPointerDown={drag}
            >
                <title>{`Drag to move ${movable.what}`}</title>
                <circle class="reach" cx={x} cy={y} r="14" />
                <circle class="under" cx={x} cy={y} r="8" />
                <path d={`M${x - 11} ${y}h22M${x} ${y - 11}v22`} class="under" />
                <circle cx={x} cy={y} r="8" />
                <path d={`M${x - 11} ${y}h22M${x} ${y - 11}v22`} />
            </g>
            {isMoved && (
                <g class="dimension">
                    <text class="start halo" x={x + 14} y={y - 12}>
                        {words}
                    </text>
                </g>
            )}
        </g>
    );
}

/** As it would be written: `150, 100 mm`. */
function placeWords({ x, y }: { x: number; y: number }, unit: string): string {
    const digits = unit === 'mm' ? 2 : 4;
    const show = (mm: number) => showNumber(fromBase(mm, unit), digits);
    return `${show(x)}, ${show(y)} ${unit}`;
}
