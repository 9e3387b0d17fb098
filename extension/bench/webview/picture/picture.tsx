import { useMemo } from 'preact/hooks';
import { fromBase, toBase } from '../../../../shared/quantity/quantity';
import { showLength } from '../../../../shared/quantity/show';
import type { BenchView, BlankView, PieceView, StepView } from '../../../../shared/view/bench-view';
import { describePiece } from '../describe';
import { pathId } from '../ids';
import { CutLine } from '../section/cut-line';
import { ArtGrip } from './art-grip';
import { Canvas } from './canvas';
import { Piece } from './piece';
import { Rings } from './rings';
import { RulerLine } from './ruler-line';
import { type Shown, shownWords, withoutHidden } from './shown';
import { RulerButton, RulerWords, useRuler } from './use-ruler';
import type { Placing, Size, Window } from './zoom';

interface PictureProps {
    readonly view: BenchView;
    readonly blank: BlankView;
    readonly piece: PieceView;
    /** The step just done. */
    readonly step: StepView | undefined;
    /** Where the section is cut, mm from the top. */
    readonly cut: number;
    readonly window: Window;
    readonly look: (window: Window) => void;
    readonly moveCut: (y: number) => void;
    /** The place of which it is said what lies there, mm. */
    readonly lies: { readonly x: number; readonly y: number } | undefined;
    readonly hover: (x: number, y: number) => void;
    readonly pointAt: (x: number, y: number) => void;
    readonly hidden: readonly Shown[];
}

/** The chosen piece, large. */
export function Picture(props: PictureProps) {
    const { view, blank, step, cut, window, look, moveCut, lies, hover, pointAt, hidden } = props;
    const piece = useMemo(() => withoutHidden(props.piece, hidden), [props.piece, hidden]);
    const ruling = useRuler(blank);
    const { ruler } = ruling;
    const shows = (what: Shown) => !hidden.includes(what);
    const left = hidden.length === 0 ? '' : ` Left out: ${hidden.map((what) => shownWords[what]).join(', ')}.`;
    return (
        <>
            <Canvas
                label={`Picture of ${describePiece(blank, piece)}${left} Plus and minus zoom, arrow keys move, zero shows the whole, M measures.`}
                class="picture"
                drawing={ruling.drawing}
                tools={<RulerButton isOn={ruling.isOn} turn={ruling.turn} />}
                ownKey={(key) => {
                    if (key === 'Escape' && ruling.isOn) ruling.away();
                    else if (key === 'm' || key === 'M') ruling.turn();
                    else return false;
                    return true;
                }}
                piece={blank}
                window={window}
                look={look}
                hover={hover}
                tap={pointAt}
                over={(placing, screen) => (
                    <>
                        {shows('sizes') && <Sizes blank={blank} placing={placing} cut={cut} />}
                        <ScaleBar placing={placing} screen={screen} unit={blank.unit ?? 'mm'} />
                        {shows('sizes') && <CutLine blank={blank} y={cut} placing={placing} screen={screen} move={moveCut} />}
                        {step?.movable !== undefined && step.blank === blank.name && step.movable.where.uri === view.uri && (
                            <ArtGrip
                                movable={step.movable}
                                path={piece.layers.find((layer) => layer.step === step.index)?.path}
                                placing={placing}
                                textVersion={view.textVersion}
                            />
                        )}
                        {lies !== undefined && <Cross place={lies} placing={placing} />}
                        {shows('findings') && (
                            <Rings
                                findings={view.findings}
                                blank={blank.name}
                                placing={placing}
                                isUp={({ step: at }) => sideAt(view, at, blank.name, piece.side) === piece.side}
                            />
                        )}
                        {ruler !== undefined && (
                            <RulerLine ruler={ruler} unit={blank.unit ?? 'mm'} piece={blank} placing={placing} lay={ruling.lay} />
                        )}
                    </>
                )}
            >
                {() => (
                    <>
                        <Shadow blank={blank} outline={piece.outline} />
                        <Piece blank={blank} piece={piece} blanks={view.blanks} relief />
                    </>
                )}
            </Canvas>
            {ruling.isOn && <RulerWords ruler={ruler} unit={blank.unit} away={ruling.away} />}
        </>
    );
}

/** Which face of a blank is up after a step; the one that is shown where nothing says. */
function sideAt({ frames }: BenchView, step: number | undefined, blank: string, shown: PieceView['side']): PieceView['side'] {
    const frame = frames.find((each) => each.step === step);
    return frame?.pieces.find((each) => each.blank === blank)?.side ?? shown;
}

/** Marks the place of which it is said what lies there. */
function Cross({ place: { x, y }, placing }: { place: { readonly x: number; readonly y: number }; placing: Placing }) {
    const path = `M${placing.shiftX + x * placing.scale} ${placing.shiftY + y * placing.scale}m-7 0h14m-7 -7v14`;
    return (
        <g class="cross">
            <path class="under" d={path} />
            <path d={path} />
        </g>
    );
}

/** Width and height of the blank along its edges, as on a workshop drawing. */
function Sizes({ blank, placing, cut }: { blank: BlankView; placing: Placing; cut: number }) {
    const { scale, shiftX, shiftY } = placing;
    const width = blank.width * scale;
    const height = blank.height * scale;
    // The section line ends beside the height's dimension line: its figure keeps out of the way.
    const middle = Math.abs(cut * scale - height / 2) < 34 ? height / 4 : height / 2;
    return (
        <g class="dimension">
            <path d={`M${shiftX} ${shiftY - 14}h${width}M${shiftX} ${shiftY - 19}v10M${shiftX + width} ${shiftY - 19}v10`} />
            <text x={shiftX + width / 2} y={shiftY - 18}>
                {showLength(blank.width, blank.unit)}
            </text>
            <path d={`M${shiftX - 14} ${shiftY}v${height}M${shiftX - 19} ${shiftY}h10M${shiftX - 19} ${shiftY + height}h10`} />
            <text transform={`translate(${shiftX - 18} ${shiftY + middle}) rotate(-90)`}>
                {showLength(blank.height, blank.unit)}
            </text>
        </g>
    );
}

/** What is left of the piece lies on the bench; the waste around it is gone. */
function Shadow({ blank: { width, height }, outline }: { blank: BlankView; outline: PieceView['outline'] }) {
    const off = `translate(${width * 0.004} ${height * 0.008})`;
    return outline === undefined ? (
        <rect class="shadow" transform={off} width={width} height={height} />
    ) : (
        <use class="shadow" transform={off} href={`#${pathId(outline)}`} />
    );
}

/** A length to compare with, once the edges may be out of sight. */
function ScaleBar({ placing, screen, unit }: { placing: Placing; screen: Size; unit: string }) {
    const length = toBase(roundBelow(fromBase(90 / placing.scale, unit)), unit) ?? 0;
    const px = length * placing.scale;
    const y = screen.height - 12;
    return (
        <g class="dimension scale-bar">
            <rect x="4" y={y - 15} width={px + 78} height="22" rx="4" />
            <path d={`M12 ${y - 4}v4h${px}v-4`} />
            <text x={12 + px + 6} y={y} class="start">
                {showLength(length, unit)}
            </text>
        </g>
    );
}

/** The largest of 1, 2, 5, 10, 20 … that is not above a figure. */
function roundBelow(figure: number): number {
    const size = 10 ** Math.floor(Math.log10(figure));
    return [5, 2, 1].map((times) => times * size).find((round) => round <= figure) ?? size;
}
