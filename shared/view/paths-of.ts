import type { BenchView } from './bench-view';

/** Names of all path data that a view points at, whether it came with it or not. */
export function pathsOf({ frames, inlays }: Pick<BenchView, 'frames' | 'inlays'>): string[] {
    const names = new Set<string>();
    for (const { pieces } of frames) {
        for (const { layers, outline } of pieces) {
            if (outline !== undefined) names.add(outline);
            for (const { path } of layers) names.add(path);
        }
    }
    for (const { relief, pocket, meeting } of inlays) {
        for (const half of [relief, pocket]) for (const name of [half.path, half.marks, half.frame]) if (name) names.add(name);
        for (const name of [meeting.fits, meeting.collides, meeting.empty]) names.add(name);
    }
    return [...names];
}
