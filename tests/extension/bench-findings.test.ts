import { describe, expect, test } from 'vitest';
import { countBySeverity, groupFindings } from '../../extension/bench/webview/notes/group-findings';
import { runOf } from '../../extension/bench/webview/run';
import type { FindingView, StepView } from '../../shared/view/bench-view';

const where = { uri: 'file:///w/tray.kerf', offset: 0, length: 1 };
const finding = (rule: string, severity: FindingView['severity']): FindingView => ({
    rule,
    severity,
    message: rule,
    where,
    spots: [],
});

describe('findings in the bench view', () => {
    const all = [
        finding('pale-tone', 'info'),
        finding('thin-wall', 'warning'),
        finding('jams', 'error'),
        finding('thin-wall', 'warning'),
        finding('thin-wall', 'error'),
    ];

    test('stand worst first, those alike together, each with its number among all', () => {
        expect(groupFindings(all).map(({ first, alike }) => [first.rule, first.index, alike.map(({ index }) => index)])).toEqual([
            ['jams', 2, []],
            ['thin-wall', 4, []],
            ['thin-wall', 1, [3]],
            ['pale-tone', 0, []],
        ]);
    });

    test('are counted by severity, and what there is none of is left out', () => {
        expect(countBySeverity(all)).toEqual([
            ['error', 2],
            ['warning', 2],
            ['info', 1],
        ]);
        expect(countBySeverity([])).toEqual([]);
    });
});

describe('a run in the bench view', () => {
    const steps = ['engrave pocket', 'wait', 'sand tray'].map((id, index) => ({ id, index })) as unknown as StepView[];

    test('has not begun before a tick', () => {
        const { done, now, isOver } = runOf({ steps }, {});
        expect([done.size, now, isOver]).toEqual([0, undefined, false]);
    });

    test('is at the first step that is not ticked, whatever was ticked behind it', () => {
        const run = runOf({ steps }, { 'engrave pocket': {}, 'sand tray': {} });
        expect([[...run.done], run.now]).toEqual([[0, 2], 1]);
    });

    test('knows when a wait is over, and that it is over itself', () => {
        const run = runOf({ steps }, { 'engrave pocket': {}, wait: { ends: 5 }, 'sand tray': {} });
        expect([run.ends.get(1), run.now, run.isOver]).toEqual([5, undefined, true]);
    });

    test('takes no count of a step that is gone', () => {
        expect(runOf({ steps }, { constructor: {}, 'cut rim': {} }).done.size).toBe(0);
    });
});
