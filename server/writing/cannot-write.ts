import { type Message, phrase } from '../../shared/recipe/phrase';
/** Why something was not written, in a sentence that says what to do. Nothing of it stays. */
export class CannotWrite extends Error {
    declare readonly message: Message;

    constructor(message: Message) {
        super(message);
    }
}

/** @param name what was to be written, as a person knows it */
export function cannotWrite(name: string, error: unknown): CannotWrite {
    if (error instanceof CannotWrite) return error;
    return new CannotWrite(phrase`${name} cannot be written: ${reasonOf(error)}`);
}

/** By the codes of the system (POSIX errno). What an editor's file system says, the editor puts into words. */
const reasons: Readonly<Record<string, () => Message>> = {
    ENOSPC: () => phrase`there is no space left on the disk. Make room, then try again.`,
    EDQUOT: () => phrase`your share of the disk is used up. Make room, then try again.`,
    EACCES: () => phrase`writing is not allowed there. Allow it for this folder, or choose another.`,
    EPERM: () => phrase`writing is not allowed there. Allow it for this folder, or choose another.`,
    EROFS: () => phrase`the disk can only be read. Choose a folder on another.`,
    EISDIR: () => phrase`a folder of that name is in the way. Move or rename it.`,
    ENOTDIR: () => phrase`a file stands where a folder is needed. Move or rename it.`,
    ENAMETOOLONG: () => phrase`the name is too long for this disk. Shorten the name of the recipe or of the folders above.`,
    EBUSY: () => phrase`another program has it open. Close it there, then try again.`,
    ETXTBSY: () => phrase`another program has it open. Close it there, then try again.`,
    ENOENT: () => phrase`the folder is not there and cannot be made. Choose another.`,
    EFBIG: () => phrase`it is larger than this disk takes. Choose a folder on another.`,
    EMFILE: () => phrase`too many files are open. Close some programs, then try again.`,
    EIO: () => phrase`the disk has failed. Look after it, or choose another.`,
};

function reasonOf(error: unknown): string {
    const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
    if (Object.hasOwn(reasons, code)) return reasons[code]!();
    return phrase`${error instanceof Error ? error.message : String(error)}. Put that right, then try again.`;
}

/** The same, for a link or a path that leads to where nothing may be written. */
export function outside(name: string): CannotWrite {
    return new CannotWrite(
        phrase`${name} cannot be written: links there lead out of the workspace. Put a folder in the place of the link, or open the one it leads to.`,
    );
}
