import { beforeAll, describe, expect, test } from 'vitest';
import { writeReached } from '../../language/editing/write-reached';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';

const recipe = (depth: string) => `recipe tray "Tray" {
  blank tray { size 300 x 200 mm }
  engrave pocket on tray {
    rectangle 60 x 30 mm at 100, 100 mm
    ${depth} // as the veneer is thick
    air off
  }
}
`;

let shop: MemoryWorkshop;
beforeAll(async () => {
    shop = await memoryWorkshop();
});

async function writtenAfter(line: string, at: string, depth: string, passes: number): Promise<string> {
    const text = recipe(line);
    const document = await shop.open(text);
    const found = writeReached(document, text.indexOf(at), { depth, passes }, shop.workshop.services);
    if ('problem' in found) return found.problem;
    const [edit] = found.edits;
    return (text.slice(0, edit!.offset) + edit!.text + text.slice(edit!.offset + edit!.length)).split('\n')[4]!.trim();
}

describe('a depth that was measured after some passes', () => {
    test.each([
        ['depth 0.50 mm', '0.50 mm', '0.31 mm', 2, 'depth 0.50 mm reached 0.31 mm after 2 // as the veneer is thick'],
        ['depth 0.50 mm', '0.50 mm', ' 12 thou ', 1, 'depth 0.50 mm reached 12 thou after 1 // as the veneer is thick'],
        ['depth through', 'depth through', '0.31 mm', 2, 'depth through reached 0.31 mm after 2 // as the veneer is thick'],
        [
            'depth through sure 99 %',
            'depth through',
            '0.31 mm +- 0.01 mm',
            3,
            'depth through sure 99 % reached 0.31 mm +- 0.01 mm after 3 // as the veneer is thick',
        ],
        [
            'depth 0.50 mm reached 0.2 mm after 1',
            '0.50 mm',
            '0.31 mm',
            2,
            'depth 0.50 mm reached 0.31 mm after 2 // as the veneer is thick',
        ],
    ])('%s', async (line, at, depth, passes, written) => {
        expect(await writtenAfter(line, at, depth, passes)).toBe(written);
    });

    test.each(['', 'deep', '3 h', '0.31', '0.31 mm after 1 air on', '0.31 mm } engrave', '0.31 mm // no'])(
        '“%s” is refused',
        async (depth) => {
            expect(await writtenAfter('depth 0.50 mm', '0.50 mm', depth, 2)).toContain('is no depth');
        },
    );

    test('nothing is written where no depth stands', async () => {
        expect(await writtenAfter('depth 0.50 mm', 'air off', '0.31 mm', 2)).toBe('The depth is not there any more.');
    });
});
