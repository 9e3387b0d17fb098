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

/** A line that is said in another form today, by its words; `rule` of the grammar reads the last of them. */
interface EarlierForm extends Renamed {
    readonly block: string;
    readonly rule: string;
}

/** Before `without` each line said no in a way of its own. */
export const earlierForms: readonly EarlierForm[] = [
    { before: 'mirror off', now: 'without mirror', block: 'Engrave, Cut', rule: 'Mirror' },
    { before: 'mirror on', now: 'mirror', block: 'Engrave, Cut', rule: 'Mirror' },
    { before: 'air off', now: 'without air', block: 'Engrave, Cut', rule: 'Air' },
    { before: 'backing none', now: 'without backing', block: 'Blank', rule: 'Backing' },
];

/** Words that may come next without earlier spellings of others among them. */
export function withoutEarlierSpellings(words: readonly string[]): readonly string[] {
    const pairs = Object.values(renamed);
    return words.filter((word) => !pairs.some(({ now, before }) => before === word && words.includes(now)));
}

/** Whether a word only ends an earlier form of a line there: it is read, and no longer offered. */
export function endsEarlierForm(rule: string, word: string): boolean {
    return earlierForms.some((form) => form.rule === rule && form.before.endsWith(` ${word}`));
}

/** Which word a spelling stands for in a rule of the grammar; undefined where the rule reads no renamed word. */
export function renamedIn(rule: string): Renamed | undefined {
    return renamed[rule];
}
