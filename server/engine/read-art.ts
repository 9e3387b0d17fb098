import { readBitmap } from '../../shared/art/bitmap';
import { readSvg } from '../../shared/art/read-svg';
import type { ArtState } from '../../shared/plan/plan';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { ArtSource } from '../../shared/recipe/recipe';
import { largestArt } from '../files/read-result';
import { decodeText } from './decode-text';
import { foreignFormat } from './foreign-format';
import type { ArtFile } from './jobs';

const words: Readonly<Record<NonNullable<ArtFile['problem']>, (path: string) => Message>> = {
    missing: (path) => phrase`There is no file ${path} beside this recipe.`,
    outside: (path) => phrase`${path} lies outside the workspace; art is read only from inside it.`,
    'too-large': (path) =>
        phrase`${path} is larger than the ${largestArt / 1024 ** 2} MB that are read as art; make it smaller or simpler.`,
    unreadable: (path) => phrase`${path} cannot be read.`,
};

/** Reads an art file's bytes by what they hold, at the size the recipe asks for. */
export function readArt(source: ArtSource, file: ArtFile): ArtState {
    const path = source.path.value;
    if (file.bytes === undefined) {
        const kind = file.problem ?? 'unreadable';
        return { kind, message: words[kind](path) };
    }
    const wish = {
        ...(source.width === undefined ? {} : { width: source.width.value }),
        ...(source.height === undefined ? {} : { height: source.height.value }),
    };
    if (isBitmap(file.bytes)) return { kind: 'art', art: readBitmap(file.bytes, wish) };
    const foreign = foreignFormat(file.bytes);
    if (foreign !== undefined) return { kind: 'unreadable', message: phrase`${path} is ${foreign}` };
    const decoded = decodeText(file.bytes);
    if ('problem' in decoded) return { kind: 'unreadable', message: phrase`${path} cannot be read: ${decoded.problem}.` };
    return { kind: 'art', art: readSvg(decoded.text, wish) };
}

/** By the first bytes of PNG (W3C PNG specification, 5.2) and JPEG (ITU-T T.81, B.1). */
function isBitmap(bytes: Uint8Array): boolean {
    const png = bytes[0] === 0x89 && bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47;
    const jpeg = bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
    return png || jpeg;
}
