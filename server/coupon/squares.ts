import { blockInText, pitchOfBlock } from '../../language/coupon/block-pitch';
import { type OpenRow, openRows } from '../../language/coupon/open-rows';
import { type Coupon, isBurn } from '../../language/generated/ast';
import { laserOf, sheetOf } from '../../language/lowering/stock';
import { burnWords } from '../../language/printing/coupon-block';
import { spotOf } from '../../shared/burn/beam';
import { pitchForSpot } from '../../shared/burn/pitch';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { OpenSquare } from '../../shared/view/coupon-protocol';
import type { Workshop } from '../workshop/workshop';
import type { CouponStock } from './find-stock';
import { pitchText, squareText, usualPitch } from './make-coupon';

/** Squares that wait to be measured, and the pitch that they were burnt with as it is written. */
export interface OpenSquares {
    readonly squares: readonly OpenSquare[];
    readonly pitch: string;
}

/**
 * What was burnt and is not measured yet: the open rows of the coupon's block; else those of `made`, the
 * text that was written with the coupon's files; else the squares of a coupon laid out anew.
 */
export async function openSquares(
    workshop: Workshop,
    stock: CouponStock,
    made: string | undefined,
): Promise<OpenSquares | { readonly problem: Message }> {
    const found = await burntSquares(workshop, stock, made);
    if ('problem' in found) return found;
    const done = new Set((stock.coupon?.items ?? []).filter(isBurn).map((burn) => stripMeasured(burn.$cstNode?.text ?? '')));
    const squares = found.squares.filter(({ words }) => !done.has(stripMeasured(words)));
    return squares.length === 0 ? { problem: phrase`Every square of this coupon is measured.` } : { squares, pitch: found.pitch };
}

/** A row without its depth and its blanks. */
function stripMeasured(row: string): string {
    return row.replace(/\bgives\b.*$/s, '').replaceAll(/\s+/g, '');
}

async function burntSquares(
    workshop: Workshop,
    stock: CouponStock,
    made: string | undefined,
): Promise<OpenSquares | { readonly problem: Message }> {
    const { sheet, laser, coupon } = stock;
    const machine = laserOf(laser);
    const pitch = coupon && pitchOf(coupon, pitchForSpot(spotOf(machine)));
    const open = openRows(coupon?.$cstNode?.text ?? '').map(toSquare);
    if (open.length > 0 && pitch !== undefined) return { squares: open, pitch: pitch.text };
    const burnt = ofFile() ?? (await layOut());
    if ('problem' in burnt || pitch === undefined || Math.abs(burnt.mm - pitch.mm) < 1e-6) return burnt;
    return {
        problem: phrase`The squares were burnt with a pitch of ${burnt.pitch}, the coupon in the text is one of ${pitch.text}: rows of both cannot stand in one block.`,
    };

    function ofFile(): (OpenSquares & { mm: number }) | undefined {
        const block = made === undefined ? undefined : blockInText(made, workshop.services);
        const squares = openRows(block?.$cstNode?.text ?? '').map(toSquare);
        const written = block && pitchOf(block, undefined);
        return written === undefined || squares.length === 0 ? undefined : { squares, pitch: written.text, mm: written.mm };
    }

    async function layOut(): Promise<(OpenSquares & { mm: number }) | { readonly problem: Message }> {
        const asked = { do: 'coupon-layout', material: sheetOf(sheet), laser: machine, options: usualPitch(stock) } as const;
        const layout = await workshop.ask(asked);
        if ('problem' in layout) return layout;
        const squares = layout.squares.map((square) => ({ words: burnWords(squareText(square)), number: square.number }));
        return { squares, pitch: pitchText(layout.pitch), mm: layout.pitch };
    }
}

function toSquare({ words, number }: OpenRow): OpenSquare {
    return number === undefined ? { words } : { words, number };
}

/** A block that says no pitch was burnt with the one that the spot wants. */
function pitchOf(block: Coupon, usual: number | undefined): { text: string; mm: number } | undefined {
    const written = pitchOfBlock(block);
    if (written !== undefined) return { text: written.text, mm: written.quantity.value };
    return usual === undefined ? undefined : { text: pitchText(usual), mm: usual };
}
