import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useSize } from '../use-size';
import { followPointer } from './follow-pointer';
import { MARGIN, type Placing, pan, place, type Size, type Window, wholeWindow, zoomAt } from './zoom';

interface CanvasProps {
    readonly label: string;
    readonly piece: Size;
    readonly window: Window;
    readonly look: (window: Window) => void;
    /** Drawn in mm. */
    readonly children: (placing: Placing) => ComponentChildren;
    /** Drawn over it in px, so that letters and rings keep their size. */
    readonly over?: (placing: Placing, screen: Size) => ComponentChildren;
    readonly class?: string;
    /** Hears the place under a pointer that passes, and one that is tapped, mm. */
    readonly hover?: (x: number, y: number) => void;
    readonly tap?: (x: number, y: number) => void;
    /** Takes the pointer as long as something is drawn with it; places in mm, also beside the piece. */
    readonly drawing?: Drawing | undefined;
    /** Further tools, before those that zoom, and keys of theirs: answers whether it was one. */
    readonly tools?: ComponentChildren;
    readonly ownKey?: (key: string) => boolean;
}

/** Something that is drawn with the pointer, by a stroke or from click to click. */
export interface Drawing {
    readonly down: (x: number, y: number, scale: number) => void;
    /** With the button up or down. */
    readonly over: (x: number, y: number, scale: number) => void;
    /** @param gone how far the pointer went while it was down, px */
    readonly up: (gone: number) => void;
}

const STEP = 40; // px that an arrow key moves

/** A picture in mm to be looked at closely: with the pointer, the wheel and Ctrl, or the keyboard alone. */
export function Canvas(props: CanvasProps) {
    const { label, piece, window, look, children, over, class: name = '', hover, tap, drawing, tools, ownKey } = props;
    const svg = useRef<SVGSVGElement>(null);
    // What is drawn changes while it is drawn.
    const latest = useRef(drawing);
    latest.current = drawing;
    const screen = useSize(svg);
    const placing = place(window, piece, screen);
    const middle = { x: screen.width / 2, y: screen.height / 2 };
    const closer = (factor: number, point = middle) => look(zoomAt(window, factor, point, piece, screen));

    useWheel(svg, (event) => {
        const box = svg.current!.getBoundingClientRect();
        closer(Math.exp(-event.deltaY * 0.0022), { x: event.clientX - box.left, y: event.clientY - box.top });
    });

    const press = (event: KeyboardEvent) => {
        const move = { ArrowLeft: [STEP, 0], ArrowRight: [-STEP, 0], ArrowUp: [0, STEP], ArrowDown: [0, -STEP] }[event.key];
        if (event.target !== event.currentTarget) return;
        if (move !== undefined && window.zoom > 1) look(pan(window, move[0]!, move[1]!, piece, screen));
        else if (event.key === '+' || event.key === '=') closer(1.4);
        else if (event.key === '-') closer(1 / 1.4);
        else if (event.key === '0') look(wholeWindow);
        else if (!ownKey?.(event.key)) return;
        event.preventDefault();
    };

    /** The place under the pointer, mm. */
    const under = (event: PointerEvent): { x: number; y: number } => {
        const box = svg.current!.getBoundingClientRect();
        return {
            x: (event.clientX - box.left - placing.shiftX) / placing.scale,
            y: (event.clientY - box.top - placing.shiftY) / placing.scale,
        };
    };

    const stroke = (event: PointerEvent, by: Drawing) => {
        const { scale } = placing;
        const { x, y } = under(event);
        let far = 0;
        by.down(x, y, scale);
        followPointer(
            svg.current!,
            event,
            (right, down) => {
                far = Math.max(far, Math.hypot(right, down));
                latest.current?.over(x + right / scale, y + down / scale, scale);
            },
            () => latest.current?.up(far),
        );
    };

    const pass = (event: PointerEvent) => {
        if (event.buttons !== 0) return;
        tell(event, hover);
        const { x, y } = under(event);
        drawing?.over(x, y, placing.scale);
    };

    const tell = (event: PointerEvent, told: ((x: number, y: number) => void) | undefined) => {
        if (told === undefined) return;
        const { x, y } = under(event);
        if (x >= 0 && y >= 0 && x <= piece.width && y <= piece.height) told(toTenth(x), toTenth(y));
    };

    const drag = (event: PointerEvent) => {
        if (event.button !== 0) return;
        if (drawing !== undefined) {
            stroke(event, drawing);
            return;
        }
        tell(event, tap);
        if (window.zoom === 1) return;
        followPointer(svg.current!, event, (right, down) => look(pan(window, right, down, piece, screen)));
    };

    return (
        <div class={`canvas ${name}`}>
            <svg
                ref={svg}
                class={drawing !== undefined ? 'drawing' : window.zoom > 1 ? 'close' : ''}
                style={{ maxHeight: `${tallest(piece, screen)}px` }}
                aria-roledescription="picture"
                aria-label={label}
                tabindex={0}
                onKeyDown={press}
                onPointerDown={drag}
                onPointerMove={pass}
            >
                <g transform={`translate(${placing.shiftX} ${placing.shiftY}) scale(${placing.scale})`}>{children(placing)}</g>
                {over?.(placing, screen)}
            </svg>
            <div class="zoom" role="toolbar" aria-label={tools === undefined ? 'Zoom' : 'Ruler and zoom'}>
                {tools}
                <button type="button" onClick={() => closer(1.4)} aria-label="Closer (plus key)" title="Closer (+)">
                    +
                </button>
                <button
                    type="button"
                    onClick={() => closer(1 / 1.4)}
                    aria-label="Further away (minus key)"
                    title="Further away (−)"
                >
                    −
                </button>
                <button
                    type="button"
                    onClick={() => look(wholeWindow)}
                    aria-label="Show the whole piece (zero key)"
                    title="Whole piece (0)"
                >
                    whole
                </button>
            </div>
        </div>
    );
}

/** Finer than a tenth of a millimetre nobody points. */
function toTenth(mm: number): number {
    return Math.round(mm * 10) / 10;
}

/** Higher than the piece itself and its margins would be empty bench, px. */
function tallest(piece: Size, screen: Size): number {
    return Math.max(200, ((screen.width - 2 * MARGIN) * piece.height) / Math.max(piece.width, 1e-3) + 2 * MARGIN);
}

/** The wheel with Ctrl (or a pinch) zooms; without, it scrolls the page as everywhere. Preact listens passively, so by hand. */
export function useWheel(svg: { readonly current: Element | null }, turned: (event: WheelEvent) => void): void {
    const latest = useRef(turned);
    latest.current = turned;
    useEffect(() => {
        const target = svg.current;
        const listen = (event: Event) => {
            if (!(event instanceof WheelEvent)) return;
            if (!event.ctrlKey && !event.metaKey) return;
            event.preventDefault();
            latest.current(event);
        };
        target?.addEventListener('wheel', listen, { passive: false });
        return () => target?.removeEventListener('wheel', listen);
    }, [svg]);
}
