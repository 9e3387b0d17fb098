import Flatbush from 'flatbush';
import { subtract } from '../../geometry/boolean';
import { emptyRegion, type Region, tangledRegion } from '../../geometry/region';
import type { ArtPart } from '../art';
import { darkWithin } from './dark-within';
import { bare, extremeThrough, flat, over } from './filter';
import { eachLeaf, type Leaf, leafOf, type Node, nodesOf } from './nodes';
import { checked, layDown, type Sheet, Tangled, together } from './opaque';
import { Tiles } from './tiles';

/** Points that may be looked at where gradients lie on one another, in all. */
const mostPoints = 20_000_000;

/** What burns, and how it was worked out. */
export interface Painted extends Region {
    /** mm between the points at which stacks of paint were looked at that are too many to be taken exactly. */
    readonly grid?: number;
}

/**
 * What looks darker than the threshold once all parts are laid down, the later on top; or
 * `tangledRegion`, if they cross one another too often. Exact where paint is of one tone or a single
 * gradient decides; where gradients lie on one another, on a grid of a twentieth of a millimetre (coarser for large areas). Near linear
 * in the corners of what is opaque. What is translucent is taken cell by cell within a bound on the work; stacks beyond it are looked
 * at in the points of a grid, which the answer tells.
 */
export function darkAt(parts: readonly Omit<ArtPart, 'colour'>[], threshold: number): Painted {
    if (!(threshold < 1)) return emptyRegion;
    try {
        return darkOf(nodesOf(parts, threshold), threshold);
    } catch (error) {
        if (error instanceof Tangled) return tangledRegion;
        throw error;
    }
}

function darkOf(nodes: readonly Node[], threshold: number): Painted {
    const settled = settledAlone(nodes, threshold);
    const budget = { points: mostPoints };
    const opaque = settled.filter((node): node is Leaf => node.kind === 'leaf' && node.closed);
    const dark = layDown(opaque.flatMap((leaf) => sheetsOf(leaf, threshold, budget))).get(1) ?? emptyRegion;
    const looked = settled.filter((node) => !(node.kind === 'leaf' && node.closed));
    if (looked.length === 0) return dark;
    const tiles = new Tiles(threshold, budget);
    const places = clusters(looked).map((cluster) => {
        const regions: Region[] = [];
        eachLeaf(cluster, ({ region }) => regions.push(region));
        return together(regions);
    });
    for (const place of places) tiles.look(place, nodes);
    tiles.finish();
    const beside = checked(subtract(dark, { rings: places.flatMap(({ rings }) => rings) }));
    const { rings } = together([beside, ...tiles.dark]);
    return tiles.grid === undefined ? { rings } : { rings, grid: tiles.grid };
}

/**
 * Translucent areas that look alike whatever lies below, or that nothing lies below, are as good
 * as opaque ones, where nothing translucent lies on them.
 */
function settledAlone(nodes: readonly Node[], threshold: number): readonly Node[] {
    if (nodes.every((node) => node.kind === 'leaf' && node.closed)) return nodes;
    const index = new Flatbush(nodes.length);
    for (const { box } of nodes) index.add(box.minX, box.minY, box.maxX, box.maxY);
    index.finish();
    return nodes.map((node, at) => {
        if (node.kind === 'group' || node.closed) return node;
        const { region, box, filter } = node;
        if (extremeThrough(filter, 0, 0) > threshold) return leafOf(region, box, flat(1, 0));
        if (extremeThrough(filter, 1, 1) <= threshold) return leafOf(region, box, bare);
        const below = index.search(box.minX, box.minY, box.maxX, box.maxY, (other) => other < at);
        return below.length > 0 ? node : leafOf(region, box, over(filter, bare));
    });
}

/** An opaque area as what is dark of it (1) and what is not (0). */
function sheetsOf({ region, filter }: Leaf, threshold: number, budget: { points: number }): Sheet[] {
    if (filter.kind === 'flat') return [{ region, key: filter.add > threshold ? 1 : 0 }];
    return [
        { region, key: 0 },
        { region: darkWithin(region, filter, threshold, budget), key: 1 },
    ];
}

/** Those whose boxes overlap, directly or by way of others. */
function clusters(nodes: readonly Node[]): Node[][] {
    const index = new Flatbush(nodes.length);
    for (const { box } of nodes) index.add(box.minX, box.minY, box.maxX, box.maxY);
    index.finish();
    const seen = new Set<number>();
    const found: Node[][] = [];
    for (let start = 0; start < nodes.length; start++) {
        if (seen.has(start)) continue;
        seen.add(start);
        const waiting = [start];
        const cluster: Node[] = [];
        for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
            const node = nodes[at]!;
            cluster.push(node);
            const { minX, minY, maxX, maxY } = node.box;
            for (const other of index.search(minX, minY, maxX, maxY, (one) => !seen.has(one))) {
                seen.add(other);
                waiting.push(other);
            }
        }
        found.push(cluster);
    }
    return found;
}
