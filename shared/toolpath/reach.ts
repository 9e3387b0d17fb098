import type { Bounds } from '../geometry/region';
import { exactTurn } from './edges';
import { type AreaWork, type MachineJob, overtravelOf, type PathWork } from './job';
import type { Motion } from './motion';
import type { BlankPoint } from './place';
import { eachSweep, sweepEnds } from './sweep';

/** Bounds (mm) that grow with every place they are told of. */
class Reach {
    private minX = Number.POSITIVE_INFINITY;
    private minY = Number.POSITIVE_INFINITY;
    private maxX = Number.NEGATIVE_INFINITY;
    private maxY = Number.NEGATIVE_INFINITY;

    add(x: number, y: number): void {
        if (x < this.minX) this.minX = x;
        if (x > this.maxX) this.maxX = x;
        if (y < this.minY) this.minY = y;
        if (y > this.maxY) this.maxY = y;
    }

    get bounds(): Bounds | undefined {
        const { minX, minY, maxX, maxY } = this;
        return minX <= maxX && minY <= maxY ? { minX, minY, maxX, maxY } : undefined;
    }
}

/**
 * What the head really moves over while it does its work (mm on the blank, y downwards): scan lines with their
 * run-up and run-out, outlines and cuts with their lead-ins; without the way from the origin and back. Undefined
 * where it does not move at all. O(n) in scan lines and places.
 */
export function reachOfJob({ work, motion }: Pick<MachineJob, 'work' | 'motion'>): Bounds | undefined {
    const reach = new Reach();
    for (const one of work) {
        if (!(one.passes > 0)) continue;
        if (one.kind === 'area') addArea(reach, one, motion);
        else addPaths(reach, one);
    }
    return reach.bounds;
}

function addArea(reach: Reach, work: AreaWork, motion: Motion): void {
    const { hatch } = work;
    const over = overtravelOf(work, motion);
    const { cos, sin } = exactTurn(hatch.angle);
    eachSweep(work, motion, (sweep) => {
        const { start, end } = sweepEnds(hatch, sweep, over);
        const v = hatch.first + sweep.line * hatch.pitch;
        for (const u of [start, end]) reach.add(u * cos - v * sin, u * sin + v * cos);
    });
}

function addPaths(reach: Reach, { paths }: PathWork): void {
    for (const { points } of paths) {
        if (points.length < 4) continue;
        for (let i = 0; i + 1 < points.length; i += 2) reach.add(points[i]!, points[i + 1]!);
    }
}

/** What lies within any of these bounds, and the places besides. Undefined for nothing. */
export function reachOfAll(all: Iterable<Bounds | undefined>, ...places: readonly BlankPoint[]): Bounds | undefined {
    const reach = new Reach();
    for (const one of all) {
        if (one === undefined) continue;
        reach.add(one.minX, one.minY);
        reach.add(one.maxX, one.maxY);
    }
    for (const { x, y } of places) reach.add(x, y);
    return reach.bounds;
}
