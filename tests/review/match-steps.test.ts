import { beforeAll, describe, expect, it } from 'vitest';
import type { Step } from '../../shared/recipe/step';
import { matchSteps } from '../../shared/review/match-steps';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { art, shop } from '../kit/shop';

let memory: MemoryWorkshop;
beforeAll(async () => {
    memory = await memoryWorkshop(art);
});

async function steps(lines: readonly string[]): Promise<readonly Step[]> {
    const document = await memory.open(`${shop}
recipe sign "Sign" {
  laser shed
  art flag "flag.svg"
  blank board { of walnut-12 size 100 x 100 mm grain along width }
  ${lines.join('\n  ')}
}`);
    return memory.workshop.recipes(document)[0]!.steps;
}

/** "0-1" for what was the first and is the second, "+1" and "-0" for added and removed, "!" for moved. */
async function matched(before: readonly string[], after: readonly string[]): Promise<string[]> {
    return matchSteps(await steps(before), await steps(after)).map(({ before: a, after: b, moved }) =>
        a === undefined ? `+${b}` : b === undefined ? `-${a}` : `${a}-${b}${moved ? '!' : ''}`,
    );
}

const engrave = (name: string, depth = '0.5 mm'): string => `engrave ${name} on board { art flag depth ${depth} air off }`;
const seal = 'seal board with shellac { coats 2 }';
const sand = 'sand board { take 0.1 mm grits 120, 180 }';

describe('which step has become which', () => {
    it('pairs what stayed, and says what came and went where it stood', async () => {
        expect(await matched([engrave('a'), seal, sand], [engrave('a'), sand, 'wait 2 h'])).toEqual(['0-0', '-1', '2-1', '+2']);
    });

    it('keeps a step whose figures changed', async () => {
        expect(await matched([engrave('a'), sand], [engrave('a', '0.9 mm'), sand])).toEqual(['0-0', '1-1']);
    });

    it('sees that a step has moved, and calls no other step moved for it', async () => {
        expect(await matched([engrave('a'), engrave('b'), seal, sand], [engrave('b'), seal, sand, engrave('a')])).toEqual([
            '1-0',
            '2-1',
            '3-2',
            '0-3!',
        ]);
    });

    it('knows a step that was given another name by what it says', async () => {
        expect(await matched([engrave('pocket'), sand], [engrave('hollow'), sand])).toEqual(['0-0', '1-1']);
        expect(await matched([engrave('pocket')], ['cut pocket on board { art flag power 80 % speed 10 mm/s }'])).toEqual([
            '+0',
            '-0',
        ]);
    });

    it('keeps the waits beside what they follow', async () => {
        const before = [seal, 'wait 24 h', sand, 'wait 24 h', engrave('a')];
        expect(await matched(before, [sand, 'wait 24 h', engrave('a')])).toEqual(['-0', '-1', '2-0', '3-1', '4-2']);
    });

    it('pairs equal steps elsewhere before it takes a like one', async () => {
        const before = ['wait 1 h', seal, 'wait 9 h'];
        expect(await matched(before, ['wait 9 h', seal])).toEqual(['2-0!', '-0', '1-1']);
    });

    it('comes to an end with thousands of steps in reverse', async () => {
        const all = Array.from({ length: 3000 }, (_, n) => `do "number ${n}"`);
        const [a, b] = [await steps(all), await steps(all.toReversed())];
        const rows = matchSteps(a, b);
        expect(rows.filter(({ before, after }) => before === undefined || after === undefined)).toEqual([]);
        expect(rows.filter(({ moved }) => !moved)).toHaveLength(1);
    });
});
