import { describe, expect, it } from 'vitest';
import { sourceFiles } from './source-files';

const lines = sourceFiles('shared', 'language', 'server', 'extension')
    .map((file) => ({ path: file.path, count: file.text.split('\n').length - 1 }))
    .sort((a, b) => a.count - b.count);

describe('one idea a file', () => {
    it('half of all files have at most 80 lines, nine in ten at most 250', () => {
        expect(lines[Math.floor(lines.length / 2)]?.count).toBeLessThanOrEqual(80);
        expect(lines[Math.floor(lines.length * 0.9)]?.count).toBeLessThanOrEqual(250);
    });
    it('none has more than 350', () => {
        expect(lines.filter((file) => file.count > 350)).toEqual([]);
    });
});
