import type { InlayPlan } from '../../plan/plan';
import { depthUnit, roundLength } from './ask-depth';

/** What should stand proud, to be sanded flush with the board, mm. @commonPractice */
const proud = 0.1;

/** The depth of a pocket in which its veneer stands proud by what sanding flush takes off, mm; undefined where the veneer is not known. */
export function depthForVeneer({ veneer, film, pocket }: InlayPlan): number | undefined {
    if (veneer === undefined) return undefined;
    const deep = roundLength(veneer.value + film.value - proud, depthUnit(pocket), 'down');
    return deep > 0 ? deep : undefined;
}
