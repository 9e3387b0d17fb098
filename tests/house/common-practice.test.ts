import { expect, test } from 'vitest';
import { practices, untagged } from './common-practice';
import { sourceFiles, stockFiles } from './source-files';

const sources = sourceFiles('shared', 'language', 'server', 'extension');

test('what rests on common practice bears its tag, so that a command can list it', () => {
    expect(untagged(sources)).toEqual([]);
    const slip = { path: 'a.ts', text: 'const a = 1;\n/** Least wall, mm: common practice, no source. */\nconst least = 0.8;\n' };
    expect(untagged([slip])).toEqual(['a.ts:2']);
});

test('the list has sources, stock and pages, each with what it is about', () => {
    const all = practices([...sources, ...stockFiles()]);
    expect(all).toContainEqual({
        place: expect.stringMatching(/^shared\/.*floor\.ts:\d+$/),
        text: 'Least wood under a pocket, mm.',
    });
    for (const room of ['shared/burn/', 'shared/bench/', 'language/stock/', 'shared/rules/'])
        expect(
            all.some(({ place }) => place.startsWith(room)),
            room,
        ).toBe(true);
    expect(all.filter(({ text }) => text === '' || text.includes('@'))).toEqual([]);
});
