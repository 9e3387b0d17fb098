import type { Region, Ring } from '../../shared/geometry/region';

/** A reed: a slender wavy leaf with a vein left out of its middle, about `size` mm high, some 160 points. */
function reed(cx: number, cy: number, size: number, turn: number): Ring[] {
    const outline = (width: number, height: number, count: number, sign: 1 | -1): Ring => {
        const ring = new Float64Array(2 * count);
        for (let i = 0; i < count; i++) {
            const angle = (sign * 2 * Math.PI * i) / count;
            const wave = 1 + 0.08 * Math.sin(9 * angle);
            const [x, y] = [width * wave * Math.cos(angle), height * wave * Math.sin(angle)];
            ring[2 * i] = cx + x * Math.cos(turn) - y * Math.sin(turn);
            ring[2 * i + 1] = cy + x * Math.sin(turn) + y * Math.cos(turn);
        }
        return ring;
    };
    return [outline(size * 0.22, size * 0.48, 110, 1), outline(size * 0.05, size * 0.36, 50, -1)];
}

/** A field of reeds, 300 x 200 mm: `columns` side by side. */
export function reeds(columns: number): Region {
    const size = 300 / columns;
    const rings: Ring[] = [];
    for (let row = 0; (row + 1) * size <= 200 + 1e-9; row++) {
        for (let column = 0; column < columns; column++)
            rings.push(...reed((column + 0.5) * size, (row + 0.5) * size, size, row * 0.7 + column * 1.3));
    }
    return { rings };
}

export function points(region: Region): number {
    return region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);
}
