/** One step of the work on one piece, in s. */
export interface Work {
    /** Hands-on, once whenever the bench turns to this step. */
    readonly setUp: number;
    /** Hands-on for each piece. */
    readonly each: number;
    /** The laser runs and somebody has to be there. */
    readonly machine: number;
    /** Pieces that one set-up serves, such as those that a cup of resin fills; absent: any number in a row. */
    readonly batch?: number;
    /** Time that has to pass afterwards, with nobody there. */
    readonly wait: number;
    /** Indices of earlier works that have to be over, waits and all. */
    readonly after: readonly number[];
}

/** A stretch of the bench: one work on one piece. Times in s from the start. */
export interface Turn {
    readonly work: number;
    readonly piece: number;
    readonly start: number;
    /** When the hands are free again. */
    readonly end: number;
    /** When what follows may begin: `end` and the wait. */
    readonly ready: number;
}

export interface Schedule {
    readonly turns: readonly Turn[];
    /** When the last piece is ready. */
    readonly ready: number;
    /** Hands-on and beside the laser, in all. */
    readonly attended: number;
    /** Time until `ready` in which nobody is needed. */
    readonly idle: number;
    /** So many pieces that only the first ones were laid out, and the rest follow at the pace of the hands. */
    readonly scaled: boolean;
}

/** More turns, or pieces, than this are not laid out one by one. */
const mostTurns = 2000;
const mostPieces = 200;
const day = 86_400;
/** Longer than this is a figure in the wrong unit, s. */
const longest = 1e9;

/**
 * One maker and one laser at work on several pieces: while one piece waits, the hands are on
 * another. A list scheduler (Graham, 1969): of what can be done now, first what has most still to
 * follow; then what needs no new set-up; then the earlier step and the earlier piece. Deterministic.
 *
 * @param works in the order of the recipe; `after` points backwards
 * @param workday hours in which hands can work, in s from the start of each day; absent: day and night
 */
export function schedule(works: readonly Work[], pieces: number, workday?: number): Schedule {
    const wanted = pieces >= 1 && Number.isFinite(pieces) ? Math.floor(pieces) : 0;
    const usable = works.map(finite);
    const laid = Math.min(wanted, mostPieces, Math.max(1, Math.floor(mostTurns / Math.max(1, usable.length))));
    const hours = workday !== undefined && workday > 0 && workday < day ? workday : day;
    const bench = new Bench(usable, laid, hours);
    const turns = bench.run();
    const handsEach = usable.reduce(
        (sum, work) => sum + work.each + work.machine + (work.batch === undefined ? 0 : work.setUp / work.batch),
        0,
    );
    const rest = (wanted - laid) * handsEach;
    const attended = turns.reduce((sum, turn) => sum + turn.end - turn.start, 0) + rest;
    const ready = turns.reduce((latest, turn) => Math.max(latest, turn.ready), 0) + rest * (day / hours);
    return { turns, ready, attended, idle: Math.max(0, ready - attended), scaled: laid < wanted };
}

function finite(work: Work, index: number): Work {
    const time = (value: number): number => (value > 0 ? Math.min(value, longest) : 0);
    return {
        setUp: time(work.setUp),
        each: time(work.each),
        machine: time(work.machine),
        ...(work.batch !== undefined && work.batch >= 1 ? { batch: Math.floor(work.batch) } : {}),
        wait: time(work.wait),
        after: work.after.filter((before) => before >= 0 && before < index),
    };
}

interface Candidate {
    readonly work: number;
    readonly piece: number;
    readonly from: number;
}

class Bench {
    private readonly tails: number[];
    private readonly turns: Turn[] = [];
    /** For each piece and work, when it is ready; absent while it is not done. */
    private readonly done: (number | undefined)[][];
    /** For each piece, the works of which all that comes before has been laid out. */
    private readonly open: Candidate[][];
    private now = 0;
    private last = -1;
    /** Pieces in a row that the last set-up has served. */
    private served = 0;

