import type { Face } from '../piece/face';
import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import type { BenchView } from '../view/bench-view';
import { makeBenchView } from '../view/make-bench-view';
import { PathTable } from '../view/path-table';
import { sectionView } from '../view/section-view';
import type { Comparison, Version } from './compare-plans';
import { type PieceDifference, pieceDifference } from './piece-difference';
import type { ArtReview, StepReview } from './review';

/** What a review is drawn from: plain data. Lengths in mm, y points down. */
export interface ReviewPictures {
    /** Both film strips; frames point into `paths`. */
    readonly before: BenchView;
    readonly after: BenchView;
    readonly paths: Readonly<Record<string, string>>;
    /** The moments at which the two are set beside each other. */
    readonly rows: readonly FilmRow[];
    readonly art: readonly ArtPicture[];
}

export interface FilmRow {
    /** The step just done; absent for the blanks before the first. */
    readonly step?: StepReview;
    /** Indexes into the frames of either strip; absent where that version has no such step. */
    readonly before?: number;
    readonly after?: number;
    readonly differs: readonly DifferenceView[];
}

export interface DifferenceView extends Omit<PieceDifference, 'region'> {
    /** Id of the path to be marked; absent when the piece differs as a whole. */
    readonly path?: string;
}

export interface ArtPicture {
    readonly review: ArtReview;
    readonly width: number;
    readonly height: number;
    /** Ids of paths. */
    readonly gained: string;
    readonly lost: string;
    readonly kept: string;
}

/** The pictures of a comparison. */
export function reviewPictures(
    before: Version,
    after: Version,
    { review, matches, art }: Comparison,
    memo: Memo,
): ReviewPictures {
    const views = [before, after].map(({ plan, findings }) => makeBenchView(plan, findings, unnamed, memo));
    const table = new PathTable();
    const steps = new Map(
        matches.flatMap(({ before: a, after: b }) => (a === undefined || b === undefined ? [] : [[a, b] as const])),
    );
    const start: FilmRow = { before: 0, after: 0, differs: differences(before.plan.faces[0]!, after.plan.faces[0]!) };
    function differences(old: readonly Face[], now: readonly Face[]): DifferenceView[] {
        return blankNames(before.plan, after.plan).flatMap((blank) => {
            const is = (face: Face): boolean => face.blank === blank;
            const found = pieceDifference(
                { plan: before.plan, face: old.find(is) },
                { plan: after.plan, face: now.find(is) },
                steps,
                memo,
            );
            if (found === undefined) return [];
            const { region, ...rest } = found;
            return [region.rings.length === 0 ? rest : { ...rest, path: table.idOf(region) }];
        });
    }
    const rows = review.steps.map((step, index): FilmRow => {
        const match = matches[index]!;
        const old = match.before === undefined ? undefined : match.before + 1;
        const now = match.after === undefined ? undefined : match.after + 1;
        return {
            step,
            ...(old === undefined ? {} : { before: old }),
            ...(now === undefined ? {} : { after: now }),
            differs: old === undefined || now === undefined ? [] : differences(before.plan.faces[old]!, after.plan.faces[now]!),
        };
    });
    const pictures = art.map(({ review: of, page, gained, lost, kept }) => ({
        review: of,
        ...page,
        gained: table.idOf(gained),
        lost: table.idOf(lost),
        kept: table.idOf(kept),
    }));
    const second = views[1]!;
    const first = cutAlike(views[0]!, second, before.plan);
    return {
        before: first,
        after: second,
        paths: { ...first.paths, ...second.paths, ...table.paths },
        rows: [start, ...rows],
        art: pictures,
    };
}

/** The earlier pieces cut where the later ones are, so that the sections can be compared. */
function cutAlike(view: BenchView, like: BenchView, plan: Plan): BenchView {
    const cuts = new Map((like.frames[0]?.pieces ?? []).map(({ blank, section }) => [blank, section.y]));
    const frames = view.frames.map((frame, index) => ({
        ...frame,
        pieces: frame.pieces.map((piece) => {
            const y = cuts.get(piece.blank);
            const face = plan.faces[index]?.find(({ blank }) => blank === piece.blank);
            const blank = plan.blanks.find(({ name }) => name === piece.blank);
            return y === undefined || face === undefined || blank === undefined
                ? piece
                : { ...piece, section: sectionView(plan, face, blank, y) };
        }),
    }));
    return { ...view, frames };
}

/** The views here stand in no editor. */
const unnamed = { uri: '', textVersion: 0, recipes: [] };

function blankNames(before: Plan, after: Plan): string[] {
    return [...new Set([...after.blanks, ...before.blanks].map(({ name }) => name))];
}
