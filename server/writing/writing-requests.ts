import { type LangiumDocument, type URI, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { BuildAnswer, WritingAnswer, WritingOptions } from '../../shared/view/protocol';
import { type Request, requests } from '../../shared/view/requests';
import { findStock } from '../coupon/find-stock';
import { makeCoupon } from '../coupon/make-coupon';
import type { FileReader } from '../files/read-result';
import { onRequest } from '../protocol/on-request';
import type { Workshop } from '../workshop/workshop';
import { buildFiles } from './build-files';
import { CannotWrite } from './cannot-write';
import { type MadePlace, placeOfCoupon, placeOfRecipe, stillOwns } from './made-of';
import type { OpenStore } from './store';
import { buttonWays, tellReport } from './tell-report';
import { writeMade } from './write-made';
import { writeNew } from './write-new';

/** Answers what the editor asks to have written. An editor asks only where the maker trusts the workspace. */
export function answerWritingRequests(connection: Connection, workshop: Workshop, read: FileReader, openStore: OpenStore): void {
    const answer = <Params extends { readonly uri: string }>(
        request: Request<Params, WritingAnswer | null>,
        work: (document: LangiumDocument, params: Params) => Promise<WritingAnswer | null>,
    ): void => {
        onRequest(connection, request, async (params, token) => {
            const document = await workshop.linked(params.uri, token);
            return document === undefined ? null : work(document, params);
        });
    };
    const put = async (place: MadePlace, { files, problems }: BuildAnswer, wish: WritingOptions): Promise<WritingAnswer> => {
        const folder = place.folder.toString();
        const nothing = { folder, written: 0, incomplete: true, kept: false, stale: false };
        if (files.length === 0) return { ...nothing, problems };
        try {
            const owns = (other: typeof place.owner): Promise<boolean> => stillOwns(other, place.folder, read);
            const report = await writeMade(openStore(folder), place.owner, files, {
                force: wish.force === true,
                clean: wish.clean === true,
                owns,
            });
            return {
                folder,
                written: report.written.length,
                problems: [...problems, ...tellReport(report, (path) => path, buttonWays)],
                incomplete: problems.length > 0,
                kept: report.beside.length + report.filledIn.length > 0,
                stale: report.stale.length > 0,
            };
        } catch (error) {
            if (error instanceof CannotWrite) return { ...nothing, problems: [error.message] };
            throw error;
        }
    };
    answer(requests.writeRecipe, async (document, params) => {
        const recipe = workshop.recipe(document, params.recipe);
        if (recipe === undefined) return null;
        return put(placeOfRecipe(document, recipe.name), await buildFiles(workshop, document, recipe), params);
    });
    answer(requests.writeCoupon, async (document, params) => {
        const stock = findStock(workshop, [document], params.sheet, params.laser);
        if ('problem' in stock)
            return {
                folder: folderBeside(document).toString(),
                written: 0,
                problems: [stock.problem],
                incomplete: true,
                kept: false,
                stale: false,
            };
        const place = placeOfCoupon(stock);
        const { cuts, fits, next } = params;
        const options = { next, ...(cuts !== undefined && { cuts }), ...(fits !== undefined && { fits }) };
        const made = await makeCoupon(workshop, stock, { folder: place.folder, read }, options);
        if (made.files.length === 0) return put(place, { ...made, problems: [...made.problems, ...made.notes] }, params);
        return { ...(await put(placeOfCoupon(stock, undefined, made.from), made, params)), notes: made.notes };
    });
    const plainly = async (work: () => Promise<void>): Promise<string | null> => {
        try {
            await work();
            return null;
        } catch (error) {
            if (error instanceof CannotWrite) return error.message;
            throw error;
        }
    };
    onRequest(connection, requests.writeNew, ({ folder, files }) => plainly(() => writeNew(openStore(folder), files)));
    onRequest(connection, requests.mayHold, ({ folder }) => plainly(async () => void (await openStore(folder).look('any'))));
}

function folderBeside(document: LangiumDocument): URI {
    return UriUtils.joinPath(document.uri, '..', 'made');
}
