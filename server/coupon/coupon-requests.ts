import { AstUtils, CstUtils, type LangiumDocument, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import { measuredEdits } from '../../language/coupon/measured';
import { readDepth } from '../../language/coupon/read-depth';
import { isBurn, isCoupon } from '../../language/generated/ast';
import { stockInSight } from '../../language/names/stock-in-sight';
import { type Message, phrase } from '../../shared/recipe/phrase';
import { couponFolder } from '../../shared/sheets/made-folder';
import type { CouponChoices, MeasuredParams } from '../../shared/view/coupon-protocol';
import type { WrittenAnswer } from '../../shared/view/protocol';
import { type Request, requests } from '../../shared/view/requests';
import type { FileReader } from '../files/read-result';
import { onRequest } from '../protocol/on-request';
import type { Workshop } from '../workshop/workshop';
import { placeOfCoupon } from '../writing/made-of';
import { type CouponStock, findStock, homeOfCoupon } from './find-stock';
import { madeSquares } from './made-squares';
import { makeCoupon } from './make-coupon';
import { type OpenSquares, openSquares } from './squares';

/** Answers what the editor asks to make a coupon and to write down what was measured on it. */
export function answerCouponRequests(connection: Connection, workshop: Workshop, read: FileReader): void {
    const answer = <Params extends { readonly uri: string }, Answer>(
        request: Request<Params, Answer | null>,
        work: (document: LangiumDocument, params: Params) => Answer | Promise<Answer>,
    ): void => {
        onRequest(connection, request, async (params, token) => {
            const document = await workshop.linked(params.uri, token);
            return document === undefined ? null : work(document, params);
        });
    };
    answer(requests.couponChoices, (document, { offset }) => choices(workshop, document, offset));
    answer(requests.coupon, async (document, { sheet, laser }) => {
        const stock = findStock(workshop, [document], sheet, laser);
        if ('problem' in stock) return { folder: couponFolder(sheet, laser), files: [], problems: [stock.problem] };
        const { folder } = placeOfCoupon(stock);
        return { folder: UriUtils.basename(folder), ...(await makeCoupon(workshop, stock, { folder, read })) };
    });
    answer(requests.squares, async (document, { sheet, laser, made }) => {
        const stock = findStock(workshop, [document], sheet, laser);
        const found = 'problem' in stock ? stock : await openSquaresOf(workshop, stock, made, read);
        return 'problem' in found ? found : { squares: found.squares };
    });
    answer(requests.measured, (document, params) => measured(workshop, document, params, read));
    onRequest(connection, requests.readDepth, ({ text }) => readDepth(text, workshop.services));
}

/** The squares that wait to be measured: of the text that is given, else of the newest that lies with the coupon's files and has some left. */
async function openSquaresOf(
    workshop: Workshop,
    stock: CouponStock,
    made: string | undefined,
    read: FileReader,
): Promise<OpenSquares | { readonly problem: Message }> {
    if (made !== undefined) return openSquares(workshop, stock, made);
    const { texts } = await madeSquares(stock, read);
    for (const text of texts) {
        const found = await openSquares(workshop, stock, text);
        if (!('problem' in found)) return found;
    }
    return openSquares(workshop, stock, texts.at(-1));
}

function choices({ services }: Workshop, document: LangiumDocument, offset: number | undefined): CouponChoices {
    const { sheets, lasers, coupons } = stockInSight(document, services);
    const root = document.parseResult.value.$cstNode;
    const leaf = root && offset !== undefined ? CstUtils.findLeafNodeBeforeOffset(root, offset) : undefined;
    const here = leaf && AstUtils.getContainerOfType(leaf.astNode, isCoupon);
    const named = coupons.flatMap((coupon) => {
        const sheet = coupon.sheet?.ref?.name;
        const laser = coupon.laser?.ref?.name;
        return sheet === undefined || laser === undefined
            ? []
            : [{ coupon, sheet, laser, rows: coupon.items.filter(isBurn).length }];
    });
    const at = named.find(({ coupon }) => coupon === here);
    return {
        sheets: sheets.map(({ name }) => name),
        lasers: lasers.map(({ name }) => name),
        coupons: named.map(({ sheet, laser, rows }) => ({ sheet, laser, rows })),
        ...(at === undefined ? {} : { here: { sheet: at.sheet, laser: at.laser } }),
    };
}

/** Nothing is written that the language would not read as it was meant: every row is read again first. */
async function measured(
    workshop: Workshop,
    document: LangiumDocument,
    params: MeasuredParams,
    read: FileReader,
): Promise<WrittenAnswer> {
    const stock = findStock(workshop, [document], params.sheet, params.laser);
    if ('problem' in stock) return stock;
    const open = await openSquaresOf(workshop, stock, params.made, read);
    if ('problem' in open) return open;
    const rows = [];
    for (const { words, depth } of params.rows) {
        const read = readDepth(depth, workshop.services);
        if ('problem' in read) return read;
        const square = open.squares.find((each) => each.words === words);
        if (square === undefined) return { problem: phrase`There is no square “${words}” to be measured.` };
        rows.push({ ...square, depth: read.depth });
    }
    const home = homeOfCoupon(workshop, stock);
    if (isBuiltIn(home.uri.toString())) return { problem: phrase`The built-in stock cannot be written to.` };
    const coupon = { sheet: stock.sheet.name, laser: stock.laser.name, pitch: open.pitch };
    return {
        uri: home.uri.toString(),
        version: home.textDocument.version,
        edits: measuredEdits(home, stock.coupon, coupon, rows),
    };
}
