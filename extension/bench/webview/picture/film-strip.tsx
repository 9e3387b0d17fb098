import { useEffect, useRef } from 'preact/hooks';
import { showTime } from '../../../../shared/quantity/show';
import type { BenchView, FrameView, StepView } from '../../../../shared/view/bench-view';
import { Countdown } from '../countdown';
import { marks } from '../notes/findings';
import { countBySeverity } from '../notes/group-findings';
import type { RunState } from '../run';
import { frameKeys, piecesOf, stepOf } from '../state';
import { still } from '../still';
import { Piece } from './piece';
import { useOverflow } from './use-overflow';

interface FilmStripProps {
    readonly view: BenchView;
    readonly chosen: number;
    readonly lit: number | undefined;
    readonly run: RunState;
    readonly choose: (key: string) => void;
}

/** The piece after each step, in a row: tabs of which one is open below. */
export function FilmStrip({ view, chosen, lit, run, choose }: FilmStripProps) {
    const keys = frameKeys(view);
    const strip = useRef<HTMLDivElement>(null);
    const overflow = useOverflow(strip, keys.length);
    useEffect(() => {
        if (strip.current !== null) bringAlong(strip.current);
    }, [keys[chosen]]);

    const turn = (event: KeyboardEvent) => {
        const to = { ArrowRight: chosen + 1, ArrowLeft: chosen - 1, Home: 0, End: keys.length - 1 }[event.key];
        const key = to === undefined ? undefined : keys[to];
        if (key === undefined || to === undefined) return;
        event.preventDefault();
        choose(key);
        (strip.current?.children[to] as HTMLElement | undefined)?.focus();
    };

    // By most of what can be seen, so that the eye keeps its place.
    const turnOn = (way: -1 | 1) => strip.current?.scrollBy({ left: way * 0.8 * strip.current.clientWidth });

    return (
        <div class={`film-row${overflow.before ? ' more-before' : ''}${overflow.after ? ' more-after' : ''}`}>
            {/* For the pointer alone: the arrow keys turn from frame to frame. */}
            {overflow.before && (
                <button type="button" class="on before" tabIndex={-1} aria-hidden="true" onClick={() => turnOn(-1)}>
                    ‹
                </button>
            )}
            <div class="film" role="tablist" aria-label="Film strip: the piece after each step" ref={strip} onKeyDown={turn}>
                {view.frames.map((frame, index) => {
                    const key = keys[index]!;
                    const step = stepOf(view, frame);
                    return (
                        <button
                            type="button"
                            key={key}
                            class={classOf(step, lit, run)}
                            role="tab"
                            id={`frame-${index}`}
                            aria-selected={index === chosen}
                            aria-controls="piece-panel"
                            tabIndex={index === chosen ? 0 : -1}
                            onClick={() => choose(key)}
                        >
                            <FramePicture blanks={view.blanks} frame={frame} />
                            <Badges view={view} step={step} run={run} />
                            <span class="frame-number">
                                {step !== undefined && <span class="hidden">After step </span>}
                                {step === undefined ? '' : step.index + 1}
                            </span>
                            <span class="frame-title">{step?.title ?? 'Before the first step'}</span>
                            <span class="frame-note">
                                {step !== undefined && run.ends.has(step.index) ? (
                                    <Countdown ends={run.ends.get(step.index)!} />
                                ) : (
                                    noteOf(step)
                                )}
                            </span>
                            <span class="frame-side">{sidesOf(frame, step)}</span>
                            <span class="hidden">{hintOf(view, step, lit, run)}</span>
                        </button>
                    );
                })}
            </div>
            {overflow.after && (
                <button type="button" class="on after" tabIndex={-1} aria-hidden="true" onClick={() => turnOn(1)}>
                    ›
                </button>
            )}
        </div>
    );
}

function classOf(step: StepView | undefined, lit: number | undefined, run: RunState): string {
    if (step === undefined) return 'frame';
    const marks = [
        step.index === lit ? 'lit' : '',
        step.kind === 'wait' ? 'of-wait' : '',
        run.done.has(step.index) ? 'done' : '',
        step.index === run.now ? 'now' : '',
    ];
    return ['frame', ...marks.filter((mark) => mark !== '')].join(' ');
}

