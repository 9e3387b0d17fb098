import type { Turn, Work } from './work';
import type { WorkHours } from './work-hours';

/** Pieces of one recipe that are wanted together. */
export interface Order {
    /** In the order of the recipe; `after` points backwards. */
    readonly works: readonly Work[];
    readonly pieces: number;
    /** When all its pieces have to be ready, s from the start; absent: whenever it is its turn. */
    readonly due?: number;
}

/** Who works, and when. */
export interface Bench {
    /** Pairs of hands. */
    readonly makers: number;
    readonly hours: WorkHours;
}

export interface OrderTurn extends Turn {
    readonly order: number;
    /** Whose hands, from 0; of what takes no hands it says nothing. */
    readonly maker: number;
}

export interface ListSchedule {
    /** The orders as they were laid out: figures that are none count as nothing. */
    readonly orders: readonly Order[];
    readonly turns: readonly OrderTurn[];
    /** When each order is ready, s from the start. */
    readonly readyOf: readonly number[];
}

/** What goes first of all that can be done now: what has most still to follow, what has to begin soonest, or what is wanted soonest. */
export type Precedence = 'longest' | 'latest-start' | 'due';

export interface Preference {
    readonly first: Precedence;
    /** What needs no new set-up goes before all else, not only of what is alike. */
    readonly keepsSetUp?: boolean;
}

/** Longer than this is a figure in the wrong unit, s. */
const longest = 1e9;
/** An order without a date comes after all that have one. */
const someDay = 1e12;

/**
 * Several orders on one bench: while one piece waits, the hands are on another of whatever order. A list
 * scheduler (Graham, 1969): of what can be done now, first what the preference says; then what needs no new
 * set-up; then the earlier order, step and piece. A turn takes a pair of hands and its station until it is over.
 * Deterministic.
 *
 * @param preference without one: what has most still to follow
 */
export function listSchedule(
    orders: readonly Order[],
    bench: Bench,
    preference: Preference = { first: 'longest' },
): ListSchedule {
    const usable = orders.map(
        ({ works, pieces, due }): Order => ({
            works: works.map(finite),
            pieces: pieces >= 1 && Number.isFinite(pieces) ? Math.floor(pieces) : 0,
            ...(due !== undefined && Number.isFinite(due) ? { due } : {}),
        }),
    );
    const turns = new Lister(usable, bench, preference).run();
    const readyOf = usable.map(() => 0);
    for (const { order, ready } of turns) readyOf[order] = Math.max(readyOf[order]!, ready);
    return { orders: usable, turns, readyOf };
}

function finite({ setUp, each, machine, batch, wait, after, station }: Work, index: number): Work {
    const time = (value: number): number => (value > 0 ? Math.min(value, longest) : 0);
    return {
        setUp: time(setUp),
        each: time(each),
        machine: time(machine),
        ...(batch !== undefined && batch >= 1 ? { batch: Math.floor(batch) } : {}),
        wait: time(wait),
        after: after.filter((before) => before >= 0 && before < index),
        ...(station === undefined ? {} : { station }),
    };
}

/** Hands-on time of a piece without set-up, s. */
export function handsOn({ each, machine }: Work): number {
    return each + machine;
}

interface Candidate {
    readonly order: number;
    readonly piece: number;
    readonly work: number;
    readonly from: number;
    /** The smaller goes first. */
    readonly rank: number;
    readonly next: number;
}

/** What hands or a station are set up for. */
interface SetUp {
    order: number;
    work: number;
    /** When it is free again. */
    free: number;
}

interface Maker extends SetUp {
    /** Pieces in a row that the last set-up has served. */
    served: number;
}

/** What goes on now: whose hands take what, and how long. */
interface Choice {
    readonly candidate: Candidate;
    readonly maker: number;
    readonly isSetUp: boolean;
    readonly length: number;
}

class Lister {
    private readonly turns: OrderTurn[] = [];
    /** For each order, piece and work, when it is ready; absent while it is not done. */
    private readonly done: (number | undefined)[][][];
    /** For each order and piece, the works of which all that comes before has been laid out. */
    private readonly open: Candidate[][][];
    private readonly makers: Maker[];
    private readonly stations = new Map<string, SetUp>();
    private readonly ranks: readonly (readonly (readonly [number, number])[])[];
    private now: number;

    constructor(
        private readonly orders: readonly Order[],
        private readonly bench: Bench,
        private readonly preference: Preference,
    ) {
        this.now = bench.hours.from(0);
        this.ranks = orders.map((order) => ranksOf(order, preference.first));
        this.done = orders.map(({ works, pieces }) => Array.from({ length: pieces }, () => works.map(() => undefined)));
        this.open = this.done.map((pieces, order) => pieces.map((_, piece) => this.openOf(order, piece)));
        const makers = Math.max(1, Math.floor(bench.makers) || 1);
        this.makers = Array.from({ length: makers }, () => ({ order: -1, work: -1, served: 0, free: 0 }));
    }

    run(): OrderTurn[] {
        for (let all = this.open.flat(2); all.length > 0; all = this.open.flat(2)) this.step(all);
        return this.turns;
    }

