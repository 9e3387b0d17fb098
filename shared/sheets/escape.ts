/** Text made safe for XML and HTML, in content and in quoted attributes. Control characters, which XML cannot hold, become spaces. */
export function escapeMarkup(text: string): string {
    let out = '';
    for (const character of text) {
        const code = character.charCodeAt(0);
        if (code < 0x20) out += character === '\t' || character === '\n' ? character : ' ';
        else out += '<>&"\''.includes(character) ? `&#${code};` : character;
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
