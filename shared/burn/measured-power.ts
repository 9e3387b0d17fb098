/** What a laser's power differs by from one day to the next, as a standard deviation of its log. @commonPractice */
export const DAY_TO_DAY = 0.02;

/** What the squares of one day say of the power that was really there. */
export interface PowerDay {
    readonly date: string;
    /** Days since 1970. */
    readonly day: number;
    /** Natural log of the power that was there over the power on the day of the coupon. */
    readonly logFactor: number;
    /** Its standard error: place to place, the gauge, and what changes from day to day. */
    readonly error: number;
    /** The part of it that the steps of the gauge make. */
    readonly rounding: number;
    readonly rows: number;
}

/** The power of a laser on the newest day of its runs, beside the power that its depth law was measured with. */
export interface PowerByDay {
    readonly logFactor: number;
    readonly error: number;
    /** From the oldest to the newest. */
    readonly days: readonly PowerDay[];
}
