import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { showNumber, showTime } from '../../../../shared/quantity/show';
import type { BenchView, BlankView, StepView } from '../../../../shared/view/bench-view';
import type { ToolpathView } from '../../../../shared/view/toolpath-view';
import { editor } from '../editor-link';
import type { BenchState } from '../state';
import { useSize } from '../use-size';
import { useTheme } from '../use-theme';
import { type DoseRange, doseRange, drawWays, lines, slowBelow, slowShare, type WayShown } from './toolpath-drawing';
import { momentAt } from './toolpath-moment';

interface ToolpathProps {
    readonly view: BenchView;
    readonly step: StepView | undefined;
    readonly answer: BenchState['toolpath'];
}

/** The machine's way through the chosen laser step, in order and by time. Worked out only when somebody wants to see it. */
export function Toolpath({ view, step, answer }: ToolpathProps) {
    if (step === undefined || !(step.kind === 'engrave' || step.kind === 'cut') || !(step.machine > 0)) return null;
    const ask = () => editor.postMessage({ type: 'toolpath', step: step.index });
    const shown = answer?.view?.step === step.index ? answer.view : undefined;
    const blank = view.blanks.find(({ name }) => name === shown?.blank);
    return (
        <section class="toolpath" aria-label={`Toolpath of ${step.title}`}>
            <h2>Toolpath: {step.title}</h2>
            {(shown === undefined || answer?.text !== view.textVersion) && (
                <p class="turning">
                    <button type="button" onClick={ask}>
                        {shown === undefined ? 'Show the toolpath' : 'Bring up to date'}
                    </button>
                    {shown !== undefined && <span class="quiet"> It is of an earlier text.</span>}
                </p>
            )}
            {shown !== undefined && blank !== undefined && <Replay toolpath={shown} blank={blank} />}
        </section>
    );
}

function Replay({ toolpath, blank }: { toolpath: ToolpathView; blank: BlankView }) {
    const [time, setTime] = useState(toolpath.total);
    const at = Math.min(time, toolpath.total);
    const moment = momentAt(toolpath, at);
    const range = useMemo(() => doseRange(toolpath), [toolpath]);
    const slow = useMemo(() => slowShare(toolpath), [toolpath]);
    const [hidden, setHidden] = useState<readonly WayShown[]>([]);
    const hide = (what: WayShown, isHidden: boolean) =>
        setHidden([...hidden.filter((each) => each !== what), ...(isHidden ? [what] : [])]);
    const said = range === undefined ? '' : ` ${doseWords(range)} ${slowWords(slow)}`;
    const { words } = moment;
    const canvas = useRef<HTMLCanvasElement>(null);
    const { width } = useSize(canvas);
    const theme = useTheme();
    const height = Math.min(420, (width * blank.height) / Math.max(blank.width, 1));
    useLayoutEffect(() => {
        const target = canvas.current;
        if (target === null) return;
        const dense = devicePixelRatio || 1;
        target.width = Math.round(width * dense);
        target.height = Math.round(height * dense);
        const pen = target.getContext('2d');
        if (pen === null) return;
        pen.scale(dense, dense);
        const scale = Math.min((width - 16) / Math.max(blank.width, 1), (height - 16) / Math.max(blank.height, 1));
        const style = getComputedStyle(target);
        drawWays(
            pen,
            toolpath,
            moment,
            { ink: style.color, mark: style.getPropertyValue('outline-color'), range, hidden },
            {
                scale,
                shiftX: (width - blank.width * scale) / 2,
                shiftY: (height - blank.height * scale) / 2,
                width: blank.width,
                height: blank.height,
            },
        );
    }, [toolpath, at, width, height, blank.width, blank.height, theme, hidden, range]);
    return (
        <>
            <canvas
                ref={canvas}
                style={{ height: `${height}px` }}
                role="img"
                aria-label={`The way of the head. ${words}.${said}`}
            />
            <div class="turning">
                <input
                    type="range"
                    min="0"
                    max={toolpath.total}
                    step={toolpath.total / 1000 || 1}
                    value={at}
                    aria-label="Time into the step"
                    aria-valuetext={words}
                    onInput={(event) => setTime(Number((event.currentTarget as HTMLInputElement).value))}
                />
                <output>{words}</output>
            </div>
            <ul class="key">
                {(['scan', 'outline', 'cut', 'travel', 'slow'] as const)
                    .filter((kind) => isThere(toolpath, kind, slow))
                    .map((kind) => (
                        <li key={kind}>
                            <label>
                                <input
                                    type="checkbox"
                                    checked={!hidden.includes(kind)}
                                    onChange={({ currentTarget }) => hide(kind, !currentTarget.checked)}
                                />
                                <Sample kind={kind} />
                                {kind === 'slow' ? `below ${slowBelow * 10} % of the set speed` : kind}
                            </label>
                        </li>
                    ))}
                {range !== undefined && range.most > range.least * 1.02 && (
                    <li key="dose">
                        <span class="doses" aria-hidden="true" />
                        {doseWords(range)}
                    </li>
                )}
                <li key="total">{showTime(toolpath.total)} in all</li>
            </ul>
            <p class="quiet">{slowWords(slow)}</p>
        </>
    );
}

function isThere({ works }: ToolpathView, kind: WayShown, slow: number): boolean {
    if (kind === 'slow') return slow > 0;
    return kind === 'travel' || works.some((work) => work.kind === kind);
}

function Sample({ kind }: { kind: WayShown }) {
    const line = kind === 'slow' ? undefined : lines[kind];
    return (
        <svg width="26" height="10" aria-hidden="true" focusable="false">
            <path
                class={line === undefined ? 'way slow' : 'way'}
                stroke-width={line === undefined ? 6 : line.width * 1.3}
                stroke-dasharray={line?.dash.join(' ') ?? ''}
                d="M1 5H25"
            />
        </svg>
    );
}

/** `The stronger the line, the more energy: 0.8 to 2.4 J/mm2 in all passes.` */
function doseWords({ least, most }: DoseRange): string {
    const show = (dose: number) => showNumber(dose, dose < 1 ? 2 : 1);
    const range = most > least * 1.02 ? `${show(least)} to ${show(most)}` : show(most);
    return `The stronger the line, the more energy: ${range} J/mm² in all passes.`;
}

function slowWords(slow: number): string {
    if (slow === 0) return 'The head holds its set speed wherever it burns.';
    return `On ${showNumber(Math.max(0.1, 100 * slow), 1)} % of the burnt way the head is slower than ${slowBelow * 10} % of its set speed.`;
}
