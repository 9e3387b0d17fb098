import type { Region } from '../geometry/region';
import type { Deed } from '../piece/after-deed';

/** What stays once the rest falls away, and what falls out of it, a region for each cut. */
interface Held {
    readonly keeps?: Region;
    readonly holes: readonly Region[];
}

/** Parts and waste that tabs or a backing still hold in the sheet, by blank. */
export type HeldParts = Map<string, Held>;

/** The waste of holes is taken off the backing. */
export function openings(blank: string, held: HeldParts): Deed[] {
    const parts = held.get(blank);
    if (parts === undefined) return [];
    held.set(blank, { ...parts, holes: [] });
    return freeing({ holes: parts.holes });
}

/** Tabs are broken, or the tape comes off that held the parts. */
export function release(blank: string, held: HeldParts): Deed[] {
    const parts = held.get(blank);
    if (parts === undefined) return [];
    held.delete(blank);
    return freeing(parts);
}

/** The blank is turned over with all that still hangs in it. @param over maps a region to the face that comes up */
export function turnHeld(held: HeldParts, blank: string, over: (region: Region) => Region): void {
    const parts = held.get(blank);
    if (parts === undefined) return;
    held.set(blank, { holes: parts.holes.map(over), ...(parts.keeps && { keeps: over(parts.keeps) }) });
}

function freeing({ keeps, holes }: Held): Deed[] {
    return [
        ...holes.map((region) => ({ do: 'free', holes: region }) as const),
        ...(keeps === undefined ? [] : [{ do: 'free', keeps } as const]),
    ];
}
