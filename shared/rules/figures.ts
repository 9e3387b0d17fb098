import type { Step } from '../recipe/step';

/** A figure that a finding would have written in a step, to be agreed on with all others that are judged by it. */
export interface Proposal {
    readonly rule: string;
    /** The step that the figure stands in, as it is now. */
    readonly step: Pick<Step, 'index'>;
    /** Which of its figures it is. */
    readonly of:
        | 'depth'
        | 'depth solved again'
        | 'passes'
        | 'take'
        | 'time'
        | 'time before'
        | 'pitch'
        | 'power'
        | 'speed'
        | 'overtravel';
    /** In base units, round in the maker's own. */
    readonly figure: number;
    /** The step with a figure, and others that go with it; left out for a least figure that stands alone: the greatest serves all then. */
    readonly with?: (figure: number) => readonly Step[];
    /** Round figures lie so far apart, in base units; only what is proposed is tried where it is left out. */
    readonly grid?: number;
    /** Ends beyond which nobody would go, in base units. */
    readonly between?: readonly [low: number, high: number];
}

/** A figure with which the finding is gone and nothing else speaks; or what stands against every one. */
export type Agreed =
    | { readonly figure: number; readonly against?: undefined }
    | { readonly figure?: undefined; readonly against: string };

/** Where rules agree on what to write: whoever has a figure changed asks here first. */
export interface Figures {
    agree(proposal: Proposal): Agreed;
    /** Whether this rule's word goes when steps are changed so, and no error or warning comes. */
    suits(rule: string, changed: readonly Step[]): boolean;
}

/** Takes every rule at its word. */
export const atItsWord: Figures = { agree: ({ figure }) => ({ figure }), suits: () => true };

/** The end of a message whose figure would bring another finding. */
export function noFigure(what: string, against: string): string {
    return ` No ${what} serves both this and \`${against}\`.`;
}
