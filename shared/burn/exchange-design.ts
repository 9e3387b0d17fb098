/** A part of candidates that an exchange has found, and how good it is. */
export interface ExchangeDesign {
    /** Indices of candidates, as often as each is to be measured. */
    readonly chosen: readonly number[];
    readonly score: number;
}

/** So much better one exchange has to make it, or rounding would go on for ever. */
const BETTER = 1e-9;
const MOST_ROUNDS = 50;

/**
 * The exchange algorithm for optimal designs: each point in turn is replaced by the candidate that makes the whole better, until none
 * does. It finds a design that no single exchange betters, which need not be the best of all (Fedorov, Theory of Optimal Experiments,
 * 1972, and Cook and Nachtsheim, Technometrics 22, 1980; both from memory).
 *
 * @param count candidates, counted from 0
 * @param start indices of the points to begin with
 * @param scoreOf how good a design is: the greater the better; not a number where it is none
 */
export function exchangeDesign(
    count: number,
    start: readonly number[],
    scoreOf: (chosen: readonly number[]) => number,
): ExchangeDesign {
    let chosen = [...start];
    let score = scoreOf(chosen);
    for (let round = 0, moved = true; moved && round < MOST_ROUNDS; round++) {
        moved = false;
        for (let point = 0; point < chosen.length; point++) {
            for (let candidate = 0; candidate < count; candidate++) {
                if (candidate === chosen[point]) continue;
                const other = chosen.with(point, candidate);
                const reached = scoreOf(other);
                if (!(reached > score + BETTER)) continue;
                [chosen, score, moved] = [other, reached, true];
            }
        }
    }
    return { chosen, score };
}
