/** One step of the scale by which gaps are drawn: up to `to` mm. */
export interface GapStep {
    readonly to: number;
    readonly colour: string;
}

/**
 * Pale where the halves lie close, dark where they stand apart: one hue, so that it is told apart by
 * lightness alone. Fixed steps make two pictures comparable.
 */
export const gapSteps: readonly GapStep[] = [
    { to: 0.05, colour: '#f1f6fb' },
    { to: 0.1, colour: '#c6dcf0' },
    { to: 0.15, colour: '#92bee1' },
    { to: 0.25, colour: '#5796cb' },
    { to: 0.5, colour: '#2664a5' },
    { to: Number.POSITIVE_INFINITY, colour: '#0b2a52' },
];

/** Where wood touches wood and stops the press: orange beside blue is told apart by every eye. */
export const touchColour = '#e0560a';

export function gapColour(gap: number): string {
    return (gapSteps.find(({ to }) => gap <= to) ?? gapSteps[gapSteps.length - 1]!).colour;
}
