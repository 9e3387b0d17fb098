import { expect, test } from 'vitest';
import { TickBook } from '../../extension/checklist/ticks';
import { WrittenRuns } from '../../extension/checklist/written-runs';

const uri = 'file:///w/tray.kerf';
const job = `${uri}#tray`;
const recipe = 'recipe tray { }\n';
const run = '\nrun tray 2026-11-27 { }\n';

function begun() {
    const kept = new Map<string, unknown>();
    const book = new TickBook({
        get: <T>(key: string) => kept.get(key) as T,
        update: async (key, value) => void kept.set(key, value),
    });
    book.tick(job, { id: 'engrave pocket', label: 'Engrave pocket' }, 1);
    return { book, runs: new WrittenRuns(book) };
}

test('ticks of a run go when it is written, come back with undo, and go again with redo', () => {
    const { book, runs } = begun();
    runs.add(uri, job, run, recipe + run);
    expect(book.of(job)).toEqual({});
    expect(runs.changed('file:///w/other.kerf', recipe)).toBe(false);
    expect(runs.changed(uri, recipe)).toBe(true);
    expect(Object.keys(book.of(job))).toEqual(['engrave pocket']);
    expect(runs.changed(uri, recipe)).toBe(false);
    expect(runs.changed(uri, recipe + run)).toBe(true);
    expect(book.of(job)).toEqual({});
});

test('what was ticked since stays ticked, and a run that reads alike is told apart', () => {
    const { book, runs } = begun();
    runs.add(uri, job, run, recipe + run + run);
    book.tick(job, { id: 'peel bird', label: 'Peel bird' }, 2);
    expect(runs.changed(uri, `${recipe}// typed\n${run}${run}`)).toBe(false);
    expect(runs.changed(uri, recipe + run)).toBe(true);
    expect(Object.keys(book.of(job)).toSorted()).toEqual(['engrave pocket', 'peel bird']);
});
