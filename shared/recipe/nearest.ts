import { distance } from 'fastest-levenshtein';

/** The candidate that was most likely meant; undefined when none is near enough to be offered. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
    const wanted = word.toLowerCase();
    let best: string | undefined;
    let least = Math.max(1, Math.floor(word.length / 3)) + 1;
    for (const candidate of candidates) {
        if (candidate === word) continue;
        if (Math.abs(candidate.length - word.length) >= least) continue;
        const edits = slips(wanted, candidate.toLowerCase());
        // A word of which nothing is left is another word.
        if (edits < least && edits < Math.max(wanted.length, candidate.length)) {
            best = candidate;
            least = edits;
        }
    }
    return best;
}

/** The candidates, those first that are most like the word: by slips for each letter, of the whole or of one of its words. */
export function byNearness(word: string, candidates: readonly string[]): string[] {
    const meant = word.toLowerCase();
    const far = (candidate: string): number =>
        Math.min(...[candidate, ...candidate.split(' ')].map((part) => slips(meant, part) / Math.max(meant.length, part.length)));
    return candidates
        .map((candidate) => ({ candidate, far: far(candidate) }))
        .toSorted((a, b) => a.far - b.far)
        .map(({ candidate }) => candidate);
}

/** How many slips apart two words are: a letter too many, too few or another one; two that changed places are one slip. */
function slips(one: string, other: string): number {
    return areSwapped(one, other) ? 1 : distance(one, other);
}

function areSwapped(one: string, other: string): boolean {
    if (one.length !== other.length) return false;
    const at = [...one].findIndex((letter, index) => letter !== other[index]);
    const swapped = `${one.slice(0, at)}${one[at + 1]}${one[at]}${one.slice(at + 2)}`;
    return at >= 0 && at + 1 < one.length && swapped === other;
}
