/**
 * Words of a recipe made safe for one line of a terminal or a report: control characters (with which
 * a terminal can be steered), line ends, and the marks that turn the reading direction become spaces.
 */
export function oneLine(text: string, longest = 2000): string {
    const plain = text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim();
    return plain.length <= longest ? plain : `${plain.slice(0, longest)}…`;
}
