import { useEffect, useRef, useState } from 'preact/hooks';
import { fromBase } from '../../../shared/quantity/quantity';
import { showNumber } from '../../../shared/quantity/show';
import type { MovableView } from '../../../shared/view/bench-view';
import { write } from './editor-link';
import { pathId } from './ids';
import type { Placing } from './zoom';

interface ArtGripProps {
    readonly movable: MovableView;
    /** What it burns, to be seen where it would go. */
    readonly path: string | undefined;
    readonly placing: Placing;
    readonly textVersion: number;
}

/** ms after the last arrow key until the place is written: a row of keys is one change. */
const REST = 500;

/** The middle of the art, to be dragged or moved with the arrow keys; where it comes to rest is written into the text. */
export function ArtGrip({ movable, path, placing, textVersion }: ArtGripProps) {
    const [moved, setMoved] = useState<{ x: number; y: number }>();
    const grip = useRef<SVGGElement>(null);
    const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
    useEffect(() => {
        clearTimeout(timer.current);
        setMoved(undefined);
    }, [movable]);
    useEffect(() => () => clearTimeout(timer.current), []);
    const at = moved ?? movable;
    const x = placing.shiftX + at.x * placing.scale;
    const y = placing.shiftY + at.y * placing.scale;
    const words = placeWords(at, movable.unit);

    const settle = (to: { x: number; y: number }) => {
        if (placeWords(to, movable.unit) === placeWords(movable, movable.unit)) setMoved(undefined);
        else write(movable.where, textVersion, placeWords(to, movable.unit));
    };
    const press = (event: KeyboardEvent) => {
        const step = event.shiftKey ? 10 : 1;
        const way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key];
        if (event.key === 'Escape') {
            clearTimeout(timer.current);
            setMoved(undefined);
        }
        if (way === undefined) return;
        event.preventDefault();
        event.stopPropagation();
        const to = { x: Math.max(0, at.x + way[0]!), y: Math.max(0, at.y + way[1]!) };
        setMoved(to);
        clearTimeout(timer.current);
        timer.current = setTimeout(() => settle(to), REST);
    };
    const drag = (event: PointerEvent) => {
        if (event.button !== 0) return;
        event.stopPropagation();
        const target = grip.current!;
        const from = { x: event.clientX, y: event.clientY };
        let to = { x: at.x, y: at.y };
        target.setPointerCapture(event.pointerId);
        const follow = (next: PointerEvent) => {
            to = {
                x: Math.max(0, Math.round((at.x + (next.clientX - from.x) / placing.scale) * 10) / 10),
                y: Math.max(0, Math.round((at.y + (next.clientY - from.y) / placing.scale) * 10) / 10),
            };
            setMoved(to);
        };
        target.addEventListener('pointermove', follow);
        target.addEventListener(
            'lostpointercapture',
            () => {
                target.removeEventListener('pointermove', follow);
                settle(to);
            },
            { once: true },
        );
    };

    return (
        <g>
            {moved !== undefined && path !== undefined && (
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
            {moved !== undefined && (
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
