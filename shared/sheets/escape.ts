/**
 * Text made safe for XML and HTML, in content and in quoted attributes. What XML cannot hold at all
 * (XML 1.0, 2.2: control characters, halves of surrogate pairs, two non-characters) becomes a space.
 */
export function escapeMarkup(text: string): string {
    let out = '';
    for (const character of text) {
        if (/[^\t\n\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.test(character)) out += ' ';
        else out += '<>&"\''.includes(character) ? `&#${character.charCodeAt(0)};` : character;
    }
    return out;
}

/** A name made safe as part of a file name, the same on every system. */
export function fileName(text: string): string {
    const safe = text
        .normalize('NFKD')
        .replace(/[^A-Za-z0-9_-]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 80);
    return safe === '' ? 'unnamed' : safe;
}

/** A text as a CSS string inside a style element. What could end either is written as its code point. */
export function cssText(text: string): string {
    const safe = [...text].map((letter) =>
        /[\p{L}\p{N} ,.;:!?()-]/u.test(letter) ? letter : `\\${letter.codePointAt(0)!.toString(16)} `,
    );
    return `"${safe.join('')}"`;
}
