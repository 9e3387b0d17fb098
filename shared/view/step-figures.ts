import type { Where } from '../quantity/where';

/** What a plan adds to a step's text: the settings that could be written into it, and figures to be shown beside it. Plain data. */
export interface StepFigures {
    /** The whole step, where it stood when it was planned. */
    readonly whole: Where;
    /** Statements that write the solved settings down, where none is written. Empty where nothing can be pinned. */
    readonly pins: readonly string[];
    /** No coupon stands behind them. */
    readonly guess: boolean;
    readonly hints: readonly Hint[];
}

export interface Hint {
    /** Behind the step's first line, or behind the depth or tone that it asks for. */
    readonly at: 'head' | 'wish';
    readonly label: string;
    readonly tooltip: string;
}
