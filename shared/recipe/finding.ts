import type { Where } from '../quantity/where';
import type { Message } from './phrase';

export type Severity = 'error' | 'warning' | 'info' | 'hint';

/** Something a maker should know, with its numbers in the message and a way to mend it where one is mechanical. */
export interface Finding {
    /** The rule's id in kebab-case: the word after `allow`. */
    readonly rule: string;
    readonly severity: Severity;
    readonly message: Message;
    /** The narrowest place that a maker would change. */
    readonly where: Where;
    readonly related: readonly Related[];
    readonly fixes: readonly Fix[];
    /** `allow` cannot silence it: the numbers say that it goes wrong. */
    readonly firm?: boolean;
    /** Index of the step it belongs to, for the bench view and for `allow`. */
    readonly step?: number;
    /** It stands in a routine, for all that follow it: said once, whatever file that is in. */
    readonly inRoutine?: true;
    /** Where it shows on the piece (mm on the named blank), when it can be pointed at. */
    readonly spots?: readonly MarkedSpot[];
}

export interface Related {
    readonly message: Message;
    readonly where: Where;
    /** What is said here is a finding of its own that follows from the one it stands under: its rule, and how grave it is. */
    readonly rule?: string;
    readonly severity?: Severity;
}

const gravity = { error: 0, warning: 1, info: 2, hint: 3 } as const satisfies Readonly<Record<Severity, number>>;

/** The order in which findings are read, everywhere: the gravest first, and in the order of the text among equals. */
export function byGravity(a: Finding, b: Finding): number {
    return gravity[a.severity] - gravity[b.severity] || a.where.offset - b.where.offset || (a.rule < b.rule ? -1 : 1);
}

/** A place on a blank, in millimetres from its top left corner, with the size of what is meant. */
export interface MarkedSpot {
    readonly blank: string;
    readonly x: number;
    readonly y: number;
    readonly size: number;
}

export interface Fix {
    readonly title: Message;
    readonly changes: readonly Change[];
    /** The one a person would take without thinking. */
    readonly preferred?: boolean;
    /** It writes down what is to be burnt and measured: the finding stands until that is done. */
    readonly untilMeasured?: true;
}

/** A change of the text, in terms of statements; the language room turns it into text edits. */
export type Change =
    | { readonly do: 'replace'; readonly where: Where; readonly text: string }
    | { readonly do: 'remove'; readonly where: Where }
    /** Several statements stand each on a line of their own. */
    | { readonly do: 'add'; readonly block: Where; readonly statement: string }
    | { readonly do: 'move'; readonly statement: Where; readonly before: Where }
    | { readonly do: 'move'; readonly statement: Where; readonly after: Where };
