import { focusHeights, spotOf } from '../burn/beam';
import type { Cut, Engrave } from '../recipe/step';
import type { Laser } from '../recipe/stock';
import type { Solved } from './solve-settings';

/**
 * Height of the focus below the face (mm) for each area pass of a pocket that is deeper than the focus reaches;
 * undefined where it stays on the face. The outline and cuts are followed with the focus on the face: an outline
 * sharpens the rim, and nobody has said how far the head may come down into a cut.
 */
export function focusOfPasses(
    step: Engrave | Cut,
    { settings, depth, tone, goesOn }: Solved,
    laser: Laser | undefined,
): readonly number[] | undefined {
    const spot = spotOf(laser);
    if (step.kind !== 'engrave' || laser?.focus?.value === 'fixed') return undefined;
    if (spot === undefined || settings === undefined || depth === undefined || tone !== undefined) return undefined;
    const before = goesOn?.passes ?? 0;
    const heights = focusHeights(spot, depth.value, before + settings.passes).slice(before);
    return heights.some((height) => height > 0) ? heights : undefined;
}

/** A change of the focus: before which pass (from 1), and to which height below the face (mm). */
export interface Refocus {
    readonly pass: number;
    readonly height: number;
}

export function refocusings(focus: readonly number[] | undefined): Refocus[] {
    return (focus ?? []).flatMap((height, i) => (i > 0 && height !== focus![i - 1] ? [{ pass: i + 1, height }] : []));
}
