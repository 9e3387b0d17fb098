import { useRef } from 'preact/hooks';
import { showLength } from '../../../../shared/quantity/show';
import type { BlankView } from '../../../../shared/view/bench-view';
import { followPointer } from '../picture/follow-pointer';
import type { Placing, Size } from '../picture/zoom';

interface CutLineProps {
    readonly blank: BlankView;
    readonly y: number;
    readonly placing: Placing;
    readonly screen: Size;
    readonly move: (y: number) => void;
}

/** The line along which the section below is cut: to be dragged, or moved with the arrow keys. */
export function CutLine({ blank, y, placing, screen, move }: CutLineProps) {
    const grip = useRef<SVGGElement>(null);
    const py = placing.shiftY + y * placing.scale;
    const left = Math.max(placing.shiftX - 10, 12);
    const right = Math.min(placing.shiftX + blank.width * placing.scale + 10, screen.width - 12);
    const to = (mm: number) => move(Math.min(Math.max(mm, 0), blank.height));

    const press = (event: KeyboardEvent) => {
        const step = event.shiftKey ? 10 : 1;
        const next = {
            ArrowUp: y - step,
            ArrowDown: y + step,
            ArrowLeft: y - step,
            ArrowRight: y + step,
            PageUp: y - 10,
            PageDown: y + 10,
            Home: 0,
            End: blank.height,
        }[event.key];
        if (next === undefined) return;
        event.preventDefault();
        event.stopPropagation();
        to(next);
    };

    const drag = (event: PointerEvent) => {
        if (event.button !== 0) return;
        event.stopPropagation();
        followPointer(grip.current!, event, (_, down) => to(y + down / placing.scale));
    };

    return (
        <g
            ref={grip}
            class="cut-line-grip"
            role="slider"
            tabindex={0}
            aria-label="Section line"
            aria-orientation="vertical"
            aria-valuemin={0}
            aria-valuemax={Math.round(blank.height)}
            aria-valuenow={Math.round(y)}
            aria-valuetext={`${showLength(y, blank.unit)} from the top edge`}
            onKeyDown={press}
            onPointerDown={drag}
        >
            <path class="reach" d={`M${left} ${py}H${right}`} />
            <path class="line under" d={`M${left} ${py}H${right}`} />
            <path class="line" d={`M${left} ${py}H${right}`} />
            <path class="end" d={`M${left - 7} ${py - 6}l9 6l-9 6zM${right + 7} ${py - 6}l-9 6l9 6z`} />
        </g>
    );
}
