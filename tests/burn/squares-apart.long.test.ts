import { expect, it } from 'vitest';
import { depthOf, doseOf, type LawNumbers, type Settings } from '../../shared/burn/dose';
import { fitCoupon } from '../../shared/burn/fit';
import { guessLaw } from '../../shared/burn/guess';
import { type DepthLaw, predict } from '../../shared/burn/law';
import { type NextSquare, nextSquares } from '../../shared/burn/next-squares';
import { solveDepth } from '../../shared/burn/solve';
import type { Burn } from '../../shared/recipe/stock';
import { bell, burn, couponOf, shed, woodOf } from './stock';

const BOARDS = 60;
const DEPTH = 0.6; // mm
const pitch = 0.1;
const wood = woodOf(600e-6);
const guess = guessLaw(wood, shed);

/** A square as it is read: off by 1.5 % and 0.005 mm. */
function read(numbers: LawNumbers, square: NextSquare, roll: () => number): Burn {
    const depth = depthOf(numbers, doseOf(square), square.passes);
    return burn(square.powerRatio, square.speed, square.passes, Math.max(0.01, depth * (1 + 0.015 * roll()) + 0.005 * roll()));
}

/** As they are, or with none apart: those that tell most come twice instead. */
function burnt(squares: readonly NextSquare[], isApart: boolean): readonly NextSquare[] {
    const telling = squares.filter(({ apart }) => !apart);
    return isApart ? squares : [...telling, ...telling.slice(0, squares.length - telling.length)];
}

const settingsFor = (law: DepthLaw): Settings => solveDepth(law, shed, { depth: DEPTH }, { pitch })!;

/** A board after three rounds of chosen squares: whether its wood was known to be bent, and the depth came out within its range. */
function board(seed: number, bend: number, isApart: boolean): { isBent: boolean; isHeld: boolean } {
    const roll = bell(seed * 19 + 7);
    const [threshold, energy] = [guess.threshold, guess.energy].map((each) => each * Math.exp(0.2 * roll())) as [number, number];
    const numbers = { threshold, energy, fade: 0.93, ...(bend > 0 && { bend }) };
    const squares: NextSquare[] = [];
    const rows: Burn[] = [];
    let law = guess;
    for (let round = 0; round < 3; round++) {
        const measured = squares.map((each) => ({ dose: doseOf(each), passes: each.passes }));
        const aims = [{ of: 'pocket', ...settingsFor(law) }];
        const more = burnt(nextSquares({ law, laser: shed, aims, measured, deepest: 1.2, most: 6 }).squares, isApart);
        squares.push(...more);
        rows.push(...more.map((each) => read(numbers, each, roll)));
        law = fitCoupon(couponOf(rows, pitch), shed, wood);
    }
    const settings = settingsFor(law);
    const { low, high } = predict(law, settings)!;
    const depth = depthOf(numbers, doseOf(settings), settings.passes);
    return { isBent: law.notes.includes('bent'), isHeld: depth >= low && depth <= high };
}

// Measured: 15, 1 and 0 of 60; the depth came out within its range on all boards.
it.each([
    ['now and then where the wood shields itself', 1.2, true, 10, 25],
    ['hardly ever where it does not', 0, true, 0, 3],
    ['never from squares that all lie near what is asked', 1.2, false, 0, 0],
])('few squares show a wrong law %s', (_, bend, isApart, least, most) => {
    const boards = Array.from({ length: BOARDS }, (_each, i) => board(i + 1, bend, isApart));
    const bent = boards.filter(({ isBent }) => isBent).length;
    expect(bent).toBeGreaterThanOrEqual(least);
    expect(bent).toBeLessThanOrEqual(most);
    expect(boards.filter(({ isHeld }) => isHeld).length).toBeGreaterThanOrEqual(0.95 * BOARDS);
});
