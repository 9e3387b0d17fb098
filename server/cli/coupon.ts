import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { URI } from 'langium';
import { rungLimits } from '../../shared/burn/coupon-rungs';
import type { CouponOptions } from '../../shared/burn/coupon-sheet';
import { plugLimits, stripLimits } from '../../shared/burn/kerf-strip';
import { mostNext } from '../../shared/burn/next-squares';
import { findStock } from '../coupon/find-stock';
import { makeCoupon } from '../coupon/make-coupon';
import { diskReader } from '../files/disk-reader';
import { placeOfCoupon } from '../writing/made-of';
import { openFiles } from './open-files';
import { complain, sayLine } from './say';
import { readArgs } from './usage/read-args';
import { couponUsage } from './usage/usages';
import { UsageError } from './usage-error';
import { writeHere } from './write-here';

/** `kerfbook coupon`: the files of a coupon, into `made/coupon-…` beside the file that declares the board, or below --out. */
export async function coupon(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(couponUsage, args);
    const [board, laser, ...names] = positionals;
    if (board === undefined || laser === undefined) throw new UsageError('Say for which board or veneer, and for which laser.');
    const options = optionsOf(values);
    const out = values.out === undefined ? undefined : URI.parse(pathToFileURL(path.resolve(values.out)).toString());
    const { workshop, documents, files: readable } = await openFiles(names);
    const stock = findStock(workshop, documents, board, laser);
    if ('problem' in stock) throw new UsageError(stock.problem);
    const place = placeOfCoupon(stock, out);
    const { files, problems, notes, from } = await makeCoupon(
        workshop,
        stock,
        { folder: place.folder, read: diskReader(readable), below: out },
        { ...options, next: values.next },
    );
    for (const problem of problems) complain(problem);
    for (const note of notes) sayLine(note);
    const wish = { force: values.force, clean: values.clean, dryRun: values['dry-run'] };
    if (files.length > 0) await writeHere(placeOfCoupon(stock, out, from), files, { files: readable, out: values.out }, wish);
    return problems.length > 0 ? 1 : 0;
}

const figures = ['powers', 'speeds', 'pitch', 'passes', 'cuts', 'fits'] as const;
type Figure = (typeof figures)[number];

/** How many squares there may be. */
function checkCount(rungs: number | undefined, next: boolean): void {
    const { least, most } = next ? { least: 1, most: mostNext } : rungLimits;
    if (rungs !== undefined && !(Number.isInteger(rungs) && rungs >= least && rungs <= most)) {
        throw new UsageError(`--rungs is a whole number from ${least} to ${most}.`);
    }
}

/** Weakest power first and fastest speed first: in this order they take turns. */
function optionsOf(written: Readonly<Record<'rungs' | Figure, string | undefined>> & { readonly next: boolean }): CouponOptions {
    const other = figures.find((each) => written[each] !== undefined);
    if (written.next && other !== undefined) throw new UsageError(`--next chooses the squares itself: leave --${other} out.`);
    const powers = numbersOf('powers', written.powers)?.map((percent) => percent / 100);
    const speeds = numbersOf('speeds', written.speeds);
    const [pitch] = numbersOf('pitch', written.pitch, 1) ?? [];
    const [passes] = numbersOf('passes', written.passes, 1) ?? [];
    const [rungs] = numbersOf('rungs', written.rungs, 1) ?? [];
    checkCount(rungs, written.next);
    if (rungs !== undefined && powers !== undefined && speeds !== undefined) {
        throw new UsageError('--rungs goes with --powers or --speeds, not with both: then each power is burnt at each speed.');
    }
    if (passes !== undefined && !(Number.isInteger(passes) && passes <= 30)) throw new UsageError('--passes is 1 to 30.');
    return {
        ...(rungs === undefined ? {} : { rungs }),
        ...(powers === undefined ? {} : { powers: powers.toSorted((a, b) => a - b) }),
        ...(speeds === undefined ? {} : { speeds: speeds.toSorted((a, b) => b - a) }),
        ...(pitch === undefined ? {} : { pitch }),
        ...(passes === undefined ? {} : { passes }),
        ...countOf('cuts', written.cuts, stripLimits),
        ...countOf('fits', written.fits, plugLimits),
    };
}

function countOf(
    option: 'cuts' | 'fits',
    written: string | undefined,
    { least, most }: { readonly least: number; readonly most: number },
): Pick<CouponOptions, 'cuts' | 'fits'> {
    const [count] = numbersOf(option, written, 1) ?? [];
    if (count === undefined) return {};
    if (!Number.isInteger(count) || count < least || count > most)
        throw new UsageError(`--${option} is a whole number from ${least} to ${most}.`);
    return { [option]: count };
}

const longestList = 20;

function numbersOf(option: string, text: string | undefined, count = longestList): number[] | undefined {
    if (text === undefined) return undefined;
    const numbers = [...new Set(text.split(',').map((each) => (each.trim() === '' ? Number.NaN : Number(each))))];
    if (numbers.length > count || !numbers.every((number) => number > 0 && number < 1e6)) {
        const what = count === 1 ? 'a number' : `up to ${count} numbers with commas between them`;
        throw new UsageError(`--${option} is ${what}, above zero.`);
    }
    return numbers;
}
