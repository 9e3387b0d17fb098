import { beforeEach, expect, test } from 'vitest';
import { NewestAsker } from '../../extension/bench/webview/newest-asker';

interface Wish {
    readonly text: number;
    readonly y: number;
}

const asked: { ticket: number; y: number }[] = [];
const shown: string[] = [];
const at = (y: number): Wish => ({ text: 1, y });
const asking = () =>
    new NewestAsker<Wish, string>(
        (ticket, { y }) => asked.push({ ticket, y }),
        ({ y }, answer) => shown.push(`${y} ${answer}`),
    );

beforeEach(() => {
    asked.length = 0;
    shown.length = 0;
});

test('while an answer is on its way only the newest wish is kept', () => {
    const asker = asking();
    for (const y of [1, 2, 3]) asker.want(at(y));
    expect(asked.map(({ y }) => y)).toEqual([1]);
    asker.answer(asked[0]!.ticket, 'first');
    expect(asked.map(({ y }) => y)).toEqual([1, 3]);
    asker.answer(asked[1]!.ticket, 'third');
    expect(shown).toEqual(['1 first', '3 third']);
});

test('who goes back to where they were is not led elsewhere', () => {
    const asker = asking();
    asker.want(at(1));
    asker.want(at(2));
    asker.want(at(1));
    asker.answer(asked[0]!.ticket, 'one');
    expect(asked.map(({ y }) => y)).toEqual([1]);
    // Answered already, but the answer to another question is still to come and would be shown last.
    asker.want(at(2));
    asker.want(at(1));
    asker.answer(asked[1]!.ticket, 'two');
    asker.answer(asked[2]!.ticket, 'one');
    expect(shown).toEqual(['1 one', '2 two', '1 one']);
});

test('the same is not asked for twice, and an answer under another ticket is no answer', () => {
    const asker = asking();
    asker.want(at(1));
    asker.answer(asked[0]!.ticket + 1, 'of another');
    expect(shown).toEqual([]);
    asker.answer(asked[0]!.ticket, 'one');
    asker.want(at(1));
    expect(asked).toHaveLength(1);
});

test('nothing is shown where there is nothing to say', () => {
    const asker = asking();
    asker.want(at(1));
    asker.answer(asked[0]!.ticket, null);
    expect(shown).toEqual([]);
});
