import type { Quantity } from '../../shared/quantity/quantity';
import { type Coupon, type Figure, isCoupon, isFigure, isFile } from '../generated/ast';
import { quantityOf } from '../lowering/quantity';
import type { KerfServices } from '../services';
import { isLine } from '../vocabulary/lookup';

/** The pitch of a coupon block as it is written and as it is meant; undefined where it says none. */
export function pitchOfBlock(block: Coupon): { readonly text: string; readonly quantity: Quantity } | undefined {
    const figure = block.items.find((item): item is Figure => isFigure(item) && isLine(item, 'pitch'));
    const quantity = quantityOf(figure?.value);
    const text = figure?.value.$cstNode?.text;
    return quantity === undefined || text === undefined ? undefined : { text, quantity };
}

/** The first coupon block in a text that belongs to no document, such as a file that was written for the bench. */
export function blockInText(text: string, services: KerfServices): Coupon | undefined {
    const file = services.parser.LangiumParser.parse(text).value;
    return isFile(file) ? file.entries.find(isCoupon) : undefined;
}
