import { type URI, UriUtils } from 'langium';
import { openRows } from '../../language/coupon/open-rows';
import { isBurn } from '../../language/generated/ast';
import { decodeText } from '../engine/decode-text';
import type { FileReader } from '../files/read-result';
import { placeOfCoupon } from '../writing/made-of';
import type { CouponStock } from './find-stock';

/** What was made of a coupon so far. */
export interface MadeSquares {
    /** Recipe texts that lie with the files of the coupon and of squares that joined it, the newest first. */
    readonly texts: readonly string[];
    /** The greatest number that is burnt on a square, strip or plug, or written beside one that may be. */
    readonly last: number;
}

/** @param below as in placeOfCoupon */
export async function madeSquares(stock: CouponStock, read: FileReader, below?: URI): Promise<MadeSquares> {
    const { coupon } = stock;
    const rows = coupon?.items.filter(isBurn).length ?? 0;
    const texts: string[] = [];
    let last = Math.max(rows, ...burntIn(coupon?.$cstNode?.text ?? ''));
    // Later squares have numbers behind those before them, so that no folder is missed.
    for (let from = 1; from <= last + 1; from++) {
        const text = await textOf(placeOfCoupon(stock, below, from === 1 ? undefined : from).folder, read);
        if (text === undefined) continue;
        texts.unshift(text);
        last = Math.max(last, ...burntIn(text));
    }
    return { texts, last };
}

/** Numbers of squares, whether they are measured or not. */
function numbersIn(text: string): number[] {
    return [...text.matchAll(/\/\/[ \t]*square[ \t]+(\d{1,4})\b/g)].map(([, number]) => Number(number));
}

/** Those of strips and plugs too, which are numbered on from the squares of their sheet: `strip 9`, `plugs 5 to 9`, `plug 14 went in, 15 did not`. */
function burntIn(text: string): number[] {
    const parts = text.matchAll(/\/\/[ \t]*(?:strip|plugs?)[ \t]+(\d{1,4})\b(?:[ \t]+(?:to|went in,)[ \t]+(\d{1,4})\b)?/g);
    return [...numbersIn(text), ...[...parts].flatMap(([, first, second]) => [Number(first), Number(second ?? first)])];
}

/** Squares of these texts that are not in the coupon yet, by number. */
export function waitingIn({ coupon }: CouponStock, texts: readonly string[]): number[] {
    const measured = new Set(numbersIn(coupon?.$cstNode?.text ?? ''));
    const open = texts.flatMap((text) => openRows(text).flatMap(({ number }) => number ?? []));
    return [...new Set(open)].filter((number) => !measured.has(number)).toSorted((a, b) => a - b);
}

async function textOf(folder: URI, read: FileReader): Promise<string | undefined> {
    const found = await read(UriUtils.joinPath(folder, 'coupon.kerf').toString());
    const decoded = 'bytes' in found ? decodeText(found.bytes) : undefined;
    return decoded !== undefined && 'text' in decoded ? decoded.text : undefined;
}
