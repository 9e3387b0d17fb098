/**
 * Wood grain drawn by rule: the same name always gives the same board. Lines follow one smooth
 * field, so that they bow together and never cross, as on a flat-sawn face.
 */
export interface Grain {
    /** Growth rings: path data of fine and of stronger lines. */
    readonly fine: string;
    readonly strong: string;
    /** Short strokes of open pores. */
    readonly pores: string;
}

/** Grain along x on a face of `length` by `breadth` mm. */
export function grainAlong(name: string, length: number, breadth: number): Grain {
    const random = randomFrom(name);
    const bend = bendOf(random, length, breadth);
    const fine: string[] = [];
    const strong: string[] = [];
    const pores: string[] = [];
    // About seventy rings on any face: a small veneer and a long board look alike at the size they are shown.
    const spacing = Math.max(breadth / 72, 0.05);
    for (let y = -0.1 * breadth; y < 1.1 * breadth; y += spacing * (0.35 + 1.5 * random() * random() + 0.3)) {
        (random() < 0.22 ? strong : fine).push(line(y, length, bend));
        if (random() < 0.7) pores.push(pore(random, y + spacing * random(), length, bend));
    }
    return { fine: fine.join(''), strong: strong.join(''), pores: pores.join('') };
}

type Bend = (x: number, y: number) => number;

function bendOf(random: () => number, length: number, breadth: number): Bend {
    const heart = (0.3 + 0.4 * random()) * breadth;
    const waves = [0.9, 2.1, 4.3].map((times, index) => ({
        size: (breadth * 0.022) / (index * index + 1),
        times: (times * (0.8 + 0.4 * random()) * 2 * Math.PI) / length,
        start: random() * 2 * Math.PI,
    }));
    const crown = (random() < 0.5 ? -1 : 1) * breadth * (0.1 + 0.1 * random());
    const from = random();
    return (x, y) => {
        const off = (y - heart) / breadth;
        const along = x / length - from;
        const wave = waves.reduce((sum, { size, times, start }) => sum + size * Math.sin(times * x + start + off * 1.6), 0);
        return y + wave + crown * along * along * Math.exp(-9 * off * off);
    };
}

const STEPS = 28;

function line(y: number, length: number, bend: Bend): string {
    let path = '';
    for (let i = 0; i <= STEPS; i += 1) {
        const x = (length * i) / STEPS;
        path += `${i === 0 ? 'M' : 'L'}${show(x)} ${show(bend(x, y))}`;
    }
    return path;
}

function pore(random: () => number, y: number, length: number, bend: Bend): string {
    const from = random() * length;
    const to = from + length * (0.012 + 0.03 * random());
    return `M${show(from)} ${show(bend(from, y))}L${show(to)} ${show(bend(to, y))}`;
}

function show(value: number): string {
    return String(Math.round(value * 100) / 100);
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
