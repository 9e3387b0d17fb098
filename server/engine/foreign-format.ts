const picture = 'a picture that is not read here; save it as PNG or JPEG.';
const drawing = 'a drawing that is not read here; save it as SVG.';

/** What files of other formats begin with: at which byte, and which bytes (as Latin-1). */
const beginnings: readonly (readonly [at: number, bytes: string, what: string])[] = [
    [0, 'GIF8', `a GIF, ${picture}`],
    [8, 'WEBP', `a WebP, ${picture}`],
    [0, 'BM', `a BMP, ${picture}`],
    [0, 'II*\0', `a TIFF, ${picture}`],
    [0, 'MM\0*', `a TIFF, ${picture}`],
    [4, 'ftypavif', `an AVIF, ${picture}`],
    [4, 'ftyphei', `a HEIC, ${picture}`],
    [4, 'ftypmif1', `a HEIC, ${picture}`],
    [0, '%PDF-', `a PDF, ${drawing}`],
    [0, '%!PS', `a PostScript file, ${drawing}`],
];

/** DXF as text begins with the pair of lines "0" and "SECTION", after comments (999) at most. */
const dxf = /^(?:\s*999\r?\n[^\n]*\n)*\s*0\r?\n\s*SECTION\b/;

/** Longest beginning in which a format is looked for, bytes. */
const longestHead = 400;

/** What a file is that is neither SVG, PNG nor JPEG, and what to do with it, as the end of a sentence; undefined if it is none of those known. */
export function foreignFormat(bytes: Uint8Array): string | undefined {
    const head = String.fromCharCode(...bytes.subarray(0, longestHead));
    for (const [at, begin, what] of beginnings) if (head.startsWith(begin, at)) return what;
    return dxf.test(head) ? `a DXF, ${drawing}` : undefined;
}
