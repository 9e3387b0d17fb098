import type { Laser } from '../recipe/stock';
import { coverageFactor } from './distributions';
import { depthOf, doseOf, type Settings } from './dose';
import { type DepthLaw, depthSlopes, lawCovariance, ofPieces, type Place, pooledDegreesOfFreedom, squareVariance } from './law';
import { pieceSpread } from './piece-spread';
import { settingFor } from './power-curve';
import { afterReading } from './readings';
import { runUpSpeed } from './run-up-speed';

/** One more square for a coupon, and what it does for the range of a depth that settings are to give. Lengths in mm. */
export interface SettlingSquare extends Settings {
    /** The setting that gives the power, as a part of the whole; absent where the laser's power is not known. */
    readonly powerRatio?: number;
    /** Half of the range of that depth as it is told now, and once the square is measured. */
    readonly half: number;
    readonly narrowed: number;
}

/** Parts of the asked dose, and counts of passes, that are tried. */
const DOSES = [1, 0.7, 0.85, 1.2, 1.4];
const PASSES = [1, 2, 3];
/** Another square than the one with the asked settings has to be so much better: it leans on the form of the law (own choice). */
const BETTER = 0.9;
const COVERAGE = 0.95;

/**
 * The square that narrows the range of a depth most. What a law may be off by at two places goes together (`lawCovariance`), so a square
 * measured at one takes of the variance at the other their covariance squared over the variance of what would be read there: the update of a
 * normal state by one measurement (own derivation). What the next piece differs by, no square of this board takes away.
 *
 * Squares are burnt in the coupon's own pitch, so that their speed differs from that of the settings where their pitch does. Undefined
 * where nothing burns, and where no square can be burnt on this laser.
 *
 * @param aim settings of which the depth is in question: W, mm/s, mm
 */
export function settlingSquare(law: DepthLaw, aim: Settings, laser: Laser | undefined): SettlingSquare | undefined {
    const asked: Place = { dose: doseOf(aim), passes: aim.passes };
    if (!(asked.dose > 0 && asked.dose < 1e9 && asked.passes >= 1 && asked.passes <= 1e4)) return undefined;
    const half = halfRange(law, asked);
    const pitch = law.pitch ?? aim.pitch;
    const counts = [...new Set([aim.passes, ...PASSES])];
    const squares = counts
        .flatMap((passes) => DOSES.map((part) => squareOf(part * asked.dose, { ...aim, pitch, passes }, laser)))
        .flatMap((square) => square ?? [])
        .map((square) => ({
            ...square,
            half,
            narrowed: withSquare(law, asked, { dose: doseOf(square), passes: square.passes }),
        }));
    const [own] = squares;
    const best = squares.reduce<SettlingSquare | undefined>(
        (least, each) => (least === undefined || each.narrowed < least.narrowed ? each : least),
        undefined,
    );
    return best !== undefined && own !== undefined && best.narrowed >= BETTER * own.narrowed ? own : best;
}

/** A square of a dose with the power of the settings: a speed of three digits, two below 100 mm/s. Undefined where the head does not go as fast. */
export function squareOf(
    dose: number,
    { power, pitch, passes }: Omit<Settings, 'speed'>,
    laser: Laser | undefined,
): (Settings & { readonly powerRatio?: number }) | undefined {
    const exact = power / (dose * pitch);
    const speed = Number(exact.toPrecision(exact < 100 ? 2 : 3));
    const fastest = Math.min(laser?.topSpeed?.value ?? Number.POSITIVE_INFINITY, runUpSpeed(laser) ?? Number.POSITIVE_INFINITY);
    if (!(speed > 0) || speed > fastest) return undefined;
    const setting = laser === undefined ? undefined : settingFor(laser, power);
    return { power, speed, pitch, passes, ...(setting !== undefined && { powerRatio: setting }) };
}

/** Half of the range (mm) of the depth at a place once a square is measured at another. */
function withSquare(law: DepthLaw, asked: Place, square: Place): number {
    const places = [asked, square];
    const now = { covariance: covariancesOf(law, places), told: 0 };
    return halfRange(law, asked, afterReading(now, 1, scatter(law, square)).covariance[0]![0]!, 1);
}

/** How what a law may be off by at places goes together, mm2. */
export function covariancesOf(law: DepthLaw, places: readonly Place[]): Float64Array[] {
    return places.map((one) => Float64Array.from(places, (other) => covarianceOf(law, one, other)));
}

/**
 * Half of the range (mm) of the depth at a place.
 * @param variance of what the law may be off by there, mm2: as it is, or what is left of it once squares are measured
 * @param readings so many squares
 */
export function halfRange(law: DepthLaw, asked: Place, variance = covarianceOf(law, asked, asked), readings = 0): number {
    const { guess, pieces } = law;
    const degrees = pooledDegreesOfFreedom(law);
    const factor = coverageFactor(COVERAGE, degrees === undefined ? undefined : degrees + readings);
    // A guess is wide enough for all boards; once a square is measured, the next piece may be another board.
    const next = pieces ?? (guess && readings > 0 ? pieceSpread(undefined) : undefined);
    const known = { ...law, ...(next !== undefined && { pieces: next }) };
    const ofNext = next === undefined ? 0 : ofPieces(known, asked.dose, asked.passes, COVERAGE);
    return Math.hypot(factor * Math.sqrt(Math.max(0, variance) + scatter(law, asked)), ofNext);
}

/** What a single square scatters by, mm2. */
export function scatter(law: DepthLaw, { dose, passes }: Place): number {
    return squareVariance(law, depthOf(law, dose, passes));
}

/** With what a fade that nobody measured may be off by, of which a square of several passes tells. */
function covarianceOf(law: DepthLaw, one: Place, other: Place): number {
    const [a, b] = [one, other].map(({ dose, passes }) => depthSlopes(law, dose, passes)[2]);
    return lawCovariance(law, one, other) + law.fadeAssumed ** 2 * a! * b!;
}
