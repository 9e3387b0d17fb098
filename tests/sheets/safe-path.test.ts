import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { safePath } from '../../shared/sheets/safe-path';

describe('paths of written files', () => {
    test.each(['pocket.svg', 'tray/1-pocket.ngc', 'job-sheet.html', 'żagiel.svg'])('%s is inside', (path) => {
        expect(safePath(path)).toEqual(path.split('/'));
    });

    test.each([
        '../x.svg',
        'a/../../x',
        '/etc/passwd',
        'C:/x',
        'a\\..\\x',
        '',
        'a//b',
        './x',
        'nul',
        'COM1.txt',
        'a\u0000b',
        'a. ',
    ])('%j is refused', (path) => {
        expect(safePath(path)).toBeUndefined();
    });

    test('whatever is let through stays inside', () => {
        fc.assert(
            fc.property(fc.string(), (path) => {
                const names = safePath(path);
                expect(names === undefined || names.every((name) => name !== '..' && name !== '.' && !/[\\/]/.test(name))).toBe(
                    true,
                );
            }),
        );
    });
});
