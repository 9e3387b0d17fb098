import { Fragment } from 'preact';
import { useRef } from 'preact/hooks';
import type { BenchView } from '../../../shared/view/bench-view';
import { Banners } from './banners';
import { Contents } from './contents';
import { Header } from './header';
import { Inlay } from './inlay/inlay';
import { Press } from './inlay/press';
import { DayBook } from './notes/day-book';
import { Findings } from './notes/findings';
import { Costs, SheetCuts } from './notes/quantities';
import { Steps } from './notes/steps';
import { Cautions, Supplies } from './notes/supplies';
import { FilmStrip } from './picture/film-strip';
import { Paints } from './picture/paints';
import type { Shown } from './picture/shown';
import { Stage } from './picture/stage';
import type { Window } from './picture/zoom';
import type { RoundAsker } from './round/round-asker';
import { type RunState, runOf } from './run';
import { type BenchState, chosenFrame, chosenPiece, cutOf, frameKeys, stepOf, windowOf } from './state';
import { useStick } from './use-stick';

/** What the maker can do on the page. */
export interface Actions {
    readonly chooseFrame: (key: string) => void;
    readonly chooseBlank: (blank: string) => void;
    readonly look: (blank: string, window: Window) => void;
    readonly moveCut: (blank: string, y: number) => void;
    /** Asks what lies in a place, mm: of the pointer as it passes, or of a place that was chosen. */
    readonly hover: (blank: string, x: number, y: number) => void;
    readonly pointAt: (blank: string, x: number, y: number) => void;
    readonly press: (step: number) => void;
    readonly stopPress: () => void;
    readonly setStart: (start: string) => void;
    readonly hide: (what: Shown, isHidden: boolean) => void;
    readonly rounds: RoundAsker;
}

export function App({ state, actions }: { state: BenchState; actions: Actions }) {
    const { view } = state;
    if (view === undefined) return <p class="empty">{state.trouble ?? 'Working out the recipe …'}</p>;
    const run = runOf(view, state.ticks);
    return (
        <>
            <Paints blanks={view.blanks} paths={view.paths} />
            <Header view={view} run={run} />
            <Banners state={state} stale={view.stale} />
            <Contents view={view} />
            <Frames state={state} view={view} run={run} actions={actions} />
        </>
    );
}

interface FramesProps {
    readonly state: BenchState;
    readonly view: BenchView;
    readonly run: RunState;
    readonly actions: Actions;
}

function Frames({ state, view, run, actions }: FramesProps) {
    const look = useRef<HTMLDivElement>(null);
    useStick(look);
    const index = chosenFrame(state, view);
    const frame = view.frames[index];
    if (frame === undefined) return <p class="empty">This recipe has no steps yet.</p>;
    const keys = frameKeys(view);
    const piece = chosenPiece(state, view, frame);
    const blank = view.blanks.find(({ name }) => name === piece?.blank);
    const step = stepOf(view, frame);
    const chooseStep = (at: number) => {
        const key = keys[view.frames.findIndex((candidate) => candidate.step === at)];
        if (key !== undefined) actions.chooseFrame(key);
    };
    return (
        <>
            <FilmStrip view={view} chosen={index} lit={state.lit} run={run} choose={actions.chooseFrame} />
            <Findings view={view} choose={chooseStep} />
            <div class="bench">
                <div class="look" ref={look}>
                    {piece !== undefined && blank !== undefined && (
                        <Stage
                            view={view}
                            frame={frame}
                            frameIndex={index}
                            piece={piece}
                            blank={blank}
                            toolpath={state.toolpath}
                            cut={cutOf(state, blank.name)}
                            cutSection={state.cutSection?.blank === blank.name ? state.cutSection.section : undefined}
                            window={windowOf(state, blank.name)}
                            look={(window) => actions.look(blank.name, window)}
                            moveCut={(y) => actions.moveCut(blank.name, y)}
                            place={state.place?.blank === blank.name ? state.place : undefined}
                            lies={state.lies?.blank === blank.name ? state.lies : undefined}
                            hover={(x, y) => actions.hover(blank.name, x, y)}
                            pointAt={(x, y) => actions.pointAt(blank.name, x, y)}
                            chooseBlank={actions.chooseBlank}
                            hidden={state.hidden}
                            hide={actions.hide}
                            rounds={actions.rounds}
                        />
                    )}
                    {view.inlays.map((inlay) => (
                        <Fragment key={inlay.step}>
                            <Inlay view={view} inlay={inlay} />
                            <Press
                                view={view}
                                inlay={inlay}
                                state={state.presses[inlay.step]}
                                ask={() => actions.press(inlay.step)}
                                stop={actions.stopPress}
                            />
                        </Fragment>
                    ))}
                </div>
                <div class="notes">
                    <Steps view={view} chosen={step?.index} lit={state.lit} run={run} choose={chooseStep} />
                    <Cautions view={view} />
                    <DayBook view={view} begun={state.start} begin={actions.setStart} choose={chooseStep} />
                    <SheetCuts view={view} />
                    <Supplies view={view} />
                    <Costs view={view} />
                </div>
            </div>
        </>
    );
}
