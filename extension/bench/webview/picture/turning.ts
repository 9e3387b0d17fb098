/** How the relief lies while it is turned over and laid into its pocket; `at` runs from 0 to 1. */
export interface Pose {
    /** How much of the way to the pocket it has gone. */
    readonly way: number;
    /** Width it is seen with: 1 face up, 0 on edge, −1 face down. */
    readonly turn: number;
    /** How much of the meeting picture shows. */
    readonly landed: number;
    /** How much of it shows beforehand, to warn where the halves do not fit. */
    readonly foretold: number;
}

export function poseAt(at: number): Pose {
    const gone = Math.min(Math.max(at, 0), 1);
    return {
        way: smooth(gone / 0.85),
        turn: Math.cos(Math.PI * smooth((gone - 0.1) / 0.6)),
        landed: smooth((gone - 0.85) / 0.15),
        foretold: 1 - smooth(gone / 0.1),
    };
}

function smooth(part: number): number {
    const t = Math.min(Math.max(part, 0), 1);
    return t * t * (3 - 2 * t);
}
