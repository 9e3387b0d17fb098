import { distance } from 'fastest-levenshtein';

/** The candidate that was most likely meant; undefined when none is near enough to be offered. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
    const wanted = word.toLowerCase();
    let best: string | undefined;
    let least = Math.max(1, Math.floor(word.length / 3)) + 1;
    for (const candidate of candidates) {
        if (candidate === word) continue;
        if (Math.abs(candidate.length - word.length) >= least) continue;
        const edits = distance(wanted, candidate.toLowerCase());
        if (edits < least) {
            best = candidate;
            least = edits;
        }
    }
    return best;
}
