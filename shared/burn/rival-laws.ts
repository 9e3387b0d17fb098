import type { LawNumbers } from './dose';
import { withinBounds } from './fit-numbers';
import type { Name, Numbers, Problem } from './fit-problem';
import type { LawNote } from './law';

/** The form of a law that says most of squares that are left out, and the others that were tried. */
export interface Chosen {
    readonly found: Numbers;
    readonly note?: Extract<LawNote, 'bent' | 'first-unlike'>;
    /** Absent where the straight law is kept. */
    readonly rivals?: readonly { readonly numbers: LawNumbers; readonly weight: number }[];
}

/** Squares that a bend, or another way in which later passes take less, can be told from (own choice). */
const LEAST_DOSES = 4;
const LEAST_FREEDOM = 5;
/** A straight law whose squares lie so far within what a depth can be misread, as a mean square, needs no other. */
const GOOD_ENOUGH = 0.05;
/** Squares that are so far off, likewise, follow no form: they contradict each other. */
const HOPELESS = 40;
/** A form that does not come to rest in so many rounds is no better one. */
const ROUNDS = 6;
/** What is left of the squared errors, at most, for another form to be taken. */
const MUCH_BETTER = 0.5;
/** So many standard errors of the difference: fewer, and a single misread square would bend a law. */
const CLEARLY = 2;

/**
 * Tries the few laws that the literature supports beside the straight one: passes that take less off the stronger they are (char and
 * smoke shield the wood), and a first pass unlike later ones, which take alike. Chosen is what predicts each square best from the others
 * (leave-one-out by leverages: Allen's PRESS), and only where it is better by two standard errors of the difference over the squares
 * (in the manner of Breiman et al., Classification and Regression Trees, ch. 3.4.3, who take one; from memory). O(squares).
 */
export function chooseForm(problem: Problem, straight: Numbers): Chosen {
    const own = leftOutErrors(straight, straight);
    const count = own.length;
    if (sum(own) < GOOD_ENOUGH * count || sum(own) > HOPELESS * count) return { found: straight };
    const tried = [bentOf(problem, straight), unlikeOf(problem, straight)].flatMap((rival) => {
        if (rival === undefined) return [];
        const errors = leftOutErrors(rival.found, straight);
        return errors.length === count ? [{ ...rival, errors, all: sum(errors) }] : [];
    });
    const best = tried.toSorted((a, b) => a.all - b.all)[0];
    if (best === undefined || !isBetter(best.errors, own)) return { found: straight };
    const others = [{ found: straight, all: sum(own) }, ...tried.filter((each) => each !== best)];
    const likely = others.map(({ all }) => Math.exp((-0.5 * count * (all - best.all)) / best.all));
    const total = 1 + sum(likely);
    return {
        found: best.found,
        note: best.note,
        rivals: others.map(({ found }, i) => ({ numbers: found.numbers, weight: likely[i]! / total })),
    };
}

function isBetter(errors: readonly number[], own: readonly number[]): boolean {
    const gains = own.map((error, i) => error - errors[i]!);
    const mean = sum(gains) / gains.length;
    const deviation = Math.sqrt(sum(gains.map((gain) => (gain - mean) ** 2)) / (gains.length - 1));
    return sum(errors) < MUCH_BETTER * sum(own) && mean > (CLEARLY * deviation) / Math.sqrt(gains.length);
}

type Rival = Required<Pick<Chosen, 'found' | 'note'>>;

function bentOf(problem: Problem, straight: Numbers): Rival | undefined {
    const digging = straight.active.filter((i) => problem.rows[i]!.depth > 0);
    const doses = new Set(digging.map((i) => problem.doses[i]!.toPrecision(6)));
    if (doses.size < LEAST_DOSES) return undefined;
    const deepest = Math.max(...digging.map((i) => problem.rows[i]!.depth / problem.rows[i]!.passes));
    return rivalOf(problem, { ...straight.numbers, bend: 0.3 / deepest }, [...straight.free, 'bend'], 'bent');
}

/** Two counts of passes tell one number of either form: the forms part at a third. */
function unlikeOf(problem: Problem, straight: Numbers): Rival | undefined {
    const counts = new Set(straight.active.map((i) => problem.rows[i]!.passes));
    if (!straight.free.includes('fade') || counts.size < 3) return undefined;
    return rivalOf(problem, { ...straight.numbers, laterAlike: true }, straight.free, 'first-unlike');
}

function rivalOf(problem: Problem, start: LawNumbers, free: readonly Name[], note: Rival['note']): Rival | undefined {
    const found = withinBounds(problem, start, free, [], [], ROUNDS);
    if (found?.converged !== true || !(found.numbers.energy > 0) || found.fit.degreesOfFreedom < LEAST_FREEDOM) return undefined;
    return note === 'bent' && !((found.numbers.bend ?? 0) > 0) ? undefined : { found, note };
}

/** Squared error of each square by the law of the others, in measuring errors of the straight law. */
function leftOutErrors({ fit, active }: Numbers, { active: all, sigmas }: Numbers): number[] {
    return all.flatMap((row) => {
        const at = active.indexOf(row);
        if (at < 0) return [];
        const left = Math.max(1e-6, 1 - fit.leverages[at]!);
        return [(fit.residuals[at]! / left / sigmas[row]!) ** 2];
    });
}

function sum(values: readonly number[]): number {
    return values.reduce((total, value) => total + value, 0);
}
