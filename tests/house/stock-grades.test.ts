import { expect, test } from 'vitest';
import { countedKinds, gradeOf, stockLines } from '../../language/stock-sources';
import { stockFiles } from './source-files';

const builtIn = stockFiles().filter(({ path }) => !path.startsWith('samples/'));

test('every line of the built-in stock says how it is known', () => {
    const lines = stockLines(builtIn);
    expect(lines.length).toBeGreaterThan(300);
    expect(lines.filter(({ known }) => known === undefined).map(({ place, line }) => `${place} ${line}`)).toEqual([]);
    expect(countedKinds(lines).reduce((sum, [, count]) => sum + count, 0)).toBe(lines.length);
    const slip = { path: 'a.kerf', text: 'glue a {\n  // Makers say so.\n  open 5 min\n  // Seen in a guide.\n  cure 24 h\n}\n' };
    expect(stockLines([slip]).map(({ of, line, known }) => [of, line, known])).toEqual([
        ['glue a', 'open 5 min', undefined],
        ['glue a', 'cure 24 h', 'seen'],
    ]);
});

test('what is computed is no better than what it is computed from', () => {
    const grade = (said: string) => gradeOf({ known: 'computed', said });
    expect(grade('Computed from 4195 g a US gallon.')).toBe('checked');
    expect(grade('Computed: 0.1 mm of it. The thickness is common practice, no source.')).toBe('rule of thumb');
    expect(grade('Computed: half of it solids. Solids from memory, unverified.')).toBe('not checked yet');
    expect(gradeOf({ known: 'seen at second hand', said: 'Seen only in a chart.' })).toBe('checked');
    expect(gradeOf({ said: 'Makers say so.' })).toBe('not checked yet');
});
