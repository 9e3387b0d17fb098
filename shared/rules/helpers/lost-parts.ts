import { union } from '../../geometry/boolean';
import { narrow } from '../../geometry/narrow';
import type { NarrowPlace } from '../../geometry/narrow-place';
import { keptFor } from '../../plan/kept';
import type { InlayPlan } from '../../plan/plan';

/** What of a veneer half is gone when so much is taken off both edges of its parts together, mm. Tips are left out: they only end a little earlier. */
export function lostPlaces({ reliefLaser }: InlayPlan, taken: number): NarrowPlace[] {
    const figures = reliefLaser.placed.filter((placed) => placed.inverse).map((placed) => placed.figure);
    const first = figures[0];
    if (first === undefined || !(taken > 0)) return [];
    const key = `narrower ${taken} of ${figures.length}`;
    const find = () => narrow(figures.length === 1 ? first : union(figures), taken).filter((place) => place.kind !== 'tip');
    return figures.length === 1 ? keptFor(first, key, find) : keptFor(reliefLaser.region, key, find);
}

/** Widths are good to this part of what is looked for. */
const fineness = 0.02;
const mostTries = 3;

/** The most that may be taken off both edges together before something is gone, up to a given width, mm; undefined where none is found. */
export function mostTaken(inlay: InlayPlan, upTo: number): number | undefined {
    const narrowest = lostPlaces(inlay, upTo)[0]?.width;
    if (narrowest === undefined) return upTo;
    let keeps = Math.min(narrowest, upTo) * (1 - fineness);
    for (let tries = 1; lostPlaces(inlay, keeps).length > 0; tries++) {
        if (tries >= mostTries) return undefined;
        keeps *= 1 - fineness;
    }
    return keeps;
}
