import { nonlinearLeastSquares } from './nonlinear-least-squares';
import type { ToneCurve, ToneRow } from './tone-law';

/** Error of judging a tone where the row says none: beside a grey scale of ten steps. @commonPractice */
export const JUDGING = 0.05;
/** What is thought of the ceiling before it is seen: the scale ends at the darkest that does not dig, and wood may stay paler (own estimate). */
const CEILING = { value: 1, error: 0.25 };
/** A square at an end of the scale tells only that its tone is at least, or at most, that. */
const WITHIN = { low: 0.02, high: 0.98 };
/** Fewer squares inside of the scale do not tell an onset. */
const ROWS_FOR_ONSET = 3;

type Shape = Pick<ToneCurve, 'bend' | 'onset' | 'rate' | 'ceiling'>;

/** A curve through squares and what it leaves of them: the sum of squared residuals in units of their errors. */
interface FittedToneCurve {
    readonly curve: Omit<ToneCurve, 'weight'>;
    readonly sum: number;
    readonly degreesOfFreedom: number;
}

/** Tone of a dose by one curve, with the variance that its numbers leave, for an error of one unit. */
export function toneAt(curve: Omit<ToneCurve, 'weight'>, dose: number): { value: number; variance: number } {
    const slopes = slopesAt(curve, dose);
    let variance = 0;
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += slopes[i]! * slopes[j]! * curve.covariance[3 * i + j]!;
    return { value: valueAt(curve, dose), variance: Math.max(0, variance) };
}

function valueAt({ bend, onset, rate, ceiling }: Shape, dose: number): number {
    return ceiling * risen(bend, (dose - onset) * rate);
}

/** Part of the ceiling that is reached, 0 to 1. */
function risen(bend: number, x: number): number {
    if (!(x > 0)) return 0;
    if (bend === Number.POSITIVE_INFINITY) return -Math.expm1(-x);
    return x >= bend ? 1 : 1 - (1 - x / bend) ** bend;
}

/** Along onset, rate and ceiling. */
function slopesAt({ bend, onset, rate, ceiling }: Shape, dose: number): [number, number, number] {
    const x = (dose - onset) * rate;
    const steep = steepness(bend, x);
    return [-ceiling * steep * rate, ceiling * steep * (dose - onset), risen(bend, x)];
}

function steepness(bend: number, x: number): number {
    if (!(x > 0)) return 0;
    if (bend === Number.POSITIVE_INFINITY) return Math.exp(-x);
    return x >= bend ? 0 : (1 - x / bend) ** (bend - 1);
}

type Name = 'onset' | 'rate' | 'ceiling';
const names: readonly Name[] = ['onset', 'rate', 'ceiling'];

/** The curve of one bend through squares in the order of their doses; undefined where they tell no rise, or the fit does not come to rest. */
export function fitToneCurve(rows: readonly ToneRow[], bend: number): FittedToneCurve | undefined {
    const inside = rows.filter(({ tone }) => tone >= WITHIN.low && tone <= WITHIN.high);
    const start = startOf(inside, bend);
    if (start === undefined) return undefined;
    const free: Name[] = inside.length < ROWS_FOR_ONSET ? ['rate', 'ceiling'] : ['onset', 'rate', 'ceiling'];
    return fitFree(rows, start, free);
}

/** A line through the squares that are not yet level; from nothing where they are few, or it would begin below nothing. */
function startOf(inside: readonly ToneRow[], bend: number): Shape | undefined {
    const first = inside[0];
    const darkest = inside.toSorted((a, b) => b.tone - a.tone || a.dose - b.dose)[0];
    if (first === undefined || darkest === undefined) return undefined;
    const ceiling = 1;
    const ray = { bend, onset: 0, rate: inverse(bend, darkest.tone) / darkest.dose, ceiling };
    if (inside.length < ROWS_FOR_ONSET || !(darkest.dose > first.dose)) return first.tone > 0 ? ray : undefined;
    const [low, high] = [inverse(bend, first.tone), inverse(bend, darkest.tone)];
    const rate = (high - low) / (darkest.dose - first.dose);
    if (!(rate > 0)) return undefined;
    const onset = first.dose - low / rate;
    return onset > 0 ? { bend, onset, rate, ceiling } : ray;
}

/** x at which a part of the ceiling is reached. */
function inverse(bend: number, part: number): number {
    const less = Math.min(part, WITHIN.high);
    return bend === Number.POSITIVE_INFINITY ? -Math.log1p(-less) : bend * (1 - (1 - less) ** (1 / bend));
}

function fitFree(rows: readonly ToneRow[], start: Shape, free: readonly Name[]): FittedToneCurve | undefined {
    const weighed = free.includes('ceiling');
    const xs: (ToneRow | 'ceiling')[] = [...rows, ...(weighed ? (['ceiling'] as const) : [])];
    const shapeOf = (parameters: readonly number[]): Shape => ({
        ...start,
        ...Object.fromEntries(free.map((name, j) => [name, parameters[j]!])),
    });
    const fit = nonlinearLeastSquares(
        {
            value: (x, parameters) => {
                const shape = shapeOf(parameters);
                return x === 'ceiling' ? shape.ceiling : valueAt(shape, x.dose);
            },
            slopes: (x, parameters) => {
                if (x === 'ceiling') return free.map((name) => (name === 'ceiling' ? 1 : 0));
                const slopes = slopesAt(shapeOf(parameters), x.dose);
                return free.map((name) => slopes[names.indexOf(name)]!);
            },
        },
        xs,
        xs.map((x) => (x === 'ceiling' ? CEILING.value : x.tone)),
        free.map((name) => start[name]),
        xs.map((x) => (x === 'ceiling' ? CEILING.error : x.tolerance > 0 ? Math.max(x.tolerance, 1e-3) : JUDGING)),
    );
    if (fit === undefined) {
        return free.length > 1 ? fitFree(rows, start, without(free, weighed ? 'ceiling' : 'onset')) : undefined;
    }
    const shape = shapeOf(fit.parameters);
    if (shape.onset < 0) return fitFree(rows, { ...start, onset: 0 }, without(free, 'onset'));
    if (shape.ceiling > 1) return fitFree(rows, { ...start, ceiling: 1 }, without(free, 'ceiling'));
    if (!(shape.rate > 0 && shape.ceiling > WITHIN.low)) return undefined;
    const covariance = new Array<number>(9).fill(0);
    free.forEach((a, i) => {
        free.forEach((b, j) => {
            covariance[3 * names.indexOf(a) + names.indexOf(b)] = fit.unscaledCovariance[i * free.length + j]!;
        });
    });
    return {
        curve: { ...shape, covariance },
        sum: fit.residualSum,
        degreesOfFreedom: rows.length - free.length + (weighed ? 1 : 0),
    };
}

function without(free: readonly Name[], name: Name): Name[] {
    return free.filter((other) => other !== name);
}
