import type { LangiumDocument } from 'langium';
import type { MeasuredCoupon } from '../../shared/recipe/stock';
import { isNewer } from '../edition';
import { type Coupon, isCoupon, isFile } from '../generated/ast';
import { couponOf, laserOf, sheetOf } from './stock';

/** A coupon with the laser and the sheet it names; undefined where one of them leads nowhere. */
export function measuredCouponOf(node: Coupon): MeasuredCoupon | undefined {
    const coupon = couponOf(node);
    const laser = node.laser?.ref;
    const sheet = node.sheet?.ref;
    if (coupon === undefined || laser === undefined || sheet === undefined) return undefined;
    return { coupon, laser: laserOf(laser), sheet: sheetOf(sheet) };
}

/** The coupons of a linked document as plain data. */
export function lowerCoupons(document: LangiumDocument): MeasuredCoupon[] {
    const file = document.parseResult.value;
    return isFile(file) && !isNewer(document)
        ? file.entries.filter(isCoupon).flatMap((coupon) => measuredCouponOf(coupon) ?? [])
        : [];
}