    constructor(
        private readonly works: readonly Work[],
        pieces: number,
        private readonly hours: number,
    ) {
        this.tails = tailsOf(works);
        this.done = Array.from({ length: pieces }, () => works.map(() => undefined));
        this.open = this.done.map((_, piece) => this.openOf(piece));
    }

    run(): Turn[] {
        for (let candidates = this.open.flat(); candidates.length > 0; candidates = this.open.flat()) this.step(candidates);
        return this.turns;
    }

    private openOf(piece: number): Candidate[] {
        const states = this.done[piece]!;
        return this.works.flatMap((work, index) => {
            if (states[index] !== undefined) return [];
            let from = 0;
            for (const before of work.after) {
                const ready = states[before];
                if (ready === undefined) return [];
                from = Math.max(from, ready);
            }
            return [{ work: index, piece, from }];
        });
    }

    private step(candidates: readonly Candidate[]): void {
        // Waiting by itself takes no hands: all of it is under way at once.
        const waits = candidates.filter(({ work }) => this.handsOn(work) === 0);
        for (const wait of waits) this.take(wait, wait.from, 0);
        if (waits.length > 0) return;
        const possible = candidates.filter((candidate) => candidate.from <= this.now && this.fits(candidate));
        if (possible.length > 0) {
            const best = possible.reduce((a, b) => (this.before(b, a) ? b : a));
            const length = this.length(best);
            this.take(best, this.now, length);
            this.served = this.isSetUp(best) ? this.served + 1 : 1;
            this.last = best.work;
            this.now += length;
            return;
        }
        const soonest = candidates.reduce((least, { from }) => Math.min(least, from), Number.POSITIVE_INFINITY);
        this.now = soonest > this.now ? this.atWork(soonest) : (Math.floor(this.now / day) + 1) * day;
    }

    private take({ work, piece }: Candidate, start: number, length: number): void {
        const end = start + length;
        const ready = end + this.works[work]!.wait;
        this.done[piece]![work] = ready;
        this.open[piece] = this.openOf(piece);
        this.turns.push({ work, piece, start, end, ready });
    }

    private handsOn(work: number): number {
        const { setUp, each, machine } = this.works[work]!;
        return setUp + each + machine;
    }

    private length({ work }: Candidate): number {
        const { setUp, each, machine } = this.works[work]!;
        return (this.isSetUp({ work }) ? 0 : setUp) + each + machine;
    }

    private isSetUp({ work }: Pick<Candidate, 'work'>): boolean {
        return work === this.last && this.served < (this.works[work]!.batch ?? Number.POSITIVE_INFINITY);
    }

    /** Whether it can be finished today; what is longer than a day's work only has to begin in the morning. */
    private fits(candidate: Candidate): boolean {
        if (this.hours === day) return true;
        const hour = this.now % day;
        return hour + this.length(candidate) <= this.hours || hour === 0;
    }

    private atWork(time: number): number {
        return time % day < this.hours ? time : (Math.floor(time / day) + 1) * day;
    }

    private before(a: Candidate, b: Candidate): boolean {
        const tail = this.tails[a.work]! - this.tails[b.work]!;
        if (tail !== 0) return tail > 0;
        const again = Number(a.work === this.last) - Number(b.work === this.last);
        if (again !== 0) return again > 0;
        return a.work !== b.work ? a.work < b.work : a.piece < b.piece;
    }
}

/** Time from the start of each work to the end of the piece, along the longest way. */
function tailsOf(works: readonly Work[]): number[] {
    const tails = works.map(() => 0);
    for (let index = works.length - 1; index >= 0; index--) {
        const { each, machine, wait, after } = works[index]!;
        tails[index]! += each + machine + wait;
        for (const before of after) tails[before] = Math.max(tails[before]!, tails[index]!);
    }
    return tails;
}
