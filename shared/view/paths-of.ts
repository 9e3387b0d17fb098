import type { BenchView } from './bench-view';

/** Names of all path data that a view points at, whether it came with it or not. */
export function pathsOf({ frames, inlays }: Pick<BenchView, 'frames' | 'inlays'>): string[] {
    const ofPieces = frames.flatMap(({ pieces }) =>
        pieces.flatMap(({ layers, outline }) => [outline, ...layers.map(({ path }) => path)]),
    );
    const ofInlays = inlays.flatMap(({ relief, pocket, meeting }) => [
        ...[relief, pocket].flatMap((half) => [half.path, half.marks, half.frame]),
        ...[meeting.fits, meeting.collides, meeting.empty],
    ]);
    return [...new Set([...ofPieces, ...ofInlays].filter((name): name is string => Boolean(name)))];
}
