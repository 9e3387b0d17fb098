import type { BenchView, PieceView } from '../../shared/view/bench-view';
import { pathsOf } from '../../shared/view/paths-of';
import { pathName } from '../../shared/view/picture-path';

/**
 * A picture on its way to the page. Pieces are named by what they hold, as path data is: most steps leave most
 * pieces as they are, and what the page has from its last pictures is left out.
 */
export interface SentPicture extends Omit<BenchView, 'frames'> {
    readonly frames: readonly { readonly step: number; readonly pieces: readonly string[] }[];
    readonly pieces: Readonly<Record<string, PieceView>>;
}

/** The parts of so many pictures are remembered: who takes back what was typed comes back to an earlier one. */
export const remembered = 6;

/** Names of the parts that the page has. The page forgets in the same order. */
export class PageParts {
    private readonly pictures: ReadonlySet<string>[] = [];

    get names(): string[] {
        return [...new Set(this.pictures.flatMap((names) => [...names]))];
    }

    /** The page has come up anew. */
    clear(): void {
        this.pictures.length = 0;
    }

    /** Takes what the page has out of a picture, and counts the rest as sent. */
    send(view: BenchView): SentPicture {
        const pieces: Record<string, PieceView> = {};
        const used = new Set(pathsOf(view));
        const nameOf = (piece: PieceView): string => {
            const name = `piece ${pathName(JSON.stringify(piece))}`;
            if (!this.pictures.some((names) => names.has(name))) pieces[name] = piece;
            used.add(name);
            return name;
        };
        const frames = view.frames.map((frame) => ({ step: frame.step, pieces: frame.pieces.map(nameOf) }));
        this.pictures.push(used);
        if (this.pictures.length > remembered) this.pictures.shift();
        return { ...view, frames, pieces };
    }
}
