import { showArea } from '../../quantity/show';
import type { BenchView, PieceView } from '../../view/bench-view';
import type { DifferenceView, FilmRow, ReviewPictures } from '../film-strip';
import { oneLine } from '../one-line';
import { signOf } from '../wording';
import { Board, CrossSection, heightsOf } from './piece';

/** More moments than this are not drawn: a page must still open. */
const mostRows = 150;

/** Both film strips side by side, a row for each step, with what differs marked. */
export function Film({ pictures }: { pictures: ReviewPictures }) {
    const { before, after, rows } = pictures;
    return (
        <>
            <table class="film">
                <thead>
                    <tr>
                        <th scope="col">after the step</th>
                        <th scope="col">before the change</th>
                        <th scope="col">after the change</th>
                    </tr>
                </thead>
                <tbody>
                    {rows.slice(0, mostRows).map((row, index) => (
                        <tr key={String(index)} class={isDifferent(row) ? 'differs' : 'alike'}>
                            <th scope="row">
                                <RowTitle row={row} />
                            </th>
                            <td>
                                <Moment view={before} frame={row.before} row={row} other={piecesAt(after, row.after)} />
                            </td>
                            <td>
                                <Moment view={after} frame={row.after} row={row} other={piecesAt(before, row.before)} />
                            </td>
                        </tr>
                    ))}
                </tbody>
            </table>
            {rows.length > mostRows && <p class="note">{rows.length - mostRows} more steps are not drawn.</p>}
        </>
    );
}

function isDifferent({ differs, before, after }: FilmRow): boolean {
    return differs.length > 0 || before === undefined || after === undefined;
}

function RowTitle({ row: { step, differs } }: { row: FilmRow }) {
    if (step === undefined) return <>Blanks</>;
    return (
        <>
            <span class="sign">{signOf(step.status)} </span>
            {oneLine(step.title)}
            {differs.map((difference) => (
                <div key={difference.blank} class="note">
                    {oneLine(difference.blank)} differs: {inWords(difference)}
                </div>
            ))}
        </>
    );
}

function inWords({ words, area }: DifferenceView): string {
    return `${words.join(', ')}${area > 0 ? `, on ${showArea(area)}` : ''}`;
}

/** The pieces that the step works on, and those that differ. */
function Moment({ view, frame, row, other }: MomentProps) {
    if (frame === undefined) return <p class="note">no such step</p>;
    const worked = frame === 0 ? undefined : view.steps[frame - 1]?.blank;
    const pieces = (view.frames[frame]?.pieces ?? []).filter(
        ({ blank, gone }) =>
            !gone && (row.step === undefined || blank === worked || row.differs.some((difference) => difference.blank === blank)),
    );
    if (pieces.length === 0) return <p class="note">nothing to be seen</p>;
    return (
        <>
            {pieces.map((piece) => {
                const blank = view.blanks.find(({ name }) => name === piece.blank);
                if (blank === undefined) return null;
                const difference = row.differs.find((each) => each.blank === piece.blank);
                const beside = other.find((each) => each.blank === piece.blank);
                const heights = heightsOf(beside === undefined ? [piece.section] : [piece.section, beside.section]);
                return (
                    <figure key={piece.blank}>
                        <Board
                            blank={blank}
                            piece={piece}
                            {...(difference?.path !== undefined && { differing: difference.path })}
                        />
                        <CrossSection section={piece.section} heights={heights} />
                        <figcaption>
                            {oneLine(piece.blank)}
                            {piece.side !== undefined && `, ${piece.side} up`}
                            {difference !== undefined && <strong>: {inWords(difference)}</strong>}
                        </figcaption>
                    </figure>
                );
            })}
        </>
    );
}

interface MomentProps {
    readonly view: BenchView;
    readonly frame: number | undefined;
    readonly row: FilmRow;
    /** The pieces of the other version at the same moment. */
    readonly other: readonly PieceView[];
}

function piecesAt(view: BenchView, frame: number | undefined): readonly PieceView[] {
    return frame === undefined ? [] : (view.frames[frame]?.pieces ?? []);
}
