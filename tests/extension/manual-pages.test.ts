import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { anchorIn, isAnchor, pagesIn } from '../../extension/manual-pages';

const docs = new URL('../../extension/docs/', import.meta.url);

it('the index lists pages that are there, each with what it is about', () => {
    const pages = pagesIn(readFileSync(new URL('README.md', docs), 'utf8'));
    expect(pages.length).toBeGreaterThan(15);
    for (const { name, label, detail } of pages) {
        expect(existsSync(new URL(`${name}.md`, docs))).toBe(true);
        expect(label).not.toBe('');
        expect(detail).not.toBe('');
    }
    expect(pages.map(({ name }) => name)).toContain('review');
});

it('a hover leads to a heading of the language’s page, and to nothing else', () => {
    expect(anchorIn('Burns areas.\n\n[Manual](command:kerfbook.openManual?%5B%22finish-1%22%5D)')).toBe('finish-1');
    expect(anchorIn('Burns areas.')).toBeUndefined();
    expect(anchorIn('[Manual](command:kerfbook.openManual?%5B%22..%2Frules%22%5D)')).toBeUndefined();
    expect(isAnchor('../../secrets')).toBe(false);
    expect(isAnchor(7)).toBe(false);
});
