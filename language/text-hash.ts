/**
 * A short name for a text: FNV-1a over UTF-16 units, then MurmurHash3's finaliser, 32 bits in eight hexadecimal digits. Two texts are
 * alike by chance once in four thousand million.
 */
export function hashText(text: string): string {
    let sum = 0x811c9dc5;
    for (let at = 0; at < text.length; at++) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193);
    sum = Math.imul(sum ^ (sum >>> 16), 0x85ebca6b);
    sum = Math.imul(sum ^ (sum >>> 13), 0xc2b2ae35);
    return ((sum ^ (sum >>> 16)) >>> 0).toString(16).padStart(8, '0');
}
