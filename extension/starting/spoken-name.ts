/** A file's name as somebody would say it: `art/tide-rings.svg` is “Tide rings”. */
export function spokenName(path: string): string {
    const words = decodeURIComponent(path.slice(path.lastIndexOf('/') + 1))
        .replace(/\.[^.]*$/, '')
        .replaceAll(/[-_]+/g, ' ')
        .trim();
    return words.charAt(0).toUpperCase() + words.slice(1);
}
