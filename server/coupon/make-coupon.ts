import { AstUtils, type URI, UriUtils } from 'langium';
import { pitchOfBlock } from '../../language/coupon/block-pitch';
import { couponOf, laserOf, sheetOf } from '../../language/lowering/stock';
import { type LadderText, openCouponFile, type SquareText } from '../../language/printing/coupon-block';
import type { CouponOptions, CouponSheet, CouponSquare } from '../../shared/burn/coupon-sheet';
import { showNumber } from '../../shared/quantity/show';
import { type Message, phrase } from '../../shared/recipe/phrase';
import { chosenWords } from '../../shared/sheets/chosen-words';
import type { BuildAnswer, BuiltFile } from '../../shared/view/protocol';
import type { FileReader } from '../files/read-result';
import type { Workshop } from '../workshop/workshop';
import { chosenOptions } from './coupon-aims';
import type { CouponStock } from './find-stock';
import { madeSquares, waitingIn } from './made-squares';

/** What a coupon is made with; `next` chooses squares for what recipes ask for, beside those that are measured. */
export type CouponWish = CouponOptions & { readonly next?: boolean | undefined };

/** Where the files of a coupon are to lie, and how those that lie there are read. */
export interface CouponPlace {
    readonly folder: URI;
    readonly read: FileReader;
    /** The folder in which all folders are made, where it is not the usual one. */
    readonly below?: URI | undefined;
}

/** A coupon's files, and what is to be said of them. */
export interface CouponFiles extends BuildAnswer {
    readonly notes: readonly Message[];
    /** Number of the first square, where they join others: they lie in a folder of their own. */
    readonly from?: number;
}

/** The files of a coupon; what people write into is marked, so that it is never written over. Those of the next squares lie beside those of the coupon. */
export async function makeCoupon(
    workshop: Workshop,
    stock: CouponStock,
    { folder, read, below }: CouponPlace,
    { next, ...options }: CouponWish = {},
): Promise<CouponFiles> {
    const material = sheetOf(stock.sheet);
    const laser = laserOf(stock.laser);
    const made = next === true ? await madeSquares(stock, read, below) : undefined;
    const chosen = made === undefined ? {} : await chosenOptions(workshop, stock, made.last);
    if ('problem' in chosen) return { files: [], problems: [chosen.problem], notes: [] };
    const layout = await workshop.ask({
        do: 'coupon-layout',
        material,
        laser,
        options: { ...usualPitch(stock), ...withTests(stock, options), ...chosen },
    });
    if ('problem' in layout) return { files: [], problems: [layout.problem], notes: [] };
    const notes = [...waitingWords(waitingIn(stock, made?.texts ?? [])), ...(layout.chosen ? chosenWords(layout.chosen) : [])];
    if (layout.squares.length === 0) return { files: [], problems: [], notes };
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
    return {
        files: [...files.map((file) => (file.path === 'coupon.csv' ? { ...file, fillIn: true } : file)), block],
        problems,
        notes,
        ...(layout.chosen?.joins === true && { from: layout.squares[0]!.number }),
    };
}

/** Squares that were made before and of which nothing is known yet. */
function waitingWords(waiting: readonly number[]): Message[] {
    if (waiting.length === 0) return [];
    const many = waiting.length > 1;
    return [
        phrase`${many ? phrase`Squares ${waiting.join(', ')} of this coupon are` : phrase`Square ${waiting[0]} of this coupon is`} not measured yet: measure ${many ? 'them' : 'it'} first, and ask again.`,
    ];
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
