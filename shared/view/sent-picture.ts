import type { BenchView, PieceView } from './bench-view';
import { pathName } from './picture-path';

/**
 * A picture on its way to the page. Pieces are named by what they hold, as path data is: most steps leave most
 * pieces as they are, and what the page has from its last pictures is left out.
 */
export interface SentPicture extends Omit<BenchView, 'frames'> {
    readonly frames: readonly { readonly step: number; readonly pieces: readonly string[] }[];
    readonly pieces: Readonly<Record<string, PieceView>>;
}

/** @param had names of the parts that the page has; `view` comes without the path data among them */
export function sentPicture(view: BenchView, had: readonly string[] = []): SentPicture {
    const known = new Set(had);
    const pieces: Record<string, PieceView> = {};
    const nameOf = (piece: PieceView): string => {
        const name = `piece ${pathName(JSON.stringify(piece))}`;
        if (!known.has(name)) pieces[name] = piece;
        return name;
    };
    const frames = view.frames.map((frame) => ({ step: frame.step, pieces: frame.pieces.map(nameOf) }));
    return { ...view, frames, pieces };
}
