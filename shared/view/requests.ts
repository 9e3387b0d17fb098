import * as v from 'valibot';
import type { SectionView } from './bench-view';
import {
    type CouponAnswer,
    type CouponChoices,
    couponChoicesParams,
    couponParams,
    type DepthReading,
    measuredParams,
    type SquaresAnswer,
    squaresParams,
    writeCouponParams,
} from './coupon-protocol';
import { type NewRecipeAnswer, type NewRecipeChoices, newRecipeChoicesParams, newRecipeParams } from './new-recipe';
import type { PressView } from './press-view';
import {
    type BuildAnswer,
    benchParams,
    type CheckAnswer,
    type Checklist,
    checkParams,
    columnParams,
    compareParams,
    historyParams,
    insertArtParams,
    type ListAnswer,
    type LookAnswer,
    type PageAnswer,
    pathParams,
    pictureParams,
    plannedParams,
    pressParams,
    putParams,
    type ReadAnswer,
    type RevisionPlacesAnswer,
    type RevisionsAnswer,
    removeParams,
    rewriteParams,
    roundParams,
    seasonParams,
    sectionParams,
    tableParams,
    toolpathParams,
    type WritingAnswer,
    type WrittenAnswer,
    weekParams,
    writeNewParams,
    writeRecipeParams,
} from './protocol';
import { reachedParams } from './reached-protocol';
import type { RoundView } from './round-view';
import type { SentPicture } from './sent-picture';
import { address } from './shapes';
import type { ToolpathView } from './toolpath-view';
import { runParams, type TakenRunAnswer, takeRunParams, type WrittenRunAnswer } from './written-run';

/** A message that is told and not answered: its name and what it says. */
export interface Notification<Params> {
    readonly method: string;
    readonly params: v.GenericSchema<unknown, Params>;
}

/** A question: its name, what may be asked, and what is answered; the last is known to the types alone. */
export interface Request<Params, Answer> extends Notification<Params> {
    readonly answer?: (answer: Answer) => Answer;
}

/** What a request is answered with. */
export type AnswerOf<Asked> = Asked extends Request<never, infer Answer> ? Answer : never;

function request<Answer>() {
    return <Shape extends v.GenericSchema>(name: string, params: Shape): Request<v.InferOutput<Shape>, Answer> => ({
        method: `kerfbook/${name}`,
        params: params as v.GenericSchema<unknown, v.InferOutput<Shape>>,
    });
}

const file = v.object({ uri: address });

/**
 * What an editor asks beyond the language server protocol: one declaration a request, used by both ends, and by the server to
 * refuse what does not fit. Null is answered where there is nothing to say: no such file or recipe, or the work was given up.
 */
export const requests = {
    /** The bench view of a recipe. */
    bench: request<SentPicture | null>()('bench', pictureParams),
    /** The steps to tick. */
    checklist: request<Checklist | null>()('checklist', benchParams),
    /** The files for machine and bench. */
    build: request<BuildAnswer | null>()('build', benchParams),
    /** What a coupon can be made of. */
    couponChoices: request<CouponChoices | null>()('couponChoices', couponChoicesParams),
    /** The files of a coupon. */
    coupon: request<CouponAnswer | null>()('coupon', couponParams),
    /** The squares of a coupon that wait to be measured. */
    squares: request<SquaresAnswer | null>()('squares', squaresParams),
    /** Whether what was typed is a depth. */
    readDepth: request<DepthReading>()('readDepth', v.object({ text: v.string() })),
    /** The edits that write measured squares down. */
    measured: request<WrittenAnswer | null>()('measured', measuredParams),
    /** The edit that writes a finished run below its recipe. */
    run: request<WrittenAnswer | null>()('run', runParams),
    /** What a new recipe can be made of. */
    newRecipeChoices: request<NewRecipeChoices>()('newRecipeChoices', newRecipeChoicesParams),
    /** The files of a new recipe, tried out. */
    newRecipe: request<NewRecipeAnswer>()('newRecipe', newRecipeParams),
    /** The edits that bring art files into a recipe. */
    insertArt: request<WrittenAnswer | null>()('insertArt', insertArtParams),
    /** What is said of all recipe files in a folder. */
    check: request<CheckAnswer>()('check', checkParams),
    /** A section across a blank at another place. */
    section: request<SectionView | null>()('section', sectionParams),
    /** What lies in one place of a blank, in words. */
    column: request<string | null>()('column', columnParams),
    /** A piece in the round; in words why not. */
    round: request<RoundView | string | null>()('round', roundParams),
    /** The head's way through a laser step. */
    toolpath: request<ToolpathView | null>()('toolpath', toolpathParams),
    /** The edits that put a typed number in the place of a written one. */
    rewrite: request<WrittenAnswer | null>()('rewrite', rewriteParams),
    /** The edit that writes down how deep an engraving is after some passes, so that the rest goes on from there. */
    reached: request<WrittenAnswer | null>()('reached', reachedParams),
    /** Both halves of an inlay pressed together. Tells how far it is as progress. */
    press: request<PressView | null>()('press', pressParams),
    /** A file beside an earlier version of it, or beside another file. */
    compare: request<PageAnswer | null>()('compare', compareParams),
    /** Revisions to compare a file with. */
    revisions: request<RevisionsAnswer>()('revisions', file),
    /** Where it shows that revisions of a file stand elsewhere than before. */
    revisionPlaces: request<RevisionPlacesAnswer>()('revisionPlaces', file),
    /** A recipe and all that is based on it, side by side. */
    table: request<PageAnswer | null>()('table', tableParams),
    week: request<PageAnswer | null>()('week', weekParams),
    /** What runs made, spoiled, took and cost. */
    season: request<PageAnswer | null>()('season', seasonParams),
    /** What became of a recipe's runs. */
    history: request<PageAnswer | null>()('history', historyParams),
    /** Writes the files for machine and bench. */
    writeRecipe: request<WritingAnswer | null>()('writeRecipe', writeRecipeParams),
    /** Writes the files of a coupon. */
    writeCoupon: request<WritingAnswer | null>()('writeCoupon', writeCouponParams),
    /** Writes a finished run into a file of its own below the folder of its recipe. */
    writeRun: request<WrittenRunAnswer | null>()('writeRun', runParams),
    /** Puts a run that was written elsewhere beside the others of its recipe. */
    takeRun: request<TakenRunAnswer | null>()('takeRun', takeRunParams),
    /** Writes files that are not there yet, all or none; answers why not, or null. */
    writeNew: request<string | null>()('writeNew', writeNewParams),
    /** Whether a folder may be written to; answers why not, or null. */
    mayHold: request<string | null>()('mayHold', v.object({ folder: address })),
} as const;

/** What the server asks the editor where it has no disk. */
export const editorRequests = {
    /** Bytes of a file as base64, or why not. */
    read: request<ReadAnswer>()('read', file),
    /** What lies in a folder. */
    list: request<ListAnswer>()('list', file),
    /** What lies at a path. */
    look: request<LookAnswer>()('look', pathParams),
    /** Puts all files there or none; answers why not, or null. */
    put: request<string | null>()('put', putParams),
    /** Takes files away; answers why not, or null. */
    remove: request<string | null>()('remove', removeParams),
} as const;

export const notifications = {
    /** A file has been planned anew. */
    planned: { method: 'kerfbook/planned', params: plannedParams } as Notification<v.InferOutput<typeof plannedParams>>,
} as const;
