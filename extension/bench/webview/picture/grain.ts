import type { GrainView } from '../../../../shared/view/round-view';
import { heart, poreStrength, ringWidth, seedOf } from './wood-figure';

/**
 * Wood grain drawn by rule, in its true size: the same name always gives the same board, and the same as in the round. Lines are where the rings of a
 * log that runs along the grain come out on the face.
 */
export interface Grain {
    /** Growth rings: path data of all of them, and of the stronger ones. */
    readonly fine: string;
    readonly strong: string;
    /** Short strokes of open pores. */
    readonly pores: string;
    /** Width of the late wood's band, mm. */
    readonly band: number;
    /** How much pores show, 0 to 1. */
    readonly poreStrength: number;
}

export interface Figure {
    readonly sawn: GrainView['sawn'];
    readonly pores: GrainView['pores'];
    /** Height of the face above the lower side, mm. */
    readonly thickness: number;
}

/** More rings than these are not drawn: on a long board only every n-th. */
const mostRings = 150;
const mostPores = 420;
/** The late wood is strongest at this part of a year. */
const late = 0.93;

/** Grain along x on a face of `length` by `breadth` mm. */
export function grainAlong(name: string, length: number, breadth: number, figure: Figure): Grain {
    const random = randomFrom(name);
    const board = new Board(name, figure);
    const steps = Math.min(90, Math.max(16, Math.round(length / 5)));
    const [least, most] = board.rings(length, breadth);
    const every = Math.max(1, Math.ceil((most - least + 1) / mostRings));
    const fine: string[] = [];
    const strong: string[] = [];
    for (let ring = least; ring <= most; ring += every) {
        const isStrong = random() < 0.24;
        for (const side of [-1, 1] as const) {
            const path = board.line(ring, side, length, breadth, steps);
            if (path !== '') (isStrong ? strong : fine).push(path);
        }
    }
    const pores: string[] = [];
    const count = Math.min(mostPores, Math.round((length * breadth) / 60));
    for (let i = 0; i < count; i++) pores.push(pore(random, length, breadth));
    return {
        fine: fine.join(''),
        strong: strong.join(''),
        pores: pores.join(''),
        band: 0.32 * ringWidth,
        poreStrength: poreStrength[figure.pores],
    };
}

/** The log that a board was sawn from. */
class Board {
    private readonly seed: number;
    private readonly across: number;
    private readonly below: number;

    constructor(
        name: string,
        private readonly figure: Figure,
    ) {
        this.seed = seedOf(name);
        [this.across, this.below] = heart[figure.sawn];
    }

    /** How far below the face its heart lies at a place along it. */
    private depth(x: number): number {
        return this.figure.thickness - this.below + 0.022 * x;
    }

    /** Where the middle of the rings lies across the face. */
    private middle(x: number): number {
        const { seed } = this;
        const bow = 14 * Math.sin(x / 170 + seed) + 5 * Math.sin(x / 61 + seed * 2);
        return 60 * fraction(seed) + this.across + bow * 0.25;
    }

    /** The first and the last ring that can come out on a face. */
    rings(length: number, breadth: number): [number, number] {
        const middles = [0, 0.25, 0.5, 0.75, 1].map((part) => this.middle(part * length));
        const far = Math.max(...middles.flatMap((middle) => [Math.abs(middle), Math.abs(breadth - middle)])) + 4;
        const near = Math.max(
            0,
            Math.min(...middles.flatMap((m) => (m >= 0 && m <= breadth ? [0] : [Math.abs(m), Math.abs(breadth - m)]))) - 4,
        );
        const depths = [this.depth(0), this.depth(length)].map(Math.abs);
        const least = Math.hypot(near, Math.min(...depths)) / ringWidth;
        return [Math.max(0, Math.floor(least) - 2), Math.ceil(Math.hypot(far, Math.max(...depths)) / ringWidth) + 2];
    }

    /** Where a ring comes out on one side of the heart; it ends where it lies below the face. */
    line(ring: number, side: 1 | -1, length: number, breadth: number, steps: number): string {
        let path = '';
        let isOpen = false;
        for (let i = 0; i <= steps; i++) {
            const x = (length * i) / steps;
            const depth = this.depth(x);
            const middle = this.middle(x);
            let y = middle + side * Math.sqrt(Math.max(0, ((ring + late) * ringWidth) ** 2 - depth * depth));
            // Rings are uneven: two steps towards where this one really is.
            let radius = 0;
            for (let k = 0; k < 2; k++) {
                const uneven = 1.6 * noise(x / 70, y / 9, this.figure.thickness / 9, this.seed);
                radius = (ring + late) * ringWidth - uneven;
                if (radius > Math.abs(depth)) y = middle + side * Math.sqrt(radius * radius - depth * depth);
            }
            const shows = radius > Math.abs(depth) && y > -2 && y < breadth + 2;
            if (shows) path += `${isOpen ? 'L' : 'M'}${show(x)} ${show(y)}`;
            isOpen = shows;
        }
        return path.includes('L') ? path : '';
    }
}

function pore(random: () => number, length: number, breadth: number): string {
    const [x, y] = [random() * length, random() * breadth];
    return `M${show(x)} ${show(y)}h${show(2 + 5 * random())}`;
}

function show(value: number): string {
    return String(Math.round(value * 100) / 100);
}

function fraction(value: number): number {
    return value - Math.floor(value);
}

function hash(x: number, y: number, z: number, seed: number): number {
    const [px, py, pz] = [x, y, z].map((each) => fraction(each * 0.3183099 + 0.1 + seed * 0.013) * 17) as [
        number,
        number,
        number,
    ];
    return fraction(px * py * pz * (px + py + pz));
}

/** Smooth numbers from 0 to 1 over a lattice of whole numbers, as the picture in the round has them. */
function noise(x: number, y: number, z: number, seed: number): number {
    const [ix, iy, iz] = [Math.floor(x), Math.floor(y), Math.floor(z)];
    const smooth = (part: number): number => part * part * (3 - 2 * part);
    const [fx, fy, fz] = [smooth(x - ix), smooth(y - iy), smooth(z - iz)];
    const mix = (a: number, b: number, part: number): number => a + (b - a) * part;
    const edge = (dy: number, dz: number): number =>
        mix(hash(ix, iy + dy, iz + dz, seed), hash(ix + 1, iy + dy, iz + dz, seed), fx);
    return mix(mix(edge(0, 0), edge(1, 0), fy), mix(edge(0, 1), edge(1, 1), fy), fz);
}

/** Numbers in 0..1 that depend on the name alone (FNV-1a as the seed, mulberry32 as the generator). */
export function randomFrom(name: string): () => number {
    let seed = 2166136261;
    for (let i = 0; i < name.length; i += 1) seed = Math.imul(seed ^ name.charCodeAt(i), 16777619);
    return () => {
        seed = (seed + 0x6d2b79f5) | 0;
        let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
        mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    };
}