/** Signs over the picture; in words they stand in the hint. */
function Badges({ view, step, run }: { view: BenchView; step: StepView | undefined; run: RunState }) {
    if (step === undefined) return null;
    const worst = countBySeverity(view.findings.filter((finding) => finding.step === step.index))[0];
    const isMirrored = step.facts.some(({ label }) => label === 'mirror');
    return (
        <span class="badges" aria-hidden="true">
            {run.done.has(step.index) && <span class="badge done">✓</span>}
            {step.index === run.now && <span class="badge now">now</span>}
            {isMirrored && (
                <span class="badge" title="mirrored">
                    ⇋
                </span>
            )}
            {worst !== undefined && <span class={`badge ${worst[0]}`}>{marks[worst[0]]}</span>}
        </span>
    );
}

/** The strip fades at its ends for so long, px: nothing that was chosen lies there. */
const FADE = 40;

/** Scrolls the strip, and only the strip, until the chosen frame is in sight: the page stays where it is. */
function bringAlong(strip: HTMLElement): void {
    const chosen = strip.querySelector('[aria-selected="true"]');
    if (chosen === null) return;
    const [frame, sight] = [chosen.getBoundingClientRect(), strip.getBoundingClientRect()];
    if (frame.left < sight.left + FADE) strip.scrollLeft += frame.left - sight.left - FADE;
    else if (frame.right > sight.right - FADE) strip.scrollLeft += frame.right - sight.right + FADE;
}

/** What the picture and the nib over the frame say, in words. */
function hintOf(view: BenchView, step: StepView | undefined, lit: number | undefined, run: RunState): string {
    if (step === undefined) return '';
    const findings = view.findings.filter((finding) => finding.step === step.index).length;
    const count = findings === 0 ? '' : `, ${findings} ${findings === 1 ? 'finding' : 'findings'}`;
    const mirrored = step.facts.some(({ label }) => label === 'mirror') ? ', mirrored' : '';
    const done = run.done.has(step.index) ? ', done' : step.index === run.now ? ', next' : '';
    return `${count}${mirrored}${done}${step.index === lit ? ', under the cursor' : ''}`;
}

/** A wait changes nothing to be seen, so its length stands in for it. */
function noteOf(step: StepView | undefined): string {
    if (step === undefined) return '';
    if (step.unplanned !== undefined) return 'not planned';
    const time = step.waiting > 0 ? step.waiting : step.machine > 0 ? step.machine : step.attended;
    return time > 0 ? `${showTime(time)}${step.waiting > 0 ? ' wait' : ''}` : '';
}

/** Which face is up of the piece that was worked on, where it is turned over at some time. */
function sidesOf({ pieces }: FrameView, step: StepView | undefined): string {
    const turned = pieces.filter(({ side, gone }) => side !== undefined && !gone);
    const piece = turned.find(({ blank }) => blank === step?.blank) ?? turned[0];
    return piece === undefined ? '' : `${piece.side} up`;
}

const GAP = 14; // mm between pieces

const FramePicture = still(({ blanks, frame }: Pick<BenchView, 'blanks'> & { readonly frame: FrameView }) => {
    const pieces = piecesOf(frame).flatMap((piece) => {
        const blank = blanks.find(({ name }) => name === piece.blank);
        return blank === undefined || blank.width <= 0 || blank.height <= 0 ? [] : [{ piece, blank }];
    });
    // The same scale in every frame, so that a piece does not grow when the other one is used up.
    const height = Math.max(1, ...blanks.map((blank) => blank.height));
    const all = blanks.reduce((sum, blank) => sum + blank.width, 0) + GAP * Math.max(0, blanks.length - 1);
    const shown = pieces.reduce((sum, { blank }) => sum + blank.width, 0) + GAP * Math.max(0, pieces.length - 1);
    let x = (all - shown) / 2;
    return (
        <svg class="frame-picture" viewBox={`-3 -3 ${Math.max(all, 1) + 6} ${height + 6}`} aria-hidden="true" focusable="false">
            {pieces.map(({ piece, blank }) => {
                const at = `translate(${x} ${(height - blank.height) / 2})`;
                x += blank.width + GAP;
                return (
                    <g key={blank.name} transform={at}>
                        <Piece blank={blank} piece={piece} blanks={blanks} relief={false} />
                    </g>
                );
            })}
        </svg>
    );
});