    private openOf(order: number, piece: number): Candidate[] {
        const states = this.done[order]![piece]!;
        return this.orders[order]!.works.flatMap((work, index) => {
            if (states[index] !== undefined) return [];
            let from = 0;
            for (const before of work.after) {
                const ready = states[before];
                if (ready === undefined) return [];
                from = Math.max(from, ready);
            }
            const [rank, next] = this.ranks[order]![index]!;
            return [{ order, piece, work: index, from, rank, next }];
        });
    }

    private step(candidates: readonly Candidate[]): void {
        // Waiting by itself takes no hands: all of it is under way at once.
        const waits = candidates.filter((candidate) => this.takesNoHands(candidate));
        for (const wait of waits) this.take(wait, -1, wait.from, 0);
        if (waits.length > 0) return;
        let best: Choice | undefined;
        for (const candidate of candidates) {
            if (candidate.from > this.now) continue;
            const choice = this.choiceOf(candidate);
            if (choice !== undefined && (best === undefined || this.before(choice, best))) best = choice;
        }
        if (best === undefined) this.goOn(candidates);
        else this.begin(best);
    }

    private takesNoHands({ order, work: index }: Candidate): boolean {
        const work = this.orders[order]!.works[index]!;
        return work.setUp + handsOn(work) === 0;
    }

    /** The hands that can take it now: those that are set up for it, else the first that are free. */
    private choiceOf(candidate: Candidate): Choice | undefined {
        const work = this.orders[candidate.order]!.works[candidate.work]!;
        const station = work.station === undefined ? undefined : this.stations.get(work.station);
        if (station !== undefined && station.free > this.now) return undefined;
        let free: number | undefined;
        for (const [maker, { free: until }] of this.makers.entries()) {
            if (until > this.now) continue;
            if (this.isSetUp(candidate, work, maker, station)) {
                const length = handsOn(work);
                return this.bench.hours.fits(this.now, length) ? { candidate, maker, isSetUp: true, length } : undefined;
            }
            free ??= maker;
        }
        const length = work.setUp + handsOn(work);
        if (free === undefined || !this.bench.hours.fits(this.now, length)) return undefined;
        return { candidate, maker: free, isSetUp: false, length };
    }

    private isSetUp({ order, work: index }: Candidate, work: Work, maker: number, station: SetUp | undefined): boolean {
        const hands = this.makers[maker]!;
        if (hands.order !== order || hands.work !== index) return false;
        if (hands.served >= (work.batch ?? Number.POSITIVE_INFINITY)) return false;
        return work.station === undefined || (station?.order === order && station.work === index);
    }

    private begin({ candidate, maker, isSetUp, length }: Choice): void {
        const { order, work } = candidate;
        const hands = this.makers[maker]!;
        hands.served = isSetUp ? hands.served + 1 : 1;
        const busy = { order, work, free: this.now + length };
        Object.assign(hands, busy);
        const { station } = this.orders[order]!.works[work]!;
        if (station !== undefined) this.stations.set(station, busy);
        this.take(candidate, maker, this.now, length);
    }

    private take({ order, piece, work }: Candidate, maker: number, start: number, length: number): void {
        const end = start + length;
        const ready = end + this.orders[order]!.works[work]!.wait;
        this.done[order]![piece]![work] = ready;
        this.open[order]![piece] = this.openOf(order, piece);
        this.turns.push({ order, work, piece, maker, start, end, ready });
    }

    /** On to the next moment at which something else can be done. */
    private goOn(candidates: readonly Candidate[]): void {
        const { now } = this;
        let next = Number.POSITIVE_INFINITY;
        let isLeft = false;
        const soonestFree = this.makers.reduce((least, { free }) => Math.min(least, free), Number.POSITIVE_INFINITY);
        if (soonestFree > now) next = soonestFree;
        else {
            for (const { free } of [...this.makers, ...this.stations.values()]) if (free > now) next = Math.min(next, free);
            for (const { from } of candidates) {
                if (from > now) next = Math.min(next, from);
                else isLeft = true;
            }
            // What is left lying since it does not fit into today any more.
            if (isLeft) next = Math.min(next, this.bench.hours.nextMorning(now));
        }
        this.now = this.bench.hours.from(next);
    }

    private before(a: Choice, b: Choice): boolean {
        if (this.preference.keepsSetUp === true && a.isSetUp !== b.isSetUp) return a.isSetUp;
        const [one, other] = [a.candidate, b.candidate];
        if (one.rank !== other.rank) return one.rank < other.rank;
        if (one.next !== other.next) return one.next < other.next;
        if (a.isSetUp !== b.isSetUp) return a.isSetUp;
        if (one.order !== other.order) return one.order < other.order;
        return one.work !== other.work ? one.work < other.work : one.piece < other.piece;
    }
}

function ranksOf({ works, due = someDay }: Order, first: Precedence): (readonly [number, number])[] {
    return tailsOf(works).map((tail) => {
        if (first === 'longest') return [-tail, 0];
        return first === 'due' ? [due, -tail] : [due - tail, -tail];
    });
}

/** Time from the start of each work to the end of the piece, along the longest way, without set-ups; s. */
export function tailsOf(works: readonly Work[]): number[] {
    const tails = works.map(() => 0);
    for (let index = works.length - 1; index >= 0; index--) {
        const work = works[index]!;
        tails[index]! += handsOn(work) + work.wait;
        for (const before of work.after) tails[before] = Math.max(tails[before]!, tails[index]!);
    }
    return tails;
}
