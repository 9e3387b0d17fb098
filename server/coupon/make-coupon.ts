import { AstUtils, type URI, UriUtils } from 'langium';
import { pitchOfBlock } from '../../language/coupon/block-pitch';
import { couponOf, laserOf, sheetOf } from '../../language/lowering/stock';
import { type LadderText, openCouponFile, type SquareText } from '../../language/printing/coupon-block';
import type { CouponOptions, CouponSheet, CouponSquare } from '../../shared/burn/coupon-sheet';
import { showNumber } from '../../shared/quantity/show';
import type { BuildAnswer, BuiltFile } from '../../shared/view/protocol';
import type { Workshop } from '../workshop/workshop';
import type { CouponStock } from './find-stock';

/** The files of a coupon that are to lie in `folder`; what people write into is marked, so that it is never written over. */
export async function makeCoupon(
    workshop: Workshop,
    stock: CouponStock,
    folder: URI,
    options: CouponOptions = {},
): Promise<BuildAnswer> {
    const material = sheetOf(stock.sheet);
    const laser = laserOf(stock.laser);
    const layout = await workshop.ask({
        do: 'coupon-layout',
        material,
        laser,
        options: { ...usualPitch(stock), ...withTests(stock, options) },
    });
    if ('problem' in layout) return { files: [], problems: [layout.problem] };
    const { files, problems } = await workshop.ask({ do: 'coupon-sheets', material, laser, layout });
    const coupon = { sheet: material.name, laser: laser.name, pitch: pitchText(layout.pitch) };
    const block: BuiltFile = {
        path: 'coupon.kerf',
        text: openCouponFile(coupon, layout.squares.map(squareText), usesFrom(folder, stock), {
            strips: (layout.strips ?? []).map((strip) => ({ ...squareText(strip), drawn: `${showNumber(strip.drawn)} mm` })),
            ladder: ladderText(layout),
        }),
        note: 'the coupon as recipe text, depths left open',
        fillIn: true,
    };
    return { files: [...files.map((file) => (file.path === 'coupon.csv' ? { ...file, fillIn: true } : file)), block], problems };
}

/** Plugs are cut with what the cut tests that are there say. */
function withTests({ coupon }: CouponStock, options: CouponOptions): CouponOptions {
    const measured = options.fits === undefined || coupon === undefined ? undefined : couponOf(coupon);
    return { ...options, ...(measured !== undefined && { measured }) };
}

function ladderText({ ladder }: CouponSheet): LadderText | undefined {
    if (ladder === undefined) return undefined;
    const [first, last] = [ladder.plugs[0]!.number, ladder.plugs.at(-1)!.number];
    return { ...squareText({ number: first, ...ladder.settings }), first, last };
}

/** New rows can join a coupon that is there only if they are burnt with its pitch. */
export function usualPitch({ coupon }: CouponStock): Pick<CouponOptions, 'pitch'> {
    const pitch = coupon && pitchOfBlock(coupon)?.quantity.value;
    return pitch === undefined ? {} : { pitch };
}

export function squareText({
    number,
    powerRatio,
    speed,
    passes,
}: Pick<CouponSquare, 'number' | 'powerRatio' | 'speed' | 'passes'>): SquareText {
    return { number, power: `${showNumber(powerRatio * 100, 3)} %`, speed: `${showNumber(speed, 3)} mm/s`, passes };
}

export function pitchText(mm: number): string {
    return `${showNumber(mm, 4)} mm`;
}

/** Paths by which a file in that folder uses the files that declare the board and the laser. */
function usesFrom(folder: URI, { sheet, laser }: CouponStock): string[] {
    const declared = [sheet, laser].map((node) => AstUtils.getDocument(node).uri);
    return [...new Set(declared.map((uri) => UriUtils.relative(folder, uri)))];
}
