import { useEffect, useRef } from 'preact/hooks';
import { showTime } from '../../../../shared/quantity/show';
import type { BenchView, FrameView, StepView } from '../../../../shared/view/bench-view';
import { frameKeys, piecesOf, stepOf } from '../state';
import { still } from '../still';
import { Piece } from './piece';

interface FilmStripProps {
    readonly view: BenchView;
    readonly chosen: number;
    readonly lit: number | undefined;
    readonly choose: (key: string) => void;
}

/** The piece after each step, in a row: tabs of which one is open below. */
export function FilmStrip({ view, chosen, lit, choose }: FilmStripProps) {
    const keys = frameKeys(view);
    const strip = useRef<HTMLDivElement>(null);
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

    return (
        <div class="film" role="tablist" aria-label="Film strip: the piece after each step" ref={strip} onKeyDown={turn}>
            {view.frames.map((frame, index) => {
                const key = keys[index]!;
                const step = stepOf(view, frame);
                return (
                    <button
                        type="button"
                        key={key}
                        class={`frame${step !== undefined && step.index === lit ? ' lit' : ''}`}
                        role="tab"
                        id={`frame-${index}`}
                        aria-selected={index === chosen}
                        aria-controls="piece-panel"
                        tabIndex={index === chosen ? 0 : -1}
                        onClick={() => choose(key)}
                    >
                        <FramePicture blanks={view.blanks} frame={frame} />
                        <span class="frame-number">
                            {step !== undefined && <span class="hidden">After step </span>}
                            {step === undefined ? '' : step.index + 1}
                        </span>
                        <span class="frame-title">{step?.title ?? 'Before the first step'}</span>
                        <span class="frame-note">{noteOf(step)}</span>
                        <span class="hidden">{hintOf(view, step, lit)}</span>
                    </button>
                );
            })}
        </div>
    );
}

/** Scrolls the strip, and only the strip, until the chosen frame is in sight: the page stays where it is. */
function bringAlong(strip: HTMLElement): void {
    const chosen = strip.querySelector('[aria-selected="true"]');
    if (chosen === null) return;
    const [frame, sight] = [chosen.getBoundingClientRect(), strip.getBoundingClientRect()];
    if (frame.left < sight.left) strip.scrollLeft += frame.left - sight.left;
    else if (frame.right > sight.right) strip.scrollLeft += frame.right - sight.right;
}

/** What the picture and the nib over the frame say, in words. */
function hintOf(view: BenchView, step: StepView | undefined, lit: number | undefined): string {
    if (step === undefined) return '';
    const findings = view.findings.filter((finding) => finding.step === step.index).length;
    const count = findings === 0 ? '' : `, ${findings} ${findings === 1 ? 'finding' : 'findings'}`;
    return `${count}${step.index === lit ? ', under the cursor' : ''}`;
}

/** A wait changes nothing to be seen, so its length stands in for it. */
function noteOf(step: StepView | undefined): string {
    if (step === undefined) return '';
    if (step.unplanned !== undefined) return 'not planned';
    const time = step.waiting > 0 ? step.waiting : step.machine > 0 ? step.machine : step.attended;
    return time > 0 ? `${showTime(time)}${step.waiting > 0 ? ' wait' : ''}` : '';
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
