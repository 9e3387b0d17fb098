import type { Region } from '../geometry/region';
import { simplify } from '../geometry/simplify';
import type { Memo } from '../plan/memo';
import { pathData } from '../sheets/path-data';

/** How far the picture's outlines may stray from the true ones, mm: less than a screen shows. */
const pictureTolerance = 0.02;

/** Collects the path data of regions, each once, under short ids that stay the same while the region does. */
export class PathTable {
    readonly paths: Record<string, string> = {};

    constructor(private readonly memo: Memo) {}

    idOf(region: Region): string {
        const id = this.memo.keyOf(region);
        this.paths[id] ??= this.memo.get('picture', id, () => pathData(simplify(region, pictureTolerance), 2));
        return id;
    }
}
