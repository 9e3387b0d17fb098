import { intersect } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import { type Bounds, type Region, tangledRegion } from '../../geometry/region';
import { rectangle } from '../../geometry/shapes';
import type { ArtGroup, ArtPart } from '../art';
import { asShown } from './as-shown';
import { type Filter, flat, isClosed } from './filter';

/** What is laid down: a painted area, or a group that is seen through as a whole. */
export type Node = Leaf | Group;

export interface Leaf {
    readonly kind: 'leaf';
    readonly region: Region;
    readonly box: Bounds;
    readonly filter: Filter;
    readonly closed: boolean;
}

interface Group {
    readonly kind: 'group';
    readonly nodes: readonly Node[];
    readonly box: Bounds;
    readonly opacity: number;
}

export function leafOf(region: Region, box: Bounds, filter: Filter): Leaf {
    return { kind: 'leaf', region, box, filter, closed: isClosed(filter) };
}

/** Parts in painter's order as the tree of the translucent groups around them; areas of nothing are left out. */
export function nodesOf(parts: readonly Omit<ArtPart, 'colour'>[], threshold: number): Node[] {
    const root: Node[] = [];
    const open: { readonly group: ArtGroup; readonly nodes: Node[] }[] = [];
    const closeTo = (depth: number): void => {
        while (open.length > depth) {
            const { group, nodes } = open.pop()!;
            const box = boxAround(nodes);
            if (box !== undefined) (open.at(-1)?.nodes ?? root).push({ kind: 'group', nodes, box, opacity: group.opacity });
        }
    };
    for (const { region, darkness, opacity, shading, groups = [] } of parts) {
        let common = 0;
        while (common < groups.length && open[common]?.group === groups[common]) common++;
        closeTo(common);
        for (const group of groups.slice(common)) open.push({ group, nodes: [] });
        const box = bounds(region);
        if (box === undefined) continue;
        // Within a translucent group the threshold is passed elsewhere.
        const shown = shading === undefined || groups.length > 0 ? shading : asShown(shading, threshold);
        const filter: Filter = shown === undefined ? evenly(darkness, opacity) : { kind: 'shaded', shading: shown };
        (open.at(-1)?.nodes ?? root).push(leafOf(region, box, filter));
    }
    closeTo(0);
    return root;
}

/** `darkness` with its opacity in it already. */
function evenly(darkness: number, opacity: number): Filter {
    const seen = inSteps(opacity);
    return flat(opacity > 0 ? (darkness * seen) / opacity : 0, 1 - seen);
}

/**
 * An opacity of paint that lies exactly between two of the 255 steps of a screen (10, 30, 50, 70, 90 %) as the upper one; any other as it is. Only
 * so is it decided whether paint at half its strength, which is drawn often, is past a threshold of a half: black is (128 of 255), and white on
 * black leaves less than half of it. Both renderers that art was held against have it so; of a group at half its strength they say different things.
 */
function inSteps(opacity: number): number {
    const steps = 255 * opacity;
    const upper = Math.floor(steps) + 1;
    return Math.abs(upper - steps - 0.5) < 1e-9 ? upper / 255 : opacity;
}

function boxAround(nodes: readonly Node[]): Bounds | undefined {
    if (nodes.length === 0) return undefined;
    return {
        minX: Math.min(...nodes.map(({ box }) => box.minX)),
        minY: Math.min(...nodes.map(({ box }) => box.minY)),
        maxX: Math.max(...nodes.map(({ box }) => box.maxX)),
        maxY: Math.max(...nodes.map(({ box }) => box.maxY)),
    };
}

export function overlap(a: Bounds, b: Bounds): boolean {
    return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** Calls back with the regions of all areas, those in groups too. */
export function eachLeaf(nodes: readonly Node[], found: (leaf: Leaf) => void): void {
    for (const node of nodes) {
        if (node.kind === 'leaf') found(node);
        else eachLeaf(node.nodes, found);
    }
}

/** The nodes as far as they lie in a box; undefined where they are too tangled to be cut. */
export function cutNodes(nodes: readonly Node[], box: Bounds): Node[] | undefined {
    const frame = rectangle(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
    const cut: Node[] = [];
    for (const node of nodes) {
        if (!overlap(node.box, box)) continue;
        if (isWithin(node.box, box)) cut.push(node);
        else if (node.kind === 'group') {
            const nodesWithin = cutNodes(node.nodes, box);
            if (nodesWithin === undefined) return undefined;
            const around = boxAround(nodesWithin);
            if (around !== undefined) cut.push({ ...node, nodes: nodesWithin, box: around });
        } else {
            const region = intersect(node.region, frame);
            if (region === tangledRegion) return undefined;
            const around = bounds(region);
            if (around !== undefined) cut.push({ ...node, region, box: around });
        }
    }
    return cut;
}

function isWithin(inner: Bounds, outer: Bounds): boolean {
    return inner.minX >= outer.minX && inner.minY >= outer.minY && inner.maxX <= outer.maxX && inner.maxY <= outer.maxY;
}
