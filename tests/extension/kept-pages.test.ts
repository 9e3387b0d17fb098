import { describe, expect, test } from 'vitest';
import { type AskedPage, keyOf, readAskedPage, startsGit } from '../../extension/review/asked-page';
import { KeptPages } from '../../extension/review/kept-pages';

const tray = 'file:///w/tray.kerf';
const compared: AskedPage = { kind: 'compare', uri: tray };
const runs: AskedPage = { kind: 'history', uri: tray, recipe: 'tray' };

/** The editor's memory; what is written in one session is there in the next. */
function memory(first?: unknown) {
    let kept = JSON.stringify(first);
    return {
        get: (): unknown => (kept === undefined ? undefined : JSON.parse(kept)),
        update: async (_key: string, value: unknown) => {
            kept = JSON.stringify(value);
        },
    };
}

describe('pages that were open', () => {
    test('are known again by what their panels are called, each once', () => {
        const kept = memory();
        const open = [
            { title: 'Compare: tray.kerf', asked: compared },
            { title: 'Runs: tray', asked: runs },
        ];
        new KeptPages(kept).keep(open, new Set());
        const next = new KeptPages(kept);
        expect(next.take('Runs: tray')).toEqual(runs);
        expect(next.take('Runs: tray')).toBeUndefined();
        expect(next.take('Compare: tray.kerf')).toEqual(compared);
    });

    test('that are called alike all come back', () => {
        const kept = memory();
        const other: AskedPage = { kind: 'compare', uri: 'file:///w/old/tray.kerf' };
        const title = 'Compare: tray.kerf';
        new KeptPages(kept).keep(
            [
                { title, asked: compared },
                { title, asked: other },
            ],
            new Set(),
        );
        const next = new KeptPages(kept);
        expect([next.take(title), next.take(title), next.take(title)]).toEqual([compared, other, undefined]);
    });

    test('wait for their tab to be looked at, and are forgotten with it', () => {
        const kept = memory();
        new KeptPages(kept).keep([{ title: 'Runs: tray', asked: runs }], new Set());
        const second = new KeptPages(kept);
        second.keep([{ title: 'Compare: tray.kerf', asked: compared }], new Set(['Runs: tray', 'Compare: tray.kerf']));
        expect(new KeptPages(kept).take('Runs: tray')).toEqual(runs);
        second.keep([{ title: 'Compare: tray.kerf', asked: compared }], new Set(['Compare: tray.kerf']));
        expect(new KeptPages(kept).take('Runs: tray')).toBeUndefined();
        expect(new KeptPages(kept).take('Compare: tray.kerf')).toEqual(compared);
    });

    test.each([undefined, null, 7, 'pages', {}, [7, null, {}, { title: 'Runs: tray' }, { title: 7, asked: runs }]])(
        'are none where the memory holds %j',
        (held) => {
            const kept = new KeptPages(memory(held));
            expect(kept.take('Runs: tray')).toBeUndefined();
        },
    );
});

describe('a page that somebody asked for', () => {
    test.each<AskedPage>([
        compared,
        { kind: 'compare', uri: tray, revision: 'v1' },
        { kind: 'compare', uri: tray, before: 'file:///w/sign.kerf' },
        runs,
        { kind: 'variants', uri: tray, offset: 12 },
    ])('is read as it was written: %j', (asked) => {
        expect(readAskedPage(JSON.parse(JSON.stringify(asked)))).toEqual(asked);
    });

    test.each([undefined, 'compare', { kind: 'compare' }, { kind: 'other', uri: tray }, { kind: 'history', uri: '' }])(
        'is none of ours: %j',
        (value) => {
            expect(readAskedPage(value)).toBeUndefined();
        },
    );

    test('leaves out what is no part of it', () => {
        expect(readAskedPage({ kind: 'history', uri: tray, offset: -1, recipe: 7, revision: 'v1' })).toEqual({
            kind: 'history',
            uri: tray,
        });
    });

    test('has a panel of its own unless it differs in the place alone', () => {
        const keys = [compared, { ...compared, revision: 'v1' }, { ...compared, before: 'file:///w/b.kerf' }, runs].map(keyOf);
        expect(new Set(keys).size).toBe(4);
        expect(keyOf({ kind: 'history', uri: tray, offset: 3 })).toBe(keyOf(runs));
        const week: AskedPage = { kind: 'week', uri: tray, start: '2026-12-01T08:00' };
        expect(readAskedPage(JSON.parse(JSON.stringify(week)))).toEqual(week);
        expect(readAskedPage({ kind: 'week', uri: tray })).toBeUndefined();
        const season: AskedPage = { kind: 'season', uri: tray, from: '2026-01-01' };
        expect(readAskedPage(JSON.parse(JSON.stringify(season)))).toEqual(season);
        expect(readAskedPage({ kind: 'season', uri: tray, from: 7 })).toEqual({ kind: 'season', uri: tray });
        expect(keyOf({ ...week, start: '2026-12-08T08:00' })).toBe(keyOf(week));
    });

    test('starts git only for an earlier version', () => {
        expect([compared, { ...compared, before: 'file:///w/b.kerf' }, runs].map(startsGit)).toEqual([true, false, false]);
    });
});
