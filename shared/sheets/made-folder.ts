import { isReserved } from './safe-path';

/** Letters; of three bytes each at most, so that no file system finds the name too long. */
const maxLetters = 64;

/**
 * Name of the folder, below `made`, for what is written of a name of the language. Letters of every script stay, so that two
 * names stay two folders; what else may stand in a name, and names of devices, are changed. Names that differ only in
 * capitals, or beyond 64 letters, can still meet: `folderKey` tells.
 */
export function madeFolder(name: string): string {
    const safe = [...name.normalize('NFC').replaceAll(/[^\p{L}\p{M}\p{N}_-]+/gu, '-')].slice(0, maxLetters).join('');
    if (!/[\p{L}\p{N}]/u.test(safe)) return 'unnamed';
    return isReserved(safe) ? `${safe}_` : safe;
}

/** Equal for folders that are one and the same on some system. */
export function folderKey(folder: string): string {
    return folder.normalize('NFC').toLowerCase();
}

/**
 * Name of the folder, below `made`, for the files of a coupon.
 * @param from number of the first square where these join others: nothing that was burnt before is written over
 */
export function couponFolder(sheet: string, laser: string, from?: number): string {
    return madeFolder(`coupon-${sheet}-${laser}${from === undefined ? '' : `-from-${from}`}`);
}
