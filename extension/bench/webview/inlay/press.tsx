import { useState } from 'preact/hooks';
import { showNumber } from '../../../../shared/quantity/show';
import type { BenchView, InlayView } from '../../../../shared/view/bench-view';
import type { PressView } from '../../../../shared/view/press-view';
import { pathId, url } from '../ids';
import { Canvas } from '../picture/canvas';
import { type Window, wholeWindow } from '../picture/zoom';
import type { PressState } from './press-asker';
import { PressSection } from './press-section';

interface PressProps {
    readonly view: BenchView;
    readonly inlay: InlayView;
    readonly state: PressState | undefined;
    readonly ask: () => void;
    readonly stop: () => void;
}

/** The veneer half pressed into its pocket as the beam burns both: where they touch, and how far apart they are elsewhere. */
export function Press({ view, inlay, state, ask, stop }: PressProps) {
    const press = state?.press;
    const isPressing = state?.part !== undefined;
    const title = `Pressed together: ${inlay.relief.blank} into ${inlay.pocket.blank}`;
    return (
        <section class="press" aria-label={title}>
            <h2>{title}</h2>
            <div class="pressing">
                {/* One button, so that the keyboard stays on it whatever it does at the moment. */}
                <button type="button" onClick={isPressing ? stop : ask}>
                    {isPressing ? 'Stop' : press === undefined ? 'Press the halves' : 'Press again'}
                </button>
                {isPressing && <progress value={state.part} max={1} aria-label="Pressing" />}
                {!isPressing && press === undefined && (
                    <span class="quiet">
                        Lays the burnt surfaces of both halves over each other and shows the gap between them.
                    </span>
                )}
            </div>
            {!isPressing && press === null && (
                <p class="quiet">Nothing to show: it was stopped, or settings, spot or thickness are not known.</p>
            )}
            {press && (
                <>
                    <p class={`verdict ${press.good ? 'good' : 'bad'}`} role="status">
                        <span class="mark" aria-hidden="true">
                            {press.good ? '✓' : '✕'}
                        </span>
                        {press.verdict}
                    </p>
                    <GapMap inlay={inlay} press={press} />
                    <GapKey inlay={inlay} press={press} />
                    {press.section !== undefined && (
                        <PressSection
                            section={press.section}
                            boardColour={inlay.pocket.colour}
                            veneer={inlay.relief.colour}
                            unit={view.blanks.find(({ name }) => name === inlay.pocket.blank)?.unit}
                        />
                    )}
                    <ul class="facts">
                        {press.facts.map(({ label, value }) => (
                            <li key={label}>
                                <span class="fact">
                                    <span class="label">{label}</span> <span class="value">{value}</span>
                                </span>
                            </li>
                        ))}
                    </ul>
                </>
            )}
        </section>
    );
}

/** The part of the board that the inlay covers, seen from above, the veneer coloured by the gap under it. */
function GapMap({ inlay, press }: { inlay: InlayView; press: PressView }) {
    const [window, look] = useState<Window>(wholeWindow);
    const { picture } = press;
    const { pocket, meeting } = inlay;
    const rim = Math.max(picture.width, picture.height) * 0.1;
    const piece = { width: picture.width + 2 * rim, height: picture.height + 2 * rim };
    return (
        <Canvas
            label={`The veneer pressed onto the board, coloured by the gap under it. ${press.verdict}`}
            class="gaps"
            piece={piece}
            window={window}
            look={look}
            over={({ scale, shiftX, shiftY }) =>
                press.stops.map(({ x, y }, index) => (
                    <g
                        key={`${x} ${y}`}
                        class="stop"
                        transform={`translate(${shiftX + (x - picture.x + rim) * scale} ${shiftY + (y - picture.y + rim) * scale})`}
                    >
                        <circle r="11" class="under" />
                        <circle r="11" />
                        <text dy="4">{index + 1}</text>
                    </g>
                ))
            }
        >
            {({ scale }) => (
                <>
                    <defs>
                        <pattern
                            id={`hatch-touch-${press.step}`}
                            href="#hatch-clash"
                            patternTransform={`scale(${1 / scale}) rotate(45)`}
                        />
                        <clipPath id={`gap-board-${press.step}`}>
                            <rect width={piece.width} height={piece.height} />
                        </clipPath>
                    </defs>
                    <g clip-path={url(`gap-board-${press.step}`)}>
                        <rect width={piece.width} height={piece.height} fill={pocket.colour} />
                        <g transform={`translate(${rim - picture.x} ${rim - picture.y})`}>
                            <use href={`#${pathId(pocket.path)}`} fill={pocket.burnt} />
                            <image
                                href={picture.href}
                                x={picture.x}
                                y={picture.y}
                                width={picture.width}
                                height={picture.height}
                                preserveAspectRatio="none"
                                class="gap-image"
                            />
                            {!press.good && (
                                <use
                                    href={`#${pathId(meeting.collides)}`}
                                    class="touching"
                                    fill={url(`hatch-touch-${press.step}`)}
                                />
                            )}
                            <use href={`#${pathId(pocket.path)}`} class="mouth" fill="none" />
                            {press.section !== undefined && (
                                <path class="where-cut" d={`M${picture.x - rim} ${press.section.y}h${piece.width}`} />
                            )}
                        </g>
                    </g>
                </>
            )}
        </Canvas>
    );
}

function GapKey({ inlay, press }: { inlay: InlayView; press: PressView }) {
    return (
        <ul class="key gap-key" aria-label="Gap under the veneer">
            {!press.good && (
                <li>
                    <Swatch fill={press.touchColour} hatched />
                    touches: held up here
                </li>
            )}
            {press.scale.map(({ colour, from, to }) => (
                <li key={colour}>
                    <Swatch fill={colour} />
                    {to === undefined
                        ? `over ${showNumber(from)} mm`
                        : from === 0
                          ? `up to ${showNumber(to)} mm`
                          : `${showNumber(from)} to ${showNumber(to)} mm`}
                </li>
            ))}
            <li>
                <Swatch fill={inlay.pocket.burnt} />
                pocket with nothing over it
            </li>
            {press.stops.length > 0 && (
                <li>
                    <svg width="18" height="18" aria-hidden="true" focusable="false">
                        <g class="stop" transform="translate(9 9)">
                            <circle r="8" />
                            <text dy="4">1</text>
                        </g>
                    </svg>
                    what holds it up, tightest first
                </li>
            )}
        </ul>
    );
}

function Swatch({ fill, hatched = false }: { fill: string; hatched?: boolean }) {
    return (
        <svg width="22" height="12" aria-hidden="true" focusable="false">
            <rect class="swatch-edge" width="22" height="12" fill={fill} />
            {hatched && <rect width="22" height="12" fill={url('hatch-clash')} />}
        </svg>
    );
}
