import { expect, test } from 'vitest';
import { contentKey } from '../../shared/plan/content-key';

const at = (offset: number) => ({ uri: 'file:///shop/tray.kerf', offset, length: 4 });

test('a key stays the same wherever its values were written, whatever the place is called', () => {
    const key = (offset: number) =>
        contentKey({
            depth: { value: 0.5, unit: 'mm', where: at(offset) },
            settingsWhere: [at(offset), at(offset + 9)],
            declared: at(offset),
            steps: [{ whole: at(offset), kind: 'cut' }],
        });
    expect(key(7)).toBe(key(900));
});

test('what is no place is part of a key, whatever it is called', () => {
    expect(contentKey({ where: 'above' })).not.toBe(contentKey({ where: 'below' }));
    expect(contentKey({ whole: 3 })).not.toBe(contentKey({ whole: 4 }));
    expect(contentKey({ offset: 3, length: 4 })).not.toBe(contentKey({ offset: 4, length: 4 }));
});

test('what is told of a thing to its readers changes no sum', () => {
    expect(contentKey({ name: 'walnut', about: 'From the mill.' })).toBe(contentKey({ name: 'walnut' }));
    expect(contentKey({ name: 'walnut' })).not.toBe(contentKey({ name: 'ash' }));
});
