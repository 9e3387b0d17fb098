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
    /** What only one piece at a time can be on, such as a laser; absent: the hands are enough. */
    readonly station?: string;
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
