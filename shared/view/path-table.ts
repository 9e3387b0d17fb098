import type { Region } from '../geometry/region';
import { simplifyRing } from '../geometry/simplify';
import { keptFor } from '../plan/kept';
import { pathName, picturePath } from './picture-path';

/** How far the picture's outlines may stray from the true ones, mm: less than a screen shows. */
const pictureTolerance = 0.02;

/** Collects the path data of regions, each once, under names that say what the data is; what the view has is left out. */
export class PathTable {
    readonly paths: Record<string, string> = {};
    private readonly had: ReadonlySet<string>;

    constructor(had: readonly string[] = []) {
        this.had = new Set(had);
    }

    idOf(region: Region): string {
        const { id, data } = keptFor(region, 'picture', () => {
            // Edges that come to meet by less than a screen shows need not be united for a picture.
            const drawn = picturePath({ rings: region.rings.map((ring) => simplifyRing(ring, pictureTolerance)) });
            return { id: pathName(drawn), data: drawn };
        });
        if (!this.had.has(id)) this.paths[id] = data;
        return id;
    }
}
