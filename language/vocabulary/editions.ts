/** The edition that this version of the tool reads and writes. What is written for an earlier one is read for ever. */
export const currentEdition = 2026;

/** A word that was renamed, by the rule of the grammar that reads both spellings. */
export interface Renamed {
    readonly now: string;
    readonly before: string;
}

/** Each rule's first spelling is the one that the rest of the tool knows; the older one stays readable. */
const renamed: Readonly<Record<string, Renamed>> = {
    Issue: { now: 'issue', before: 'revision' },
    Char: { now: 'char', before: 'burnt' },
    Particle: { now: 'particle', before: 'grain' },
};

/** How a block said no before `without` did. */
export const earlierNos: readonly (Renamed & { readonly block: string })[] = [
    { before: 'mirror off', now: 'without mirror', block: 'Engrave, Cut' },
    { before: 'air off', now: 'without air', block: 'Engrave, Cut' },
    { before: 'backing none', now: 'without backing', block: 'Blank' },
];

/** Which word a spelling stands for in a rule of the grammar; undefined where the rule reads no renamed word. */
export function renamedIn(rule: string): Renamed | undefined {
    return renamed[rule];
}
