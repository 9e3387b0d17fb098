import type { Region, Ring } from '../../shared/geometry/region';
import { circle } from '../../shared/geometry/shapes';

/** A star of five points: every edge at its own slant, inner corners turning the other way. */
export function star(cx: number, cy: number, outer: number, inner: number): Ring {
    const points: number[] = [];
    for (let i = 0; i < 10; i++) {
        const radius = i % 2 === 0 ? outer : inner;
        const angle = (i * Math.PI) / 5 - Math.PI / 2;
        points.push(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle));
    }
    return Float64Array.from(points);
}

export function reversed(ring: Ring): Ring {
    const out = new Float64Array(ring.length);
    for (let i = 0; i < ring.length; i += 2) {
        out[i] = ring[ring.length - 2 - i]!;
        out[i + 1] = ring[ring.length - 1 - i]!;
    }
    return out;
}

/** A round dish with a star left standing in it, and an eye burnt into the star: three levels of nesting. */
export function dish(cx: number, cy: number, diameter: number): Region {
    return {
        rings: [
            ...circle(cx, cy, diameter).rings,
            reversed(star(cx, cy, diameter * 0.4, diameter * 0.2)),
            ...circle(cx, cy, diameter * 0.2).rings,
        ],
    };
}
