/** Longest beginning of a file in which its declaration is looked for, bytes. */
const longestHead = 200;

export type Decoded = { readonly text: string } | { readonly problem: string };

/**
 * Text in the encoding that the file names: UTF-16 by its byte order mark or its first zero bytes,
 * else what an XML declaration says (XML 1.0, appendix F), else UTF-8. An encoding that nobody here
 * knows is a problem, since guessing would garble ids and classes.
 */
export function decodeText(bytes: Uint8Array): Decoded {
    const wide = wideEncoding(bytes);
    if (wide !== undefined) return { text: new TextDecoder(wide).decode(bytes) };
    const named = namedEncoding(bytes);
    // Words for wide text in a declaration that can be read byte by byte are wrong.
    if (named === undefined || /^(utf-?16|ucs-?2|utf-?32|iso-10646-ucs)/i.test(named))
        return { text: new TextDecoder().decode(bytes) };
    try {
        return { text: new TextDecoder(named).decode(bytes) };
    } catch {
        return { problem: `its text is in ${named}, which is not known here; save it as UTF-8` };
    }
}

function wideEncoding([a, b, c, d]: Uint8Array): string | undefined {
    if (a === 0xff && b === 0xfe) return 'utf-16le';
    if (a === 0xfe && b === 0xff) return 'utf-16be';
    if (a === 0x3c && b === 0 && c !== undefined && d === 0) return 'utf-16le';
    return a === 0 && b === 0x3c && c === 0 ? 'utf-16be' : undefined;
}

function namedEncoding(bytes: Uint8Array): string | undefined {
    const head = String.fromCharCode(...bytes.subarray(0, longestHead)).replace(/^\u00ef\u00bb\u00bf/, '');
    return /^\s*<\?xml\s[^?]*?encoding\s*=\s*["']([A-Za-z][\w.:-]*)["']/.exec(head)?.[1];
}
