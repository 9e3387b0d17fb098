import { expect, test } from 'vitest';
import type { Ticks } from '../../extension/checklist/ticks';
import { dayOf } from '../../shared/quantity/calendar';
import { runLines } from '../../shared/view/run-lines';

const words = 'of walnut-12 80 % at 461 mm/s x 3 pitch 0.1 mm';
const ticks: Ticks = {
    'check pocket': {
        label: 'Check pocket',
        at: 2,
        measured: [
            { step: 'pocket', words: 'width 12.1 mm' },
            { step: 'pocket', words: 'depth 0.53 mm' },
        ],
    },
    'engrave pocket': { label: 'Engrave pocket', at: 1, burnt: { step: 'pocket', words } },
    'cut rim': { label: 'Cut rim', at: 3, burnt: { step: 'rim', words: '95 % at 8 mm/s x 2' } },
    'wait 1': { label: 'Wait', at: 4, ends: 5 },
};

test('a run has a line for each step that was burnt, in the order of the work, with what was measured behind', () => {
    expect(runLines(ticks, ['engrave pocket', 'check pocket', 'cut rim', 'wait 1'])).toEqual([
        `pocket ${words} depth 0.53 mm width 12.1 mm`,
        'rim 95 % at 8 mm/s x 2',
    ]);
});

test('what was measured later counts, also of a step that was not ticked', () => {
    const again: Ticks = {
        a: { label: 'a', at: 1, measured: [{ step: 'pocket', words: 'depth 0.4 mm' }] },
        b: { label: 'b', at: 2, measured: [{ step: 'pocket', words: 'depth 0.5 mm' }] },
    };
    expect(runLines(again, ['a', 'b'])).toEqual(['pocket depth 0.5 mm']);
    expect(runLines({}, ['a', 'b'])).toEqual([]);
});

test('the day is that of the clock on the wall', () => {
    expect(dayOf(new Date(2026, 0, 5, 23, 59))).toBe('2026-01-05');
});
