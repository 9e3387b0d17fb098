/** From where the piece is looked at. Angles in rad. */
export interface Orbit {
    /** 0 from the maker's side of the bench, growing to the right. */
    readonly around: number;
    /** 0 along the bench, half a turn's half straight down. */
    readonly above: number;
    /** 1 shows the whole piece. */
    readonly zoom: number;
    /** What lies in the middle, as parts of the piece's width and height from its own middle. */
    readonly x: number;
    readonly y: number;
}

export const firstOrbit: Orbit = { around: 0.35, above: 0.95, zoom: 1, x: 0, y: 0 };

const LOWEST = 0.12;
const HIGHEST = Math.PI / 2;
const CLOSEST = 40;

export function turned(orbit: Orbit, around: number, above: number): Orbit {
    return { ...orbit, around: orbit.around + around, above: Math.min(HIGHEST, Math.max(LOWEST, orbit.above + above)) };
}

export function closer(orbit: Orbit, factor: number): Orbit {
    return { ...orbit, zoom: Math.min(CLOSEST, Math.max(0.5, orbit.zoom * factor)) };
}

/** Moved across the bench as it is seen: parts of the piece's size to the right and towards the maker. */
export function moved(orbit: Orbit, right: number, near: number): Orbit {
    const [cos, sin] = [Math.cos(orbit.around), Math.sin(orbit.around)];
    const within = (part: number): number => Math.min(0.6, Math.max(-0.6, part));
    return { ...orbit, x: within(orbit.x + right * cos + near * sin), y: within(orbit.y - right * sin + near * cos) };
}

const STEP = Math.PI / 24;

/** What a key does to it; undefined for a key that is not for the picture. */
export function orbitByKey(orbit: Orbit, key: string, shift: boolean): Orbit | undefined {
    const step = 0.08 / orbit.zoom;
    switch (key) {
        case 'ArrowLeft':
            return shift ? moved(orbit, -step, 0) : turned(orbit, -STEP, 0);
        case 'ArrowRight':
            return shift ? moved(orbit, step, 0) : turned(orbit, STEP, 0);
        case 'ArrowUp':
            return shift ? moved(orbit, 0, -step) : turned(orbit, 0, STEP);
        case 'ArrowDown':
            return shift ? moved(orbit, 0, step) : turned(orbit, 0, -STEP);
        case '+':
        case '=':
            return closer(orbit, 1.25);
        case '-':
            return closer(orbit, 1 / 1.25);
        case '0':
            return firstOrbit;
        default:
            return undefined;
    }
}
