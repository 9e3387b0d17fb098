/** What steers a terminal (control characters, in seven bits and in eight) or turns the reading direction; line ends and tabs aside. */
const steering = /[^\P{Cc}\t\n]|[\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
const everySteering = new RegExp(steering.source, 'gu');
const runsOfSteering = new RegExp(`(?:${steering.source})+`, 'gu');
const runsWithLineEnds = new RegExp(`(?:${steering.source}|[\\t\\n])+`, 'gu');

/**
 * Words of a recipe made safe for one line of a terminal or a report: control characters (with which
 * a terminal can be steered), line ends, and the marks that turn the reading direction become spaces.
 */
export function oneLine(text: string, longest = 2000): string {
    const plain = text.replace(runsWithLineEnds, ' ').trim();
    return plain.length <= longest ? plain : `${plain.slice(0, longest)}…`;
}

/** The same for a text of several lines: tabs and line ends stay. */
export function plainText(text: string): string {
    return text.replaceAll('\r\n', '\n').replace(runsOfSteering, ' ');
}

/** JSON in which nothing steers a terminal or a build service's log: what the format lets stand raw is written as its code. */
export function plainJson(value: unknown): string {
    const code = (letter: string): string => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`;
    return JSON.stringify(value, null, 2)
        .replace(everySteering, code)
        .replaceAll('##[', `${code('#')}#[`);
}
