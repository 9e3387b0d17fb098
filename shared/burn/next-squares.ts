import type { Laser } from '../recipe/stock';
import { depthOf, doseFor, doseOf, type Settings } from './dose';
import { exchangeDesign } from './exchange-design';
import type { DepthLaw, Place } from './law';
import { wattsAt } from './power-curve';
import { afterReadings, type Unknown } from './readings';
import { covariancesOf, halfRange, scatter, squareOf } from './settling-square';

/** A depth that a recipe asks of a coupon: the settings that are to give it. W, mm/s, mm. */
export interface DepthAim extends Settings {
    /** What it is for, in words. */
    readonly of: string;
}

/** A square to be burnt and measured next. */
export interface NextSquare extends Settings {
    /** The setting that gives the power, as a part of the whole. */
    readonly powerRatio: number;
    /** It lies apart from the depths that are asked for, so that a law of the wrong form shows itself. */
    readonly apart: boolean;
}

/** What squares do for a depth that is asked for. Halves of ranges at 95 %, mm. */
export interface NarrowedAim {
    readonly of: readonly string[];
    readonly half: number;
    /** What would be left if the law were known: how boards, places and readings differ. */
    readonly least: number;
    /** With the first square, with the first two, and so on. */
    readonly after: readonly number[];
}

/** The next squares, the most telling first. None where no square would tell much. */
export interface NextSquares {
    readonly squares: readonly NextSquare[];
    readonly aims: readonly NarrowedAim[];
}

/** One more square has to narrow a range by this part, or there are enough (own choice). */
const TELLS = 0.05;
/** With what a board that nobody has burnt begins. */
export const firstSquares = 6;
export const mostNext = 12;
/** Of three squares one lies apart: two for what is asked, one for the law. */
const perApart = 2;
const GRID = 10;
const JUST_DIGS = 0.03; // mm
/** So many times the dose of a depth that is asked for may be tried: a guess may be far off. */
const REACH = { known: 1.4, guessed: 2 };
/** Squares nearer than this part of a dose tell the same of a law. */
const ALIKE = 0.2;
/** Squares nearer than this are one and the same. */
const SAME = 0.02;
/** Beside the dose that is asked for, so that it is tried more than once. */
const AROUND = [0.9, 0.95, 1, 1.05, 1.1];
/** So many squares that what is measured of the scatter no longer widens a range. */
const MANY = 1000;
/** More depths than this are told by the others (own choice: each costs time). */
const MOST_AIMS = 12;

export interface NextSquaresAsked {
    readonly law: DepthLaw;
    readonly laser: Laser;
    readonly aims: readonly DepthAim[];
    /** What is measured already. */
    readonly measured?: readonly Place[];
    /** Depth (mm) that a square may give. */
    readonly deepest: number;
    /** Squares, 1 to `mostNext` (default `firstSquares`). */
    readonly most?: number | undefined;
}

/**
 * The few squares that narrow the ranges of the depths that recipes ask for: two of three by least summed variance relative to what it is
 * now (an I-optimal design), by exchange on the state that the fit leaves behind; the third where it tells most, away from all others, so
 * that a law of the wrong form shows itself. At a guess that state is only the guess's own spread, so that the first squares are a design
 * for what is likely; there are as many as may be, since a guess cannot say when it is right.
 */
export function nextSquares(asked: NextSquaresAsked): NextSquares {
    const aims = distinct(asked.aims.filter(isUsable)).slice(0, MOST_AIMS);
    const candidates = candidatesFor(asked, aims);
    if (aims.length === 0 || candidates.length === 0) return { squares: [], aims: aims.map((aim) => told(asked.law, aim)) };
    const design = new Design(asked.law, aims, candidates);
    const total = Math.max(1, Math.min(asked.most ?? firstSquares, mostNext));
    const telling = design.telling(total - Math.floor(total / (perApart + 1)));
    const beside = Math.min(total - telling.length, Math.ceil(telling.length / perApart));
    const apart = design.apart(telling, asked.measured ?? [], beside);
    return {
        squares: [
            ...telling.map((at) => ({ ...candidates[at]!, apart: false })),
            ...apart.map((at) => ({ ...candidates[at]!, apart: true })),
        ],
        aims: aims.map((aim, i) => ({ ...told(asked.law, aim), after: design.halvesInTurn([...telling, ...apart], i) })),
    };
}

