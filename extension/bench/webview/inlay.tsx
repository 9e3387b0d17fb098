import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { BenchView, HalfView, InlayView } from '../../../shared/view/bench-view';
import { Canvas } from './canvas';
import { pathId, url, woodId } from './ids';
import { poseAt } from './turning';
import { useTurning } from './use-turning';
import { type Window, wholeWindow } from './zoom';

interface InlayProps {
    readonly view: BenchView;
    readonly inlay: InlayView;
}

/** Both halves of an inlay as they lie under the laser, the turning over, and what meets what. */
export function Inlay({ view, inlay }: InlayProps) {
    const { at, scrub, play, playing } = useTurning();
    const [window, look] = useState<Window>(wholeWindow);
    const { relief, pocket } = inlay;
    const gap = Math.max(pocket.width, relief.width) * 0.08;
    const whole = { width: pocket.width + gap + relief.width, height: Math.max(pocket.height, relief.height) };
    if (whole.height <= 0 || relief.width <= 0 || pocket.width <= 0) return null;
    const title = view.steps.find(({ index }) => index === inlay.step)?.title ?? 'Inlay';
    return (
        <section class="inlay" aria-label={title}>
            <h2>Both halves: {title}</h2>
            <p class={`verdict ${inlay.good ? 'good' : 'bad'}`}>
                <span class="mark" aria-hidden="true">
                    {inlay.good ? '✓' : '✕'}
                </span>
                {inlay.verdict}
            </p>
            <Canvas
                label={`The pocket in ${pocket.blank} and the relief of ${relief.blank}. ${inlay.verdict}`}
                class="halves"
                piece={whole}
                window={window}
                look={look}
            >
                {({ scale }) => (
                    <>
                        <ScaledHatches scale={scale} />
                        <Halves inlay={inlay} at={at} whole={whole} gap={gap} />
                    </>
                )}
            </Canvas>
            <div class="turning">
                <button type="button" onClick={play} disabled={playing}>
                    {at < 1 ? 'Turn over and lay in' : 'Take apart'}
                </button>
                <input
                    type="range"
                    min="0"
                    max="100"
                    value={Math.round(at * 100)}
                    aria-label="Turning over"
                    aria-valuetext={at === 0 ? 'side by side' : at === 1 ? 'laid in' : 'on the way'}
                    onInput={(event) => scrub(Number((event.currentTarget as HTMLInputElement).value) / 100)}
                />
            </div>
            <MeetingKey burnt={pocket.burnt} />
        </section>
    );
}

/** Hatches that keep their size on the screen while the picture in mm is zoomed. */
function ScaledHatches({ scale }: { scale: number }) {
    return (
        <defs>
            <pattern id="hatch-clash-mm" href="#hatch-clash" patternTransform={`scale(${1 / scale}) rotate(45)`} />
            <pattern id="hatch-empty-mm" href="#hatch-empty" patternTransform={`scale(${1 / scale})`} />
        </defs>
    );
}

interface HalvesProps {
    readonly inlay: InlayView;
    readonly at: number;
    readonly whole: { readonly height: number };
    readonly gap: number;
}

function Halves({ inlay, at, whole, gap }: HalvesProps) {
    const { relief, pocket, meeting } = inlay;
    const { way, turn, landed } = poseAt(at);
    const pocketY = (whole.height - pocket.height) / 2;
    const reliefX = pocket.width + gap;
    const reliefY = (whole.height - relief.height) / 2;
    const [standing, dug] = [useMiddle(relief.path), useMiddle(pocket.path)];
    // The art's middle is what comes to lie over the pocket's middle, and it is turned about its own.
    const from = { x: reliefX + standing.x, y: reliefY + standing.y };
    const to = { x: dug.x, y: pocketY + dug.y };
    const x = from.x + (to.x - from.x) * way;
    const y = from.y + (to.y - from.y) * way;
    return (
        <>
            <g transform={`translate(0 ${pocketY})`}>
                <HalfBoard half={pocket} />
                <use href={`#${pathId(pocket.path)}`} fill={pocket.burnt} />
                <Marks half={pocket} />
                <Meeting meeting={meeting} relief={relief} shown={landed} />
            </g>
            <g transform={`translate(${x} ${y}) scale(${turn} 1) translate(${-standing.x} ${-standing.y})`} opacity={1 - landed}>
                {turn >= 0 ? <ReliefFace relief={relief} /> : <ReliefBack relief={relief} />}
            </g>
        </>
    );
}

