import { useState } from 'preact/hooks';
import type { BenchView, InlayView } from '../../../../shared/view/bench-view';
import { url } from '../ids';
import { Canvas } from '../picture/canvas';
import { poseAt } from '../picture/turning';
import { useTurning } from '../picture/use-turning';
import { type Window, wholeWindow } from '../picture/zoom';
import { Halves } from './halves';
import { HalvesLabels } from './halves-labels';

interface InlayProps {
    readonly view: BenchView;
    readonly inlay: InlayView;
}

/** Both halves of an inlay as they lie under the laser, the turning over, and what meets what. */
export function Inlay({ view, inlay }: InlayProps) {
    const { at, scrub, play, playing } = useTurning();
    const [window, look] = useState<Window>(wholeWindow);
    const pose = poseAt(at);
    const { relief, pocket } = inlay;
    const gap = Math.max(pocket.width, relief.width) * 0.08;
    const whole = { width: pocket.width + gap + relief.width, height: Math.max(pocket.height, relief.height) };
    if (whole.height <= 0 || relief.width <= 0 || pocket.width <= 0) return null;
    const title = view.steps.find(({ index }) => index === inlay.step)?.title ?? 'Inlay';
    return (
        <section class="inlay" aria-label={title}>
            <h2 id={`inlay-${inlay.step}-heading`}>Both halves: {title}</h2>
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
                over={(placing) => <HalvesLabels inlay={inlay} pose={pose} whole={whole} gap={gap} placing={placing} />}
            >
                {({ scale }) => (
                    <>
                        <ScaledHatches scale={scale} />
                        <Halves inlay={inlay} pose={pose} whole={whole} gap={gap} />
                    </>
                )}
            </Canvas>
            <div class="turning">
                <button type="button" onClick={play} disabled={playing}>
                    {at < 1 ? (inlay.faceUp ? 'Lay in' : 'Turn over and lay in') : 'Take apart'}
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