/** What is unknown of the depths that are asked for and of the squares that may be burnt, as one state; squares go by their index among the candidates. */
class Design {
    private readonly places: readonly Place[];
    private readonly start: Unknown;
    private readonly halves: readonly number[];

    constructor(
        private readonly law: DepthLaw,
        private readonly aims: readonly SharedAim[],
        private readonly candidates: readonly Candidate[],
    ) {
        this.places = [...aims, ...candidates].map(placeOf);
        this.start = { covariance: covariancesOf(law, this.places), told: 0 };
        this.halves = this.halvesAfter([]);
    }

    /** Squares that narrow the ranges, the most telling first; fewer where one more would not tell enough. */
    telling(most: number): readonly number[] {
        let best: readonly number[] = [];
        for (let n = 1; n <= most; n++) {
            const begin = [...best, this.bestBeside(best)];
            const { chosen } = exchangeDesign(this.candidates.length, begin, (some) => -this.widthOf(some));
            const [was, is] = [best, chosen].map((some) => this.halvesAfter(some));
            if (!this.law.guess && is!.every((half, i) => half > (1 - TELLS) * was![i]!)) break;
            best = chosen;
        }
        return this.inTurn(best);
    }

    /** Where a square tells most of the law once these are measured, unlike all of them and what is measured. */
    apart(telling: readonly number[], measured: readonly Place[], count: number): readonly number[] {
        const chosen: number[] = [];
        for (let n = 0; n < count; n++) {
            const state = this.after([...telling, ...chosen]);
            const near = [...measured, ...[...telling, ...chosen].map((at) => this.placeAt(at))];
            const tells = (at: number): number => {
                const i = this.aims.length + at;
                return state.covariance[i]![i]! / this.noiseAt(at);
            };
            const [first, ...others] = [...this.candidates.keys()].filter(
                (at) => !near.some((each) => isAlike(this.placeAt(at), each)),
            );
            if (first === undefined) break;
            chosen.push(others.reduce((best, at) => (tells(at) > tells(best) ? at : best), first));
        }
        return chosen;
    }

    /** Half of the range of one depth with the first of these squares, the first two, and so on. */
    halvesInTurn(squares: readonly number[], aim: number): number[] {
        return squares.map((_, n) => this.halvesAfter(squares.slice(0, n + 1))[aim]!);
    }

    private placeAt(square: number): Place {
        return this.places[this.aims.length + square]!;
    }

    private noiseAt(square: number): number {
        return scatter(this.law, this.placeAt(square));
    }

    private after(squares: readonly number[]): Unknown {
        const known = squares.map((at) => this.aims.length + at);
        return afterReadings(this.start, known, (at) => scatter(this.law, this.places[at]!));
    }

    private halvesAfter(squares: readonly number[]): readonly number[] {
        const { covariance } = this.after(squares);
        return this.aims.map((_, i) => halfRange(this.law, this.places[i]!, covariance[i]![i]!, squares.length));
    }

    /** None may come twice, since a row stands for one square; of a guess they are to differ, since they may all lie wrong. */
    private widthOf(squares: readonly number[]): number {
        const apart = this.law.guess ? ALIKE : SAME;
        const places = squares.map((at) => this.placeAt(at));
        if (places.some((one, i) => places.some((other, j) => j < i && isAlike(one, other, apart))))
            return Number.POSITIVE_INFINITY;
        return this.halvesAfter(squares).reduce((sum, half, i) => sum + (half / this.halves[i]!) ** 2, 0);
    }

    private bestBeside(chosen: readonly number[]): number {
        return leastBy([...this.candidates.keys()], (at) => this.widthOf([...chosen, at]));
    }

