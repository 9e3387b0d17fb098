import type { Matrix } from '../../geometry/transform';

export interface ViewBox {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
}

/** SVG's viewBox attribute; undefined if it is absent, broken or has no area. */
export function parseViewBox(text: string | undefined): ViewBox | undefined {
    const [x, y, width, height, more] = (text ?? '')
        .trim()
        .split(/[\s,]+/)
        .map(Number);
    if (more !== undefined || height === undefined) return undefined;
    if (!Number.isFinite(x! + y! + width! + height) || !(width! > 0 && height > 0)) return undefined;
    return { x: x!, y: y!, width: width!, height };
}

const align = /^\s*(?:defer\s+)?(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*$/;
const share: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/** Maps a viewBox onto a viewport of the given size at the origin: SVG 2, section 8.2, "equivalent transform". */
export function viewBoxMatrix(box: ViewBox, width: number, height: number, preserveAspectRatio: string | undefined): Matrix {
    const match = align.exec(preserveAspectRatio ?? '');
    let scaleX = width / box.width;
    let scaleY = height / box.height;
    if (match?.[1] !== 'none') {
        const scale = match?.[4] === 'slice' ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
        scaleX = scale;
        scaleY = scale;
    }
    const spareX = width - box.width * scaleX;
    const spareY = height - box.height * scaleY;
    return {
        a: scaleX,
        b: 0,
        c: 0,
        d: scaleY,
        e: spareX * (share[match?.[2] ?? 'Mid'] ?? 0) - box.x * scaleX,
        f: spareY * (share[match?.[3] ?? 'Mid'] ?? 0) - box.y * scaleY,
    };
}
