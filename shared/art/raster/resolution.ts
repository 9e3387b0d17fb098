/** How a picture's pixels lie to the lines of a scan. */
export interface Resolution {
    /** mm between pixels, the larger of across and down. */
    readonly pixel: number;
    /** Pixels for each line of the scan: below 1 the picture is coarser than the burn, far above 1 it has detail nobody will see. */
    readonly pixelsPerLine: number;
}

/** `pitch` is the distance of the lines in mm. Undefined unless it is positive and finite. */
export function resolutionAt(pixel: { readonly width: number; readonly height: number }, pitch: number): Resolution | undefined {
    const larger = Math.max(pixel.width, pixel.height);
    if (!(pitch > 0) || !Number.isFinite(pitch) || !(larger > 0)) return undefined;
    return { pixel: larger, pixelsPerLine: pitch / larger };
}
