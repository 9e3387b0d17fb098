import type { LeanView, RoundView, WallView } from './round-view';

/** Triangles to draw: three corners each, with a place (x right, y down, z up; mm), a normal and the index of a look a corner. */
export interface RoundMesh {
    readonly places: Float32Array;
    readonly normals: Float32Array;
    readonly looks: Uint16Array;
}

/**
 * A piece in the round as triangles, wound so that they are seen from outside with y down.
 *
 * @param leaning whether walls are drawn with the lean that the beam gave them; upright they enclose exactly what the model of the piece holds
 */
export function roundMesh({ surfaces, walls }: RoundView, leaning = true): RoundMesh {
    const out = new Corners();
    for (const { look, z, down, points, corners } of surfaces) {
        const normal = [0, 0, down ? -1 : 1] as const;
        for (let i = 0; i + 2 < corners.length; i += 3) {
            const [a, b, c] = down
                ? [corners[i]!, corners[i + 2]!, corners[i + 1]!]
                : [corners[i]!, corners[i + 1]!, corners[i + 2]!];
            for (const at of [a, b, c]) out.add(points[2 * at]!, points[2 * at + 1]!, z, normal, look);
        }
    }
    for (const wall of walls) raise(wall, leaning, out);
    return out.mesh();
}

/**
 * What a mesh of triangles encloses, mm3, by the flow of one axis through it: that of z goes through surfaces alone, that of x through walls alone
 * as long as they are upright. Both are the same where nothing is left open.
 */
export function volumeOf({ places }: RoundMesh, axis: 'x' | 'z'): number {
    const [u, v, w] = axis === 'x' ? [1, 2, 0] : [0, 1, 2];
    let sum = 0;
    for (let i = 0; i + 8 < places.length; i += 9) {
        const at = (corner: number, axisOf: number): number => places[i + 3 * corner + axisOf]!;
        const across = (at(1, u) - at(0, u)) * (at(2, v) - at(0, v)) - (at(2, u) - at(0, u)) * (at(1, v) - at(0, v));
        sum += (across / 2) * ((at(0, w) + at(1, w) + at(2, w)) / 3);
    }
    return sum;
}

function raise({ look, bands, lean }: WallView, leaning: boolean, out: Corners): void {
    for (let i = 0, n = 0; i + 5 < bands.length; i += 6, n++) {
        const [x0, y0, x1, y1, low, high] = bands.slice(i, i + 6) as [number, number, number, number, number, number];
        if (lean === undefined || !leaning) {
            quad(out, look, [x0, y0, high], [x1, y1, high], [x1, y1, low], [x0, y0, low]);
            continue;
        }
        const ways = lean.ways.slice(4 * n, 4 * n + 4) as [number, number, number, number];
        let [upper, inset] = [high, insetAt(lean, high)];
        for (const [lower, next] of stepsDown(lean, low, high)) {
            const at = (x: number, y: number, k: number, off: number, z: number): Place => [
                x + ways[k]! * off,
                y + ways[k + 1]! * off,
                z,
            ];
            quad(
                out,
                look,
                at(x0, y0, 0, inset, upper),
                at(x1, y1, 2, inset, upper),
                at(x1, y1, 2, next, lower),
                at(x0, y0, 0, next, lower),
            );
            [upper, inset] = [lower, next];
        }
    }
}

/** Heights of the profile within a band, from the top down to its foot, with the inset at each. */
export function stepsDown(lean: LeanView, low: number, high: number): [number, number][] {
    const steps: [number, number][] = [];
    for (let i = 0; i + 1 < lean.profile.length; i += 2) {
        const z = lean.profile[i]!;
        if (z < high && z > low) steps.push([z, lean.profile[i + 1]!]);
    }
    return [...steps, [low, insetAt(lean, low)]];
}

/** How far a wall has run out of its rim at a height, mm. */
export function insetAt({ profile }: LeanView, z: number): number {
    for (let i = 0; i + 3 < profile.length; i += 2) {
        const [upper, from, lower, to] = profile.slice(i, i + 4) as [number, number, number, number];
        if (z >= upper) return from;
        if (z >= lower) return from + ((to - from) * (upper - z)) / (upper - lower);
    }
    return profile.at(-1) ?? 0;
}

type Place = readonly [number, number, number];

/** Four places in the order in which they are seen from inside. */
function quad(out: Corners, look: number, a: Place, b: Place, c: Place, d: Place): void {
    const [ux, uy, uz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
    const [vx, vy, vz] = [b[0] - d[0], b[1] - d[1], b[2] - d[2]];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const length = Math.hypot(nx, ny, nz);
    if (length === 0) return;
    const normal = [nx / length, ny / length, nz / length] as const;
    for (const [x, y, z] of [a, c, b, a, d, c]) out.add(x, y, z, normal, look);
}

class Corners {
    private readonly places: number[] = [];
    private readonly normals: number[] = [];
    private readonly looks: number[] = [];

    add(x: number, y: number, z: number, [nx, ny, nz]: Place, look: number): void {
        this.places.push(x, y, z);
        this.normals.push(nx, ny, nz);
        this.looks.push(look);
    }

    mesh(): RoundMesh {
        return {
            places: Float32Array.from(this.places),
            normals: Float32Array.from(this.normals),
            looks: Uint16Array.from(this.looks),
        };
    }
}
