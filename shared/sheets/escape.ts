/** Text made safe for XML and HTML, in content and in double-quoted attributes. Control characters, which XML cannot hold, become spaces. */
export function escapeMarkup(text: string): string {
    return text.replace(/[^\t\n\r -%(-;=?-\uffff]/g, (character) => {
        const code = character.charCodeAt(0);
        return code < 0x20 ? ' ' : `&#${code};`;
    });
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
