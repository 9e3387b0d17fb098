import type { ArtNames } from '../../shared/art/art-names';
import { KeptOn } from '../../shared/plan/kept';
import { decodeText } from '../engine/decode-text';
import type { ArtFile } from '../engine/jobs';
import type { ArtCache } from './art-cache';

/** Ids and classes of art files as last read, each file looked through once. Undefined for a file that is not there. */
export function namesInArt(arts: ArtCache): (uri: string) => Promise<ArtNames | undefined> {
    const known = new KeptOn<ArtFile, Promise<ArtNames>>();
    return async (uri) => {
        const file = await arts.file(uri);
        if (file.bytes === undefined) return undefined;
        const { bytes } = file;
        return known.getOr(file, () => namesIn(bytes));
    };
}

async function namesIn(bytes: Uint8Array): Promise<ArtNames> {
    const { artNames } = await import('./look-at-art');
    const decoded = decodeText(bytes);
    return artNames('text' in decoded ? decoded.text : '');
}
