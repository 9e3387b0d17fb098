/** UTF-16 by its byte order mark, UTF-8 otherwise. */
export function decodeText(bytes: Uint8Array): string {
    const encoding =
        bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
    return new TextDecoder(encoding).decode(bytes);
}
