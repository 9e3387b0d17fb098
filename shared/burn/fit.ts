import type { Coupon, Laser, Wood } from '../recipe/stock';
import { doseOf, type LawNumbers, passesWorth } from './dose';
import { lawOf } from './fit-law';
import { withinBounds } from './fit-numbers';
import { type Name, type Problem, readingOf } from './fit-problem';
import { guessLaw } from './guess';
import { type DepthLaw, type LawNote, measuringError } from './law';
import { leastSquares } from './least-squares';
import { type Chosen, chooseForm } from './rival-laws';
import { type BurnRow, rowsOf, usable } from './rows';
import { darkestDose, fitTone, toneRowsOf } from './tone';
import { lawWithoutOutliers } from './without-outliers';

/** Rows beyond these tell nothing more of a line, and a heap of hostile ones must not hold anything up. */
const mostRows = 500;

/**
 * The depth law of a coupon on a laser. Rows of runs (measured squares in base units, the newest last) count like the
 * coupon's own. Without usable rows it is the guess from the wood's density.
 */
export function fitCoupon(
    coupon: Coupon | undefined,
    laser: Laser | undefined,
    wood?: Wood,
    runs: readonly BurnRow[] = [],
): DepthLaw {
    const { rows, leftOut } = rowsOf(coupon, laser);
    const usableRuns = runs.filter(usable);
    const squares = rows.slice(0, mostRows);
    // Of runs the newest count, which come last; slice(-0) would be all of them.
    const newest = usableRuns.slice(Math.max(0, usableRuns.length - (mostRows - squares.length)));
    const all = [...rows, ...usableRuns];
    const law = fitRows([...squares, ...newest], guessLaw(wood, laser));
    const tone = fitTone(toneRowsOf(coupon, laser));
    const told = tone === undefined ? law : { ...law, tone, darkest: darkestDose(tone) };
    const someLeftOut = leftOut.length + runs.length > usableRuns.length || all.length > mostRows;
    return someLeftOut ? { ...told, notes: [...told.notes, 'rows-left-out'] } : told;
}

/**
 * The depth law of measured squares; the guess is weighed in where they are too few to stand alone. What does not go with the others
 * is named and has no pull on the law.
 */
export function fitRows(rows: readonly BurnRow[], guess: DepthLaw): DepthLaw {
    if (rows.length === 0) return guess;
    const problem: Problem = { rows, doses: rows.map(doseOf), guess };
    const law = alone(problem);
    return law === undefined || law === 'not-converged'
        ? combined(problem, law)
        : lawWithoutOutliers(problem, law, (others) => alone(others, true));
}

/** The fit of the rows by themselves, if they can bear it, in the form that suits them unless it is to be straight; `not-converged` if they could, but the fit did not come to rest. */
function alone(problem: Problem, isStraight = false): DepthLaw | 'not-converged' | undefined {
    const fadeFree = fadeCanBeFitted(problem.rows);
    const notes: LawNote[] = !fadeFree && passesVary(problem.rows) ? ['fade-assumed'] : [];
    const start = startOf(problem);
    if (start === undefined) return undefined;
    const free: Name[] = fadeFree ? ['threshold', 'energy', 'fade'] : ['threshold', 'energy'];
    const found = withinBounds(problem, start, free, notes, []);
    if (found === undefined || found.fit.degreesOfFreedom < 1 || !(found.numbers.energy > 0)) return undefined;
    if (!found.converged) return 'not-converged';
    const plain = lawOf(problem, found, false);
    // Where a square does not go with the others, it is left out and the law stays straight: a single square bends none.
    const form = isStraight || plain.notes.includes('outliers') ? { found } : chooseForm(problem, found);
    const law = form.found === found ? plain : formOf(problem, form, notes);
    // Rows that tell the energy no better than the guess does are worth more together with it.
    return law.errors.energy / law.energy < problem.guess.errors.energy / problem.guess.energy ? law : undefined;
}

function formOf(problem: Problem, { found, note, rivals }: Chosen, before: readonly LawNote[]): DepthLaw {
    const law = lawOf(problem, found, false);
    const notes = [...new Set([...before, ...law.notes, ...(note === undefined ? [] : [note])])];
    return { ...law, notes, ...(rivals !== undefined && { rivals }) };
}

/** The rows weighed against the guess, as if its threshold and energy had been measured with its errors. */
function combined(problem: Problem, failed: 'not-converged' | undefined): DepthLaw {
    const { guess } = problem;
    const notes: LawNote[] = ['combined'];
    if (failed !== undefined) notes.push(failed);
    else if (!problem.rows.some((row) => row.depth > 0)) notes.push('no-depth');
    else if (fallsWithDose(problem)) notes.push('falls-with-dose');
    else if (problem.rows.length > 2) notes.push('doses-alike');
    if (passesVary(problem.rows)) notes.push('fade-assumed');
    const found = withinBounds(problem, { ...guess, fade: 1 }, ['threshold', 'energy'], notes, ['threshold', 'energy']);
    if (found?.converged === false && failed === undefined) notes.push('not-converged');
    if (found?.converged !== true || !(found.numbers.energy > 0)) return { ...guess, notes: [...guess.notes, ...notes] };
    return lawOf(problem, found, true);
}

/** Where to start: the straight line d = (a·F − b)·passes through the rows that dug. */
function startOf({ rows, doses }: Problem): LawNumbers | undefined {
    const digging = rows.map((_, i) => i).filter((i) => rows[i]!.depth > 0);
    const line = leastSquares(
        digging.map((i) => [doses[i]! * rows[i]!.passes, -rows[i]!.passes]),
        digging.map((i) => rows[i]!.depth),
        digging.map((i) => measuringError(rows[i]!.depth, readingOf(rows[i]!))),
    );
    const [slope, offset] = line?.parameters ?? [];
    if (slope === undefined || offset === undefined || !(slope > 0)) return undefined;
    return { threshold: offset / slope, energy: 1 / slope, fade: 1 };
}

function passesVary(rows: readonly BurnRow[]): boolean {
    return new Set(rows.map((row) => row.passes)).size > 1;
}

/** Three numbers want two rows to spare, some of them with one pass and some with more, at more than one dose each. */
function fadeCanBeFitted(rows: readonly BurnRow[]): boolean {
    return rows.filter((row) => row.depth > 0).length >= 5 && passesVary(rows);
}

function fallsWithDose({ doses, rows }: Problem): boolean {
    const per = rows.map((row) => row.depth / passesWorth({ fade: 1 }, row.passes));
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    const meanDose = mean(doses);
    const meanDepth = mean(per);
    return rows.length > 2 && doses.reduce((sum, dose, i) => sum + (dose - meanDose) * (per[i]! - meanDepth), 0) < 0;
}
