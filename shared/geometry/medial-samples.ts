import { partitionPoint } from '../quantity/partition-point';
import type { MedialSample, NarrowPlace } from './narrow-place';

/** Cosine of 150 degrees: two sides that face each other so, or more squarely, enclose a corner of 30 degrees or less. */
const facing = -Math.sqrt(3) / 2;

/**
 * Gathers medial samples into narrow places: unbroken stretches of outline, together with the stretches
 * that face them. Samples come in the order of `at`.
 */
export class MedialSamples {
    private readonly samples: MedialSample[] = [];
    /** The stretch of each sample. */
    private readonly stretchOf: number[] = [];
    /** For each stretch another one of the same place, or itself. */
    private readonly joined: number[] = [];
    /** Signed area of the ring that a stretch goes all the way round; 0 if it does not. */
    private readonly closedArea: number[] = [];
    private current = -1;
    private paused = false;
    private firstSample = 0;
    private startsNarrow = false;

    /** A new ring begins. */
    begin(): void {
        this.current = -1;
        this.paused = false;
        this.startsNarrow = false;
        this.firstSample = this.samples.length;
    }

    add(sample: MedialSample): void {
        if (this.current < 0) {
            this.current = this.joined.length;
            this.joined.push(this.current);
            this.closedArea.push(0);
        }
        if (!this.paused) this.startsNarrow = true;
        this.samples.push(sample);
        this.stretchOf.push(this.current);
    }

    /** The outline is wide enough here. */
    pause(): void {
        this.current = -1;
        this.paused = true;
    }

    /** The ring, of an area in mm2, is complete. */
    end(ringArea: number): void {
        const last = this.current;
        if (last < 0) return;
        if (!this.paused) {
            this.closedArea[last] = ringArea;
        } else if (this.startsNarrow) {
            // The first stretch goes on where the last one ends.
            const first = this.stretchOf[this.firstSample]!;
            for (let i = this.samples.length - 1; this.stretchOf[i] === last; i--) this.stretchOf[i] = first;
            this.joined.pop();
            this.closedArea.pop();
        }
    }

    /** All places; samples no farther apart than `reach` belong to the same side. */
    places(reach: number): NarrowPlace[] {
        this.joinFacing(reach);
        const groups = new Map<number, { samples: MedialSample[]; ends: number; area: number }>();
        for (let stretch = 0; stretch < this.joined.length; stretch++) {
            const place = this.find(stretch);
            const group = groups.get(place) ?? { samples: [], ends: 0, area: 0 };
            // A whole piece has none, a tip one that goes around it, a neck one on each side.
            if (this.closedArea[stretch] === 0) group.ends++;
            group.area += this.closedArea[stretch]!;
            groups.set(place, group);
        }
        for (let i = 0; i < this.samples.length; i++) groups.get(this.find(this.stretchOf[i]!))!.samples.push(this.samples[i]!);
        const places: NarrowPlace[] = [];
        for (const { samples, ends, area } of groups.values()) {
            const place = describe(samples, ends === 0 ? 'whole' : ends === 1 ? 'tip' : 'neck');
            if (place !== undefined) places.push(ends === 0 ? { ...place, area: Math.abs(area) } : place);
        }
        return places;
    }

    private joinFacing(reach: number): void {
        const { samples } = this;
        for (let i = 0; i < samples.length; i++) {
            const { stopX, stopY, stopAt } = samples[i]!;
            const after = this.firstFrom(stopAt);
            for (const other of [after - 1, after]) {
                const sample = samples[other];
                if (sample === undefined || Math.hypot(sample.x - stopX, sample.y - stopY) > reach) continue;
                const a = this.find(this.stretchOf[i]!);
                const b = this.find(this.stretchOf[other]!);
                this.joined[Math.max(a, b)] = Math.min(a, b);
            }
        }
    }

    /** The first sample that is not before a place on the outlines. */
    private firstFrom(at: number): number {
        return partitionPoint(this.samples.length, (index) => this.samples[index]!.at < at);
    }

    private find(stretch: number): number {
        let at = stretch;
        while (this.joined[at] !== at) {
            this.joined[at] = this.joined[this.joined[at]!]!;
            at = this.joined[at]!;
        }
        return at;
    }
}

/** Undefined for what is only a corner. */
function describe(samples: readonly MedialSample[], kind: NarrowPlace['kind']): NarrowPlace | undefined {
    let area = 0;
    for (const { length, radius } of samples) area += length * radius;
    const squarely = samples.filter((sample) => across(sample) <= facing);
    if (squarely.length === 0 && kind !== 'whole') return undefined;
    const bySize = (kind === 'whole' ? samples : squarely).toSorted((a, b) => a.radius - b.radius);
    const chosen = bySize[kind === 'neck' ? 0 : kind === 'tip' ? bySize.length >> 1 : bySize.length - 1]!;
    const width = kind === 'whole' ? 2 * chosen.radius : Math.hypot(chosen.x - chosen.stopX, chosen.y - chosen.stopY);
    return { kind, x: chosen.middleX, y: chosen.middleY, width, area };
}

/** Cosine of the angle between both touching points as seen from the disc's middle. */
function across({ x, y, middleX, middleY, stopX, stopY, radius }: MedialSample): number {
    return ((x - middleX) * (stopX - middleX) + (y - middleY) * (stopY - middleY)) / (radius * radius);
}
