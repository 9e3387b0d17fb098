/** Letters and digits that are not taken for one another, all that every file system tells apart. */
const alphabet = 'abcdefghjkmnpqrstuvwxyz23456789';
const LETTERS = 5;

export interface NamedRun {
    readonly recipe: string;
    /** ISO 8601. */
    readonly date: string;
}

/**
 * Name of a run's own file: `2026-11-28-heron-tray-k7f3m.kerf`. The end is drawn at random, so that a second run of the day, and one that is
 * written on another branch or machine, each have a file of their own and merge without anybody's help.
 * @param random at least five bytes drawn at random
 */
export function runFileName({ recipe, date }: NamedRun, random: Uint8Array): string {
    const words = recipe
        .normalize('NFC')
        .replaceAll(/[^\p{L}\p{N}-]+/gu, '-')
        .slice(0, 60);
    const end = Array.from(random.subarray(0, LETTERS), (byte) => alphabet[byte % alphabet.length]).join('');
    return `${date}-${words}-${end}.kerf`;
}

/** Whether a file's name is one that a run is given; what could lead out of its folder is not. */
export function isRunFileName(name: string): boolean {
    return /^\d{4}-\d\d-\d\d-[\p{L}\p{M}\p{N}-]{1,80}-[a-z2-9]{5}\.kerf$/u.test(name);
}
