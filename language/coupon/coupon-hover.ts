import { type AstNode, AstUtils } from 'langium';
import { fromBase } from '../../shared/quantity/quantity';
import { showLength, showNumber } from '../../shared/quantity/show';
import type { CouponFit } from '../../shared/view/coupon-fit';
import { type Burn, type Coupon, type CutTest, isBurn, isCoupon, isCutTest } from '../generated/ast';
import { measuredCouponOf } from '../lowering/coupons';
import { whereOf } from '../lowering/places';
import { quantityOf } from '../lowering/quantity';
import { kerfOf } from '../lowering/stock';
import type { OutsideServices } from '../outside';

/** More outliers than these are no outliers. */
const mostNamed = 6;

/**
 * What the measured squares of a coupon say, as Markdown: for a place in its first line the fit, for one in a
 * row that row's residual. Undefined anywhere else, and where the coupon's laser or board is not known.
 */
export async function couponHover(node: AstNode, outside: OutsideServices): Promise<string | undefined> {
    const cut = AstUtils.getContainerOfType(node, isCutTest);
    const tried = cut && [describeStrip(cut), describeFits(cut)].filter((line) => line !== undefined);
    if (tried !== undefined && tried.length > 0) return tried.join('\n\n');
    const coupon = AstUtils.getContainerOfType(node, isCoupon);
    const measured = coupon && measuredCouponOf(coupon);
    if (coupon === undefined || measured === undefined) return undefined;
    const burn = AstUtils.getContainerOfType(node, isBurn);
    if (burn === undefined && node !== coupon) return undefined;
    const fit = await outside.couponFit(measured);
    if (fit === undefined) return undefined;
    return burn === undefined ? describeFit(coupon, fit) : describeRow(burn, fit);
}

/** What a strip that was cut out says of the kerf. */
function describeStrip(cut: CutTest): string | undefined {
    if (cut.strip === undefined) return undefined;
    const { kerf, back } = kerfOf(cut);
    if (kerf === undefined) return undefined;
    const behind = back === undefined ? '' : `, ${showLength(back.value, back.unit)} on the back`;
    return `Kerf of this cut: ${showLength(kerf.value, kerf.unit)} on the face${behind}.`;
}

/** What a clearance ladder says of cuts like this one. */
function describeFits({ fits }: CutTest): string | undefined {
    const larger = quantityOf(fits);
    if (larger === undefined) return undefined;
    return `A part that is drawn ${showLength(larger.value, larger.unit)} larger than its opening all round still goes in, where the beam follows both lines.`;
}

function describeFit(coupon: Coupon, { facts, notes, squares }: CouponFit): string {
    const lines = facts.map(({ label, value }) => `- ${label}: ${value}`);
    const burns = new Map(coupon.items.filter(isBurn).map((burn) => [whereOf(burn).offset, burn]));
    const outliers = squares.flatMap(({ offset, outlier, fitted }) => {
        const burn = burns.get(offset ?? -1);
        if (!outlier || burn === undefined) return [];
        const text = (burn.$cstNode?.text ?? '').replaceAll(/\s+/g, ' ');
        return [`- \`${text}\`: by the others ${showLength(fitted, unitOf(burn))}`];
    });
    const named = outliers.length === 0 ? [] : ['Outliers:', outliers.slice(0, mostNamed).join('\n')];
    return ['Fit of its squares, ± one standard error:', lines.join('\n'), ...notes, ...named].join('\n\n');
}

function describeRow(burn: Burn, { squares }: CouponFit): string | undefined {
    const { offset } = whereOf(burn);
    const row = squares.find((each) => each.offset === offset);
    if (row === undefined) return undefined;
    const unit = unitOf(burn);
    const over = row.residual >= 0 ? 'deeper' : 'shallower';
    const lines = [
        `- dose: ${showNumber(row.dose, 2)} J/mm²${row.passes > 1 ? ' a pass' : ''}`,
        `- by the fit: ${showLength(row.fitted, unit)}`,
        `- measured: ${residualText(Math.abs(row.residual), unit)} ${over}`,
    ];
    if (row.studentised !== undefined) {
        const far = `${showNumber(Math.abs(row.studentised), 1)} standard errors from what the others say`;
        lines.push(`- ${far}${row.outlier ? ': an outlier' : ''}`);
    }
    return lines.join('\n');
}

function unitOf(burn: Burn): string {
    return quantityOf(burn.depth)?.unit ?? 'mm';
}

/** One digit more than a depth has, since it is the small difference of two. */
function residualText(mm: number, unit: string): string {
    return `${showNumber(fromBase(mm, unit), unit === 'mm' ? 3 : 4)} ${unit}`;
}
