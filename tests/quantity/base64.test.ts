import { expect, it } from 'vitest';
import { fromBase64, toBase64 } from '../../shared/quantity/base64';

/** RFC 4648, section 10, test vectors (from memory). */
it.each([
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foobar', 'Zm9vYmFy'],
])('%j is %j, and back', (plain, text) => {
    const bytes = new TextEncoder().encode(plain);
    expect(toBase64(bytes)).toBe(text);
    expect(fromBase64(text)).toEqual(bytes);
});

it('takes more bytes than a call takes arguments, each at its place', () => {
    const bytes = Uint8Array.from({ length: 200_001 }, (_, i) => (i * 7 + (i >> 8)) % 256);
    expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
    expect(fromBase64(toBase64(bytes))).toEqual(bytes);
});
