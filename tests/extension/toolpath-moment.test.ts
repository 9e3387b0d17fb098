import { expect, test } from 'vitest';
import { momentAt } from '../../extension/bench/webview/toolpath/toolpath-moment';
import type { ToolpathView } from '../../shared/view/toolpath-view';

const even = (count: number) => ({ dose: 1, pace: '9'.repeat(count), shade: '5'.repeat(count) });

const toolpath: ToolpathView = {
    step: 0,
    blank: 'tray',
    total: 73,
    works: [
        {
            name: 'area',
            kind: 'scan',
            passes: 3,
            start: 5,
            pass: 10,
            back: 2,
            points: [0, 0, 0, 4, 0, 4, 4, 9, 10],
            lit: '010',
            ...even(3),
        },
        {
            name: 'edge',
            kind: 'outline',
            passes: 1,
            start: 45,
            pass: 28,
            back: 0,
            points: [1, 1, 0, 2, 2, 28],
            lit: '01',
            ...even(2),
        },
    ],
};

test.each([
    [0, [0, 0], undefined, /^0 s of 1 min 13 s$/],
    [5, [1, 0], { x: 0, y: 0 }, /area, pass 1 of 3$/],
    [10, [2, 0], { x: 4, y: 0 }, /area, pass 1 of 3$/],
    [22, [3, 0], { x: 4, y: 0 }, /area, pass 2 of 3$/],
    [40, [3, 0], { x: 4, y: 9 }, /area, pass 3 of 3$/],
    [46, [3, 1], { x: 1, y: 1 }, /edge$/],
    [73, [3, 2], { x: 2, y: 2 }, /^1 min 13 s of 1 min 13 s$/],
])('at %d s', (time, places, head, words) => {
    const moment = momentAt(toolpath, time);
    expect(moment.places).toEqual(places);
    expect(moment.head).toEqual(head);
    expect(moment.words).toMatch(words);
});
