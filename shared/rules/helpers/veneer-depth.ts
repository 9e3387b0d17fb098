import type { InlayPlan } from '../../plan/plan';
import { depthUnit, roundLength } from './ask-depth';

/** What should stand proud, to be sanded flush with the board, mm. @commonPractice */
const proud = 0.1;

/** The depth of a pocket in which its veneer stands proud by what sanding flush takes off, mm; undefined where the veneer is not known. */
export function depthForVeneer({ veneer, film, pocket, pocketLaser, stack }: InlayPlan): number | undefined {
    if (veneer === undefined || pocket.kind === 'cut') return undefined;
    // What sanding has taken off the face between the pocket and the inlay.
    const seat = veneer.value + film.value - (stack?.proud.likely.value ?? 0);
    const lost = stack === undefined ? 0 : (pocketLaser.depth?.value ?? seat) - seat;
    const wanted = veneer.value + film.value - proud + (lost > 1e-6 ? lost : 0);
    const deep = roundLength(wanted, depthUnit(pocket), 'down');
    return deep > 0 ? deep : undefined;
}
