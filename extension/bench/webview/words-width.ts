/** About how wide words in a picture are, px: its letters of 11 px are six tenths as wide at most, whatever the theme’s letters. */
export function wordsWidth(words: string): number {
    return words.length * 6.6;
}
