import { quoted } from './quoted';

export interface RunText {
    readonly recipe: string;
    readonly date: string;
    readonly revision: number;
    readonly laser?: string;
    /** The fingerprint of what recipe and stock say. */
    readonly plan?: string;
    /** What was burnt and measured, each a line as it is written. */
    readonly lines: readonly string[];
    readonly notes: readonly string[];
}

/** A run as recipe text. */
export function runBlock({ recipe, date, revision, plan, laser, lines, notes }: RunText): string {
    const all = [
        ...(plan === undefined ? [] : [`of plan ${plan}`]),
        `issue ${revision}`,
        ...(laser === undefined ? [] : [`laser ${laser}`]),
        ...lines,
        ...notes.map((note) => `note ${quoted(note)}`),
    ];
    return [`run ${recipe} ${date} {`, ...all.map((line) => `  ${line}`), '}', ''].join('\n');
}
