import { pathsOf } from '../../shared/view/paths-of';
import type { SentPicture } from '../../shared/view/sent-picture';

/** The parts of so many pictures are remembered: who takes back what was typed comes back to an earlier one. */
export const remembered = 6;

/** Paths by the name of the piece that they are in. */
type Pieces = ReadonlyMap<string, readonly string[]>;

/** Names of the parts that the page has: pieces and path data. The page forgets in the same order. */
export class PageParts {
    private readonly pictures: { readonly pieces: Pieces; readonly paths: readonly string[] }[] = [];

    get names(): string[] {
        const names = new Set<string>();
        for (const { pieces, paths } of this.pictures) {
            for (const name of paths) names.add(name);
            for (const [name, within] of pieces) for (const each of [name, ...within]) names.add(each);
        }
        return [...names];
    }

    /** The page has come up anew. */
    clear(): void {
        this.pictures.length = 0;
    }

    /** Notes a picture that is sent to the page. */
    sent({ frames, pieces, inlays }: SentPicture): void {
        const here = new Map<string, readonly string[]>();
        for (const name of frames.flatMap((frame) => frame.pieces)) {
            const layers = pieces[name]?.layers.map(({ path }) => path);
            const within = layers ?? this.pictures.find((one) => one.pieces.has(name))?.pieces.get(name);
            if (within !== undefined) here.set(name, within);
        }
        this.pictures.push({ pieces: here, paths: pathsOf({ frames: [], inlays }) });
        if (this.pictures.length > remembered) this.pictures.shift();
    }
}
