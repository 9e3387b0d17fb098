import { useRef } from 'preact/hooks';
import { fromBase, toBase } from '../../../../shared/quantity/quantity';
import { showNumber } from '../../../../shared/quantity/show';
import type { WrittenView } from '../../../../shared/view/bench-view';
import { write } from '../editor-link';
import { followPointer } from '../picture/follow-pointer';
import { useMoved } from '../picture/use-moved';

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

/** The floor of what was dug, to be dragged deeper or shallower; where it comes to rest is written into the text. */
export function DepthGrip({ name, written, textVersion, x, y, scale, deepest }: DepthGripProps) {
    const { mm, unit } = plainLength(written.text) ?? { mm: Number.NaN, unit: 'mm' };
    const wordsOf = (depth: number) => `${showNumber(fromBase(depth, unit), unit === 'mm' ? 2 : 4)} ${unit}`;
    const {
        at: depth,
        isMoved,
        show,
        nudge,
        settle,
        leave,
    } = useMoved(mm, wordsOf, (text) => write(written.where, textVersion, text));
    const grip = useRef<SVGGElement>(null);
    if (Number.isNaN(mm)) return null;
    const words = wordsOf(depth);
    const within = (next: number) => Math.min(Math.max(next, 0.01), deepest);

    const press = (event: KeyboardEvent) => {
        const step = event.shiftKey ? 0.1 : 0.01;
        const way = { ArrowDown: step, ArrowRight: step, ArrowUp: -step, ArrowLeft: -step }[event.key];
        if (event.key === 'Escape') leave();
        if (way === undefined) return;
        event.preventDefault();
        nudge(within(depth + way));
    };
    const drag = (event: PointerEvent) => {
        if (event.button !== 0) return;
        event.preventDefault();
        let to = depth;
        followPointer(
            grip.current!,
            event,
            (_, down) => {
                to = within(depth + down / scale);
                show(to);
            },
            () => settle(to),
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
            {isMoved && (
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
