/** A file and what stands in it. */
export interface NamedText {
    readonly name: string;
    readonly text: string;
}

/** As much has to be alike as git itself asks for: half (gitdiffcore(7), detecting renames). */
const ALIKE = 0.5;

/**
 * Which of the files that are gone each new one was, where git cannot say it since nobody has told it of either.
 * @returns names as they were, by the names of now; each old one once, the most alike first
 */
export function pairMoved(gone: readonly NamedText[], fresh: readonly NamedText[]): ReadonlyMap<string, string> {
    const found = fresh.flatMap((now) =>
        gone.map((was) => ({ now: now.name, formerly: was.name, alike: likeness(was.text, now.text) })),
    );
    const pairs = new Map<string, string>();
    const taken = new Set<string>();
    for (const { now, formerly, alike } of found.toSorted((a, b) => b.alike - a.alike)) {
        if (alike < ALIKE || pairs.has(now) || taken.has(formerly)) continue;
        pairs.set(now, formerly);
        taken.add(formerly);
    }
    return pairs;
}

/** Part of the lines that both have, each as often as it stands in both: 1 for the same text, 0 for nothing in common (Dice's coefficient). */
function likeness(a: string, b: string): number {
    const [left, right] = [linesOf(a), linesOf(b)];
    if (left.length + right.length === 0) return 1;
    const counts = new Map<string, number>();
    for (const line of left) counts.set(line, (counts.get(line) ?? 0) + 1);
    let shared = 0;
    for (const line of right) {
        const count = counts.get(line) ?? 0;
        if (count === 0) continue;
        counts.set(line, count - 1);
        shared += 1;
    }
    return (2 * shared) / (left.length + right.length);
}

function linesOf(text: string): string[] {
    return text
        .split(/\r?\n/)
        .map((line) => line.trim())
        .filter((line) => line !== '');
}
