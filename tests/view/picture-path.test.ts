import { expect, test } from 'vitest';
import { pathName, picturePath } from '../../shared/view/picture-path';

test('points are written as ways in whole hundredths, and no error adds up', () => {
    const ring = Float64Array.from({ length: 600 }, (_, i) => (i % 2 === 0 ? i * 0.10333 : i % 4 === 1 ? 3.004 : 0.006));
    const data = picturePath({ rings: [ring] });
    const numbers = data.match(/-?(?:\d*\.)?\d+/g)!.map(Number);
    let [x, y] = [numbers[0]!, numbers[1]!];
    for (let i = 2; i + 1 < numbers.length; i += 2) {
        x += numbers[i]!;
        y += numbers[i + 1]!;
    }
    expect(x).toBeCloseTo(ring.at(-2)!, 1);
    expect(y).toBeCloseTo(ring.at(-1)!, 1);
    expect(data).toMatch(/^M0 3l[^a-zA-Z]+z$/);
});

test('what is smaller than a hundredth is left out', () => {
    expect(picturePath({ rings: [Float64Array.of(1, 1, 1.001, 1, 1.001, 1.001)] })).toBe('');
});

test('the same data has the same name, other data another', () => {
    const names = new Set(Array.from({ length: 5000 }, (_, i) => pathName(`M${i} ${i % 7}l1 1z`)));
    expect(names.size).toBe(5000);
    expect(pathName('M0 0l1 0 0 1z')).toBe(pathName('M0 0l1 0 0 1z'));
});
