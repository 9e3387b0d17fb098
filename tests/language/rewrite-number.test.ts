import { beforeAll, describe, expect, test } from 'vitest';
import { rewriteNumber } from '../../language/editing/rewrite-number';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';

const text = `recipe tray "Tray" {
  art heron "heron.svg"
  blank tray { size 300 x 200 mm }
  engrave pocket on tray {
    art heron at 150, 100 mm
    art heron turned 90 deg
    depth 0.50 mm
  }
}
`;

let shop: MemoryWorkshop;
beforeAll(async () => {
    shop = await memoryWorkshop();
});

async function rewritten(old: string, typed: string): Promise<string> {
    const document = await shop.open(text);
    const at = { offset: text.indexOf(old), length: old.length };
    const found = rewriteNumber(document, at, typed, shop.workshop.services);
    if ('problem' in found) return `refused: ${found.problem}`;
    const [edit] = found.edits;
    const line = (text.slice(0, edit!.offset) + edit!.text + text.slice(edit!.offset + edit!.length)).split('\n');
    return line.find((each, index) => each !== text.split('\n')[index])!.trim();
}

describe('a number typed over another', () => {
    test.each([
        ['0.50 mm', '0.6 mm', 'depth 0.6 mm'],
        ['0.50 mm', '1/64 in', 'depth 1/64 in'],
        ['0.50 mm', '0.5 mm +- 0.1 mm', 'depth 0.5 mm +- 0.1 mm'],
        ['300 x 200 mm', '12 x 8 in', 'blank tray { size 12 x 8 in }'],
        ['150, 100 mm', '148.5, 97 mm', 'art heron at 148.5, 97 mm'],
        ['art heron at 150, 100 mm', '1, 2 cm', 'art heron at 1, 2 cm'],
        ['art heron turned 90 deg', '20, 30 mm', 'art heron at 20, 30 mm turned 90 deg'],
    ])('%s by %s', async (old, typed, line) => {
        expect(await rewritten(old, typed)).toBe(line);
    });

    test.each([
        ['0.50 mm', ''],
        ['0.50 mm', 'deep'],
        ['0.50 mm', '3 h'],
        ['0.50 mm', '0.6 mm passes 9'],
        ['0.50 mm', '0.6 mm } engrave'],
        ['0.50 mm', '0.6 mm // and no more'],
        ['0.50 mm', '1, 2 mm'],
        ['300 x 200 mm', '300 mm'],
        ['150, 100 mm', '5 mm'],
        ['0.50', '0.6'],
        ['depth 0.50 mm', 'depth 0.6 mm'],
        ['heron.svg', '0.6 mm'],
    ])('%s by “%s” is refused', async (old, typed) => {
        expect(await rewritten(old, typed)).toMatch(/^refused: /);
    });
});
