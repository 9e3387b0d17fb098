import type { HalfView, InlayView } from '../../../../shared/view/bench-view';
import { pathId, url, woodId } from '../ids';
import type { Pose } from '../picture/turning';

export interface HalvesProps {
    readonly inlay: InlayView;
    readonly pose: Pose;
    readonly whole: { readonly height: number };
    /** Between the two, mm. */
    readonly gap: number;
}

/** How much of the meeting is to be seen: before the turning too where it will not do. */
export function shownOf({ good }: InlayView, { landed, foretold }: Pose): number {
    return good ? landed : Math.max(landed, foretold);
}

/** The pocket's board, the relief beside it or on its way over, and what meets what. In mm. */
export function Halves({ inlay, pose, whole, gap }: HalvesProps) {
    const { relief, pocket, meeting } = inlay;
    const { way, landed } = pose;
    const turn = inlay.faceUp ? 1 : pose.turn;
    const pocketY = (whole.height - pocket.height) / 2;
    const reliefX = pocket.width + gap;
    const reliefY = (whole.height - relief.height) / 2;
    // The art's middle is what comes to lie over the pocket's middle, and it is turned about its own.
    const from = { x: reliefX + relief.middle.x, y: reliefY + relief.middle.y };
    const to = { x: pocket.middle.x, y: pocketY + pocket.middle.y };
    const x = from.x + (to.x - from.x) * way;
    const y = from.y + (to.y - from.y) * way;
    return (
        <>
            <g transform={`translate(0 ${pocketY})`}>
                <HalfBoard half={pocket} />
                <use href={`#${pathId(pocket.path)}`} fill={pocket.burnt} />
                <Marks half={pocket} />
                <Meeting meeting={meeting} relief={relief} shown={shownOf(inlay, pose)} />
            </g>
            <g
                transform={`translate(${x} ${y}) scale(${turn} 1) translate(${-relief.middle.x} ${-relief.middle.y})`}
                opacity={1 - landed}
            >
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
