import type { Laser } from '../recipe/stock';

/** Where a laser's block says nothing: what most controllers take for full power. @commonPractice */
const USUAL_FULL = 1000;

/** What the power does where the head is slower than it was told to be, and how a machine file says it. */
export interface Output {
    /** The power goes down with the speed by itself, so that every place gets the same dose. */
    readonly followsSpeed: boolean;
    /**
     * The word that switches the beam on. The standard knows M3 and M4 as the two ways that a spindle turns; that M4 has the power follow the
     * speed is a custom among controllers of lasers. @commonPractice
     */
    readonly word: 'M3' | 'M4';
    /** The S that stands for full power. */
    readonly full: number;
}

/** How the power of a laser works: constant, and S 1000 for all of it, where its block says nothing. */
export function outputOf(laser: Laser | undefined): Output {
    const followsSpeed = laser?.output?.value === 'with-speed';
    const full = laser?.fullOutput?.value ?? USUAL_FULL;
    return { followsSpeed, word: followsSpeed ? 'M4' : 'M3', full };
}

/** "M3, constant power, S 1000 for full power". */
export function outputWords({ word, followsSpeed, full }: Output): string {
    return `${word}, ${followsSpeed ? 'power that follows the speed' : 'constant power'}, S ${full} for full power`;
}
