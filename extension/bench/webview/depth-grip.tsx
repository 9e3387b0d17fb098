import { useEffect, useRef, useState } from 'preact/hooks';
import { fromBase, toBase } from '../../../shared/quantity/quantity';
import { showNumber } from '../../../shared/quantity/show';
import type { WrittenView } from '../../../shared/view/bench-view';
import { write } from './editor-link';

interface DepthGripProps {
    readonly name: string;
    readonly written: WrittenView;
    readonly textVersion: number;
    /** Where the floor is drawn, px, and how many px a mm of depth takes. */
    readonly x: number;
    readonly y: number;
    readonly scale: number;
    readonly deepest: number;
}

/** ms after the last arrow key until the depth is written: a row of keys is one change. */
const REST = 500;

/** The floor of what was dug, to be dragged deeper or shallower; where it comes to rest is written into the text. */
export function DepthGrip({ name, written, textVersion, x, y, scale, deepest }: DepthGripProps) {
    const plain = plainLength(written.text);
    const [moved, setMoved] = useState<number>();
    const grip = useRef<SVGGElement>(null);
    const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
    useEffect(() => {
        clearTimeout(timer.current);
        setMoved(undefined);
    }, [written.text]);
    useEffect(() => () => clearTimeout(timer.current), []);
    if (plain === undefined) return null;
    const { mm, unit } = plain;
    const depth = moved ?? mm;
    const words = `${showNumber(fromBase(depth, unit), unit === 'mm' ? 2 : 4)} ${unit}`;
    const within = (next: number) => Math.min(Math.max(next, 0.01), deepest);

    const settle = (to: number) => {
        const text = `${showNumber(fromBase(to, unit), unit === 'mm' ? 2 : 4)} ${unit}`;
        if (plainLength(text)?.mm === mm) setMoved(undefined);
        else write(written.where, textVersion, text);
    };
    const press = (event: KeyboardEvent) => {
        const step = event.shiftKey ? 0.1 : 0.01;
        const way = { ArrowDown: step, ArrowRight: step, ArrowUp: -step, ArrowLeft: -step }[event.key];
        if (way === undefined) return;
        event.preventDefault();
        const to = within(depth + way);
        setMoved(to);
        clearTimeout(timer.current);
        timer.current = setTimeout(() => settle(to), REST);
    };
    const drag = (event: PointerEvent) => {
        if (event.button !== 0) return;
        event.preventDefault();
        const target = grip.current!;
        const from = event.clientY;
        let to = depth;
        target.setPointerCapture(event.pointerId);
        const follow = (next: PointerEvent) => {
            to = within(depth + (next.clientY - from) / scale);
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
    const floor = y + (depth - mm) * scale;
    return (
        <g
            ref={grip}
            class="depth-grip"
            role="slider"
            tabindex={0}
            aria-label={`Depth of ${name}`}
            aria-orientation="vertical"
            aria-valuemin={0}
            aria-valuemax={deepest}
            aria-valuenow={depth}
            aria-valuetext={words}
            onKeyDown={press}
            onPointerDown={drag}
        >
            <title>{`Drag to change the depth of ${name}`}</title>
            <rect class="reach" x={x - 20} y={floor - 12} width="40" height="24" />
            <path class="under" d={`M${x - 14} ${floor}h28`} />
            <path d={`M${x - 14} ${floor}h28`} />
            {moved !== undefined && (
                <text x={x + 20} y={floor + 4}>
                    {words}
                </text>
            )}
        </g>
    );
}

/** A length without tolerance or range; what is more than that is left to the keyboard in the text. */
function plainLength(text: string): { mm: number; unit: string } | undefined {
    const [, number, unit = ''] = /^(\d+(?:\.\d+)?) ?(mm|cm|in|thou|um)$/.exec(text) ?? [];
    const mm = number === undefined ? undefined : toBase(Number(number), unit);
    return mm === undefined ? undefined : { mm, unit };
}