    private inTurn(squares: readonly number[]): readonly number[] {
        const left = [...squares];
        const turn: number[] = [];
        while (left.length > 0) {
            const next = leastBy(left, (at) => this.widthOf([...turn, at]));
            turn.push(next);
            left.splice(left.indexOf(next), 1);
        }
        return turn;
    }
}

type Candidate = Settings & { readonly powerRatio: number };

/** Squares that the laser can burn: doses from what just digs to beyond what is asked for, in one pass and in several, with the powers that are asked for. */
function candidatesFor({ law, laser, deepest, measured = [] }: NextSquaresAsked, aims: readonly SharedAim[]): Candidate[] {
    if (aims.length === 0) return [];
    const counts = [...new Set([1, 2, 3, ...aims.map(({ passes }) => passes)])];
    const doses = aims.map(doseOf);
    const high = (law.guess ? REACH.guessed : REACH.known) * Math.max(...doses);
    const low = Math.min(doseFor(law, JUST_DIGS, 1), ...doses);
    const grid = Array.from({ length: GRID }, (_, i) => low * (high / low) ** (i / (GRID - 1)));
    const found = new Map<string, Candidate>();
    for (const passes of counts) {
        for (const dose of [...grid, ...doses.flatMap((each) => AROUND.map((part) => part * each))]) {
            if (depthOf(law, dose, passes) > deepest) continue;
            // The power of the nearest aim; where the head would have to go too fast for it, less.
            const powers = aims.toSorted((a, b) => Math.abs(Math.log(doseOf(a) / dose)) - Math.abs(Math.log(doseOf(b) / dose)));
            const shares = [1, 0.7, 0.5, 0.3];
            const square = shares
                .map((share) =>
                    squareOf(dose, { power: share * powers[0]!.power, pitch: law.pitch ?? powers[0]!.pitch, passes }, laser),
                )
                .find((each) => each !== undefined);
            if (square?.powerRatio === undefined) continue;
            const whole = inWholePercent({ ...square, powerRatio: square.powerRatio }, dose, laser);
            const isMeasured = whole === undefined || measured.some((row) => isAlike(placeOf(whole), row, SAME));
            if (!isMeasured) found.set(`${whole.powerRatio} ${whole.speed} ${passes}`, whole);
        }
    }
    return [...found.values()];
}

/** With a setting as it is typed at a machine. */
function inWholePercent(square: Candidate, dose: number, laser: Laser): Candidate | undefined {
    const powerRatio = Math.min(1, Math.max(0.01, Math.round(100 * square.powerRatio) / 100));
    const power = wattsAt(laser, powerRatio);
    const again = power === undefined ? undefined : squareOf(dose, { ...square, power }, laser);
    return again === undefined ? undefined : { ...again, powerRatio };
}

function isUsable(aim: DepthAim): boolean {
    const dose = doseOf(aim);
    return dose > 0 && dose < 1e9 && aim.passes >= 1 && aim.passes <= 1e4;
}

type SharedAim = Settings & { readonly of: readonly string[] };

/** One of those that ask for the same settings, with all that it is for. */
function distinct(aims: readonly DepthAim[]): SharedAim[] {
    const found = new Map<string, SharedAim>();
    for (const aim of aims) {
        const key = `${aim.power} ${aim.speed} ${aim.pitch} ${aim.passes}`;
        const known = found.get(key);
        found.set(key, { ...aim, of: [...(known?.of ?? []), aim.of] });
    }
    return [...found.values()];
}

function told(law: DepthLaw, aim: SharedAim): NarrowedAim {
    const place = placeOf(aim);
    return { of: aim.of, half: halfRange(law, place), least: halfRange(law, place, 0, MANY), after: [] };
}

function placeOf(settings: Settings): Place {
    return { dose: doseOf(settings), passes: settings.passes };
}

function isAlike(one: Place, other: Place, within = ALIKE): boolean {
    return one.passes === other.passes && Math.abs(one.dose / other.dose - 1) < within;
}

function leastBy(list: readonly number[], value: (each: number) => number): number {
    let [best, least] = [list[0]!, Number.POSITIVE_INFINITY];
    for (const each of list) {
        const found = value(each);
        if (found < least) [best, least] = [each, found];
    }
    return best;
}
