import type { Region } from '../geometry/region';
import type { Path } from '../toolpath/path';

/** SVG path data of a region in mm, to a thousandth; holes come out right under either fill rule. */
export function pathData(region: Region, digits = 3): string {
    const parts: string[] = [];
    for (const ring of region.rings) {
        if (ring.length < 6) continue;
        const points: string[] = [];
        for (let i = 0; i + 1 < ring.length; i += 2) points.push(`${short(ring[i]!, digits)} ${short(ring[i + 1]!, digits)}`);
        parts.push(`M${points.join('L')}Z`);
    }
    return parts.join('');
}

/** SVG path data of the stretches of paths on which the beam is on. */
export function burntData(paths: readonly Path[], digits = 3): string {
    const parts: string[] = [];
    for (const { points, lit } of paths) {
        let open = false;
        for (let i = 0; i + 3 < points.length; i += 2) {
            const burns = lit === undefined || lit[i / 2] === 1;
            if (burns && !open) parts.push(`M${short(points[i]!, digits)} ${short(points[i + 1]!, digits)}`);
            if (burns) parts.push(`L${short(points[i + 2]!, digits)} ${short(points[i + 3]!, digits)}`);
            open = burns;
        }
    }
    return parts.join('');
}

function short(value: number, digits: number): string {
    const factor = 10 ** digits;
    const rounded = Math.round(value * factor) / factor;
    return String(rounded === 0 ? 0 : rounded);
}
