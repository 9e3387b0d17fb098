import { subtract } from './boolean';
import { EdgeIndex } from './edge-index';
import { signedArea } from './measure';
import { Nesting } from './nesting';
import type { Region, Ring } from './region';
import { reversed } from './reverse';

/** The connected pieces of a region: each outer ring with the holes in it, in the order of their outer rings. */
export function islands(region: Region): Region[] {
    const { rings } = region;
    if (rings.length === 0) return [];
    const nesting = new Nesting(region);
    const pieces = new Map<number, Ring[]>();
    for (let ring = 0; ring < rings.length; ring++) if (nesting.areas[ring]! > 0) pieces.set(ring, [rings[ring]!]);
    for (let ring = 0; ring < rings.length; ring++) {
        if (nesting.areas[ring]! >= 0) continue;
        const hole = rings[ring]!;
        // Rings may share a corner, so the middle of an edge is asked.
        pieces.get(nesting.outerAround((hole[0]! + hole[2]!) / 2, (hole[1]! + hole[3]!) / 2))?.push(hole);
    }
    return [...pieces.values()].map((piece) => ({ rings: piece }));
}

/** The holes of a region, each as a region of its own that is filled to its edge. */
export function holes(region: Region): Region[] {
    return region.rings.filter((ring) => signedArea(ring) < 0).map((ring) => ({ rings: [reversed(ring)] }));
}

/**
 * The pieces that come free when a region is burnt through a sheet: what is left of it and does
 * not reach the sheet's edge. A burn from edge to edge leaves two pieces that both still do.
 */
export function loosePieces(sheet: Region, burnt: Region): Region[] {
    const edges = new EdgeIndex(sheet.rings);
    return islands(subtract(sheet, burnt)).filter((piece) => !reaches(edges, piece.rings[0]!));
}

/** Closer than this, in mm, is on the edge: a few steps of the grid. */
const onEdge = 5e-4;

function reaches(edges: EdgeIndex, ring: Ring): boolean {
    for (let i = 0; i < ring.length; i += 2) if (edges.distance(ring[i]!, ring[i + 1]!, onEdge) < onEdge) return true;
    return false;
}
