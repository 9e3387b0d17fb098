import { beforeEach, expect, test, vi } from 'vitest';
import type { SectionView } from '../../shared/view/bench-view';

const asked: { ticket: number; y: number }[] = [];
vi.stubGlobal('acquireVsCodeApi', () => ({ postMessage: (message: { ticket: number; y: number }) => asked.push(message) }));
const { SectionAsker } = await import('../../extension/bench/webview/section-asker');

const at = (y: number) => ({ text: 1, recipe: 'tray', frame: 2, blank: 'tray', y });
const section = (y: number): SectionView => ({ y, width: 10, top: 1, face: 1, spans: [] });

beforeEach(() => {
    asked.length = 0;
});

test('while an answer is on its way only the newest wish is kept', () => {
    const shown: number[] = [];
    const asker = new SectionAsker(({ section: { y } }) => shown.push(y));
    for (const y of [1, 2, 3]) asker.want(at(y));
    expect(asked.map(({ y }) => y)).toEqual([1]);
    asker.answer(asked[0]!.ticket, section(1));
    expect(asked.map(({ y }) => y)).toEqual([1, 3]);
    asker.answer(asked[1]!.ticket, section(3));
    expect(shown).toEqual([1, 3]);
});

test('who goes back to where they were is not led elsewhere', () => {
    const shown: number[] = [];
    const asker = new SectionAsker(({ section: { y } }) => shown.push(y));
    asker.want(at(1));
    asker.want(at(2));
    asker.want(at(1));
    asker.answer(asked[0]!.ticket, section(1));
    expect(asked.map(({ y }) => y)).toEqual([1]);
    // Answered already, but the answer to another question is still to come and would be shown last.
    asker.want(at(2));
    asker.want(at(1));
    asker.answer(asked[1]!.ticket, section(2));
    asker.answer(asked[2]!.ticket, section(1));
    expect(shown).toEqual([1, 2, 1]);
});

test('the same is not asked for twice', () => {
    const asker = new SectionAsker(() => {});
    asker.want(at(1));
    asker.answer(asked[0]!.ticket, section(1));
    asker.want(at(1));
    expect(asked).toHaveLength(1);
});
