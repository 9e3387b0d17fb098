/** Bytes as base64 text, such as a data URL takes them. */
export function toBase64(bytes: Uint8Array): string {
    const letters: string[] = [];
    // In stretches, since a call takes only so many arguments.
    for (let at = 0; at < bytes.length; at += 8192) letters.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
    return btoa(letters.join(''));
}

/** @throws for what is no base64 */
export function fromBase64(text: string): Uint8Array {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}
