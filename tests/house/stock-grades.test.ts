import { expect, test } from 'vitest';
import { stockFiles } from './source-files';
import { countedGrades, gradesOf } from './stock-grades';

test('every line of the built-in stock says how it is known', () => {
    const lines = gradesOf(stockFiles());
    expect(lines.length).toBeGreaterThan(300);
    expect(lines.filter(({ grade }) => grade === undefined).map(({ place, line }) => `${place} ${line}`)).toEqual([]);
    expect(countedGrades(lines).reduce((sum, [, count]) => sum + count, 0)).toBe(lines.length);
    const slip = { path: 'a.kerf', text: 'glue a {\n  // Makers say so.\n  open 5 min\n  // Seen in a guide.\n  cure 24 h\n}\n' };
    expect(gradesOf([slip]).map(({ line, grade }) => [line, grade])).toEqual([
        ['open 5 min', undefined],
        ['cure 24 h', 'seen'],
    ]);
});
