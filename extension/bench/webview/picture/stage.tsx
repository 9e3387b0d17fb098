import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { BenchView, BlankView, FrameView, PieceView, SectionView, StepView } from '../../../../shared/view/bench-view';
import { Round } from '../round/round';
import type { RoundAsker } from '../round/round-asker';
import { Section } from '../section/section';
import { type BenchState, piecesOf, stepOf } from '../state';
import { Toolpath } from '../toolpath/toolpath';
import { HideLayers } from './hide-layers';
import { Layers } from './layers';
import { LiesHere } from './lies-here';
import { Picture } from './picture';
import { hideableOn, type Shown } from './shown';
import { place, type Size, type Window } from './zoom';

interface StageProps {
    readonly view: BenchView;
    readonly frame: FrameView;
    readonly frameIndex: number;
    readonly piece: PieceView;
    readonly blank: BlankView;
    readonly cut: number | undefined;
    readonly toolpath: BenchState['toolpath'];
    readonly cutSection: SectionView | undefined;
    readonly window: Window;
    readonly look: (window: Window) => void;
    readonly moveCut: (y: number) => void;
    readonly place: BenchState['place'];
    readonly lies: BenchState['lies'];
    readonly hover: (x: number, y: number) => void;
    readonly pointAt: (x: number, y: number) => void;
    readonly chooseBlank: (blank: string) => void;
    readonly hidden: readonly Shown[];
    readonly hide: (what: Shown, isHidden: boolean) => void;
    readonly rounds: RoundAsker;
}

/** The chosen frame: one of its pieces, large, and the section through it. */
export function Stage(props: StageProps) {
    const { view, frame, frameIndex, piece, blank, cut, cutSection, window } = props;
    const stage = useRef<HTMLDivElement>(null);
    const screen = useScreen(stage);
    // While the answer for a moved line is on its way, the section last seen stays.
    const section = cut === undefined ? piece.section : (cutSection ?? piece.section);
    const all = view.frames.flatMap(({ pieces }) =>
        pieces.filter((each) => each.blank === blank.name).map((each) => each.section),
    );
    return (
        <div id="piece-panel" class="stage" role="tabpanel" aria-labelledby={`frame-${frameIndex}`} ref={stage}>
            <Pieces pieces={piecesOf(frame)} chosen={piece.blank} choose={props.chooseBlank} />
            <Picture
                view={view}
                blank={blank}
                piece={piece}
                step={stepOf(view, frame)}
                cut={cut ?? piece.section.y}
                window={window}
                look={props.look}
                moveCut={props.moveCut}
                lies={props.lies}
                hover={props.hover}
                pointAt={props.pointAt}
                hidden={props.hidden}
            />
            <HideLayers
                there={hideableOn(
                    piece,
                    view.findings.filter(({ spots }) => spots.some((spot) => spot.blank === blank.name)).length,
                )}
                hidden={props.hidden}
                hide={props.hide}
            />
            <LiesHere blank={blank} place={props.place} lies={props.lies} pointAt={props.pointAt} />
            <Layers piece={piece} blank={blank} textVersion={view.textVersion} />
            {view.blanks.some(({ figure }) => figure !== undefined) && (
                <p class="quiet grain-note">
                    The grain in all pictures is drawn by rule, in its direction and size: it is not that of this board.
                </p>
            )}
            {section.width > 0 && (
                <Section
                    blank={blank}
                    section={section}
                    all={[...all, section]}
                    placing={place(window, blank, screen)}
                    screen={screen}
                    depth={depthOf(view, stepOf(view, frame), blank.name)}
                />
            )}
            {blank.width > 0 && (
                <Round
                    view={view}
                    frameIndex={frameIndex}
                    blank={blank}
                    section={section}
                    rounds={props.rounds}
                    hidden={props.hidden}
                />
            )}
            <Toolpath key={frame.step} view={view} step={stepOf(view, frame)} answer={props.toolpath} />
        </div>
    );
}

function depthOf(view: BenchView, step: StepView | undefined, blank: string) {
    const fact = step?.facts.find(({ label }) => label === 'depth');
    if (step === undefined || step.blank !== blank || fact?.where === undefined || fact.written === undefined) return undefined;
    return { name: step.title, written: { where: fact.where, text: fact.written }, textVersion: view.textVersion };
}

interface PiecesProps {
    readonly pieces: readonly PieceView[];
    readonly chosen: string;
    readonly choose: (blank: string) => void;
}

function Pieces({ pieces, chosen, choose }: PiecesProps) {
    if (pieces.length < 2) return null;
    return (
        <fieldset class="pieces">
            <legend>Piece</legend>
            {pieces.map(({ blank }) => (
                <label key={blank}>
                    <input type="radio" name="piece" checked={blank === chosen} onChange={() => choose(blank)} />
                    {blank}
                </label>
            ))}
        </fieldset>
    );
}

/** The size of the picture in the stage, by which the section keeps in line with it. */
function useScreen(stage: { readonly current: HTMLDivElement | null }): Size {
    const [screen, setScreen] = useState<Size>({ width: 640, height: 360 });
    useLayoutEffect(() => {
        const picture = stage.current?.querySelector('.picture > svg');
        if (!picture) return;
        const observer = new ResizeObserver(() => {
            const { width, height } = picture.getBoundingClientRect();
            if (width > 0 && height > 0) setScreen({ width, height });
        });
        observer.observe(picture);
        return () => observer.disconnect();
    }, [stage]);
    return screen;
}
