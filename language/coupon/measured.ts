import type { LangiumDocument } from 'langium';
import { atEnd } from '../editing/at-end';
import { editsOf, type SpanEdit } from '../editing/text-edits';
import { isNewer } from '../edition';
import type { Coupon } from '../generated/ast';
import { whereOf } from '../lowering/places';
import { burnRow, type CouponText, couponBlock } from '../printing/coupon-block';
import { openRows } from './open-rows';

/** One measured square, as they are written: `burn 40 % at 400 mm/s` and `0.09 mm`; and the number burnt beside it, if it is known. */
export interface MeasuredRow {
    readonly words: string;
    readonly depth: string;
    readonly number?: number;
}

/**
 * The edits that write measured squares into a file: an open row of the block becomes a row where it
 * stands, others are added at the block's end, and where there is no block it is made at the file's end.
 * The squares' numbers stand behind as comments, except in a block on one line, where they would hide what follows.
 * @param block the coupon's block in this document, if it has one
 */
export function measuredEdits(
    document: LangiumDocument,
    block: Coupon | undefined,
    coupon: CouponText,
    rows: readonly MeasuredRow[],
): SpanEdit[] {
    const text = document.textDocument.getText();
    if (rows.length === 0 || isNewer(document)) return [];
    if (block === undefined) return [newBlock(text, coupon, rows)];
    const where = whereOf(block);
    const open = openRows(text, where.offset, where.offset + where.length);
    const edits: SpanEdit[] = [];
    const added: string[] = [];
    const written = text.slice(where.offset, where.offset + where.length);
    const onLines = written.includes('\n') && written.endsWith('}');
    for (const { words, depth, number } of rows) {
        const at = open.findIndex((row) => row.words === words);
        const [row] = at < 0 ? [] : open.splice(at, 1);
        if (row === undefined) added.push(burnRow(words, depth, onLines ? number : undefined));
        else edits.push({ offset: row.offset, length: row.length, text: burnRow(words, depth, number ?? row.number) });
    }
    if (added.length > 0) edits.push(...editsOf({ do: 'add', block: where, statement: added.join('\n') }, text));
    return edits;
}

function newBlock(text: string, coupon: CouponText, rows: readonly MeasuredRow[]): SpanEdit {
    const block = couponBlock(
        coupon,
        rows.map(({ words, depth, number }) => burnRow(words, depth, number)),
    );
    return atEnd(text, block);
}
