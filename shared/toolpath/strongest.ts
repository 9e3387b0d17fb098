import type { Motion } from './motion';
import type { Path } from './path';
import { speedsAlong } from './time';

/** The place of paths that gets most energy for its length, since the head is slow there. */
export interface Strongest {
    /** Energy for its length against that at the set speed. */
    readonly times: number;
    readonly x: number;
    readonly y: number;
}

/** Standard deviations of the beam over which energy reaches a place, and parts of one in which it is summed. */
const REACH = 4;
const PARTS = 5;
/** Less than this above the rest is no more than the sums themselves are worth. */
const LEAST = 1.02;

/**
 * Where the head is slowest for its power: the energy of each piece (its share of the power for the time that the head takes) is spread
 * over its length by a beam of standard deviation `sigma` (mm; own derivation: ∫ share · v₀ · g(s − s₀) dt). Looked for at the points in
 * which the speed is least, ends included; those of a closed path lie on each other. Paths are cut as withEvenEnergy does, so that over each piece
 * the head speeds up, brakes or keeps its speed. Undefined where no place gets more than the rest. O(n) of the points near slow ones.
 */
export function strongestOf(
    paths: readonly Path[],
    speed: number,
    { acceleration }: Motion,
    sigma: number,
): Strongest | undefined {
    let strongest: Strongest | undefined;
    for (const path of paths) {
        const { points } = path;
        if (points.length < 4) continue;
        const run = new Run(path, speed, acceleration, sigma);
        for (const i of run.slowPoints()) {
            const times = run.timesAt(i);
            if (times >= LEAST && times > (strongest?.times ?? 0))
                strongest = { times, x: points[2 * i]!, y: points[2 * i + 1]! };
        }
    }
    return strongest;
}

class Run {
    private readonly lengths: Float64Array;
    private readonly squares: Float64Array;
    private readonly closed: boolean;

    constructor(
        private readonly path: Path,
        private readonly speed: number,
        acceleration: number,
        private readonly sigma: number,
    ) {
        const { points } = path;
        const { lengths, squares } = speedsAlong(points, speed, acceleration);
        this.lengths = lengths;
        this.squares = squares;
        this.closed = points[0] === points[points.length - 2] && points[1] === points[points.length - 1];
    }

    /** Points in which the head is slower than set, and not faster than in the points beside. */
    slowPoints(): number[] {
        const { squares } = this;
        const slow = 0.95 * this.speed ** 2;
        return Array.from(squares.keys()).filter(
            (i) =>
                squares[i]! < slow &&
                squares[i]! <= (squares[i - 1] ?? Number.POSITIVE_INFINITY) &&
                squares[i]! <= (squares[i + 1] ?? Number.POSITIVE_INFINITY),
        );
    }

    timesAt(point: number): number {
        const last = this.lengths.length;
        let sum = this.oneWay(point, 1) + this.oneWay(point, -1);
        if (this.closed && point === 0) sum += this.oneWay(last, -1);
        if (this.closed && point === last) sum += this.oneWay(0, 1);
        return sum;
    }

    /** What the pieces on one side give to a point. */
    private oneWay(point: number, step: 1 | -1): number {
        const { sigma, lengths, squares, speed } = this;
        const { lit, share } = this.path;
        let sum = 0;
        let far = 0;
        for (let i = step === 1 ? point : point - 1; i >= 0 && i < lengths.length && far < REACH * sigma; i += step) {
            const length = lengths[i]!;
            const power = lit === undefined || lit[i] === 1 ? (share?.[i] ?? 1) : 0;
            const [near, beyond] = step === 1 ? [squares[i]!, squares[i + 1]!] : [squares[i + 1]!, squares[i]!];
            const within = Math.min(length, REACH * sigma - far);
            const parts = Math.max(1, Math.ceil((within * PARTS) / sigma));
            for (let k = 0; k < parts && length > 0; k++) {
                const [from, to] = [(within * k) / parts, (within * (k + 1)) / parts];
                const at = (way: number): number => Math.sqrt(near + ((beyond - near) * way) / length);
                // Over a way with even acceleration the head takes twice the way by the sum of both speeds.
                const time = (2 * (to - from)) / Math.max(1e-9, at(from) + at(to));
                sum += power * speed * time * Math.exp(-((far + (from + to) / 2) ** 2) / (2 * sigma ** 2));
            }
            far += length;
        }
        return sum / (sigma * Math.sqrt(2 * Math.PI));
    }
}
