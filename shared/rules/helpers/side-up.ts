import { type PressFit, pressFit } from '../../bench/press-fit';
import { halfWall, openingWall } from '../../plan/cut-half';
import type { InlayPlan } from '../../plan/plan';

/**
 * How a part that lies face up would go in turned over, where that is the better way: face up its back leads, which is wider, and what
 * lets that in leaves a wider seam than shows well.
 * @param widest seam that still looks like a joint, mm
 */
export function betterTurnedOver(inlay: InlayPlan, widest: number): PressFit | undefined {
    const { relief, turnedOver, fit, gap, veneer, below, half, reliefLaser, pocketLaser, film } = inlay;
    if (relief.kind !== 'cut' || turnedOver || fit === undefined || veneer === undefined) return undefined;
    if (fit.leastClearance - fit.closing <= widest) return undefined;
    const down = (pocketLaser.depth?.value ?? 0) - film.value;
    const seat = pocketLaser.through ? Math.min(down, veneer.value) : down;
    const over = pressFit(
        gap,
        { seat, sanded: below.value, thickness: veneer.value },
        { pocket: openingWall(pocketLaser), veneer: halfWall(reliefLaser, half, false) },
    );
    return over.leastClearance - over.closing <= widest ? over : undefined;
}