function HalfBoard({ half }: { half: HalfView }) {
    return (
        <>
            <rect class="shadow" x={half.width * 0.004} y={half.width * 0.006} width={half.width} height={half.height} />
            <rect width={half.width} height={half.height} fill={url(woodId(half.blank, half.colour))} />
            <rect class="edge" width={half.width} height={half.height} fill="none" />
        </>
    );
}

/** Face up: wood stands where it is wanted, bare foil everywhere else that was burnt. */
function ReliefFace({ relief }: { relief: HalfView }) {
    return (
        <>
            <rect class="foil" width={relief.width} height={relief.height} />
            {relief.frame !== undefined && (
                <use href={`#${pathId(relief.frame)}`} fill={url(woodId(relief.blank, relief.colour))} />
            )}
            <use href={`#${pathId(relief.path)}`} fill={url(woodId(relief.blank, relief.colour))} />
            <use href={`#${pathId(relief.path)}`} class="seam" fill="none" />
            <Marks half={relief} />
        </>
    );
}

/** Face down: the foil is on top and what stands is only a trace through it. */
function ReliefBack({ relief }: { relief: HalfView }) {
    return (
        <>
            <rect class="foil back" width={relief.width} height={relief.height} />
            <use href={`#${pathId(relief.path)}`} class="trace" fill={relief.colour} fill-opacity="0.35" />
            <Marks half={relief} />
        </>
    );
}

/** The marks lie upon each other once the halves meet, so one of them is enough to draw then. */
function Marks({ half }: { half: HalfView }) {
    if (half.marks === undefined) return null;
    return <use href={`#${pathId(half.marks)}`} class="registration" fill={half.burnt} stroke={half.burnt} />;
}

function Meeting({ meeting, relief, shown }: { meeting: InlayView['meeting']; relief: HalfView; shown: number }) {
    if (shown === 0) return null;
    return (
        <g opacity={shown}>
            <use href={`#${pathId(meeting.fits)}`} fill={url(woodId(relief.blank, relief.colour))} />
            <use href={`#${pathId(meeting.empty)}`} fill={url('hatch-empty-mm')} />
            <use href={`#${pathId(meeting.collides)}`} class="meeting-clash" fill={url('hatch-clash-mm')} />
        </g>
    );
}

function MeetingKey({ burnt }: { burnt: string }) {
    return (
        <ul class="key">
            <li>
                <svg width="22" height="12" aria-hidden="true" focusable="false">
                    <rect class="key-fits" width="22" height="12" />
                </svg>
                fits
            </li>
            <li>
                <svg width="22" height="12" aria-hidden="true" focusable="false">
                    <rect width="22" height="12" fill={url('hatch-clash')} class="meeting-clash" />
                </svg>
                no room: wood lands on wood
            </li>
            <li>
                <svg width="22" height="12" aria-hidden="true" focusable="false">
                    <rect width="22" height="12" fill={burnt} />
                    <rect width="22" height="12" fill={url('hatch-empty')} />
                </svg>
                stays empty
            </li>
        </ul>
    );
}

/** Middle of a shape's bounds, mm, as the browser measures it. */
function useMiddle(path: string): { x: number; y: number } {
    const [middle, setMiddle] = useState({ x: 0, y: 0 });
    const measured = useRef('');
    useLayoutEffect(() => {
        const shape = document.getElementById(pathId(path));
        const data = shape?.getAttribute('d') ?? '';
        if (!(shape instanceof SVGGraphicsElement) || measured.current === data) return;
        measured.current = data;
        const box = shape.getBBox();
        setMiddle({ x: box.x + box.width / 2, y: box.y + box.height / 2 });
    });
    return middle;
}
