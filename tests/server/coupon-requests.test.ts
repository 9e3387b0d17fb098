import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CouponAnswer, CouponChoices, SquaresAnswer } from '../../shared/view/coupon-protocol';
import type { WrittenAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { LanguageClient } from '../kit/language-client';
import { type ServedPlate, servePlate } from '../kit/served-plate';
import { shop } from '../kit/shop';

const recipe = 'use "shop.kerf"\nrecipe plate { laser shed blank b { of ash-10 size 50 x 50 mm } sand b { take 0.1 mm } }\n';
let plate: ServedPlate;
let client: LanguageClient;
const uriOf = (name: string): string => plate.uriOf(name);

beforeEach(async () => {
    plate = await servePlate(recipe);
    ({ client } = plate);
});
afterEach(() => plate.stop());

const ask = <Answer>(what: string, params: object = {}): Promise<Answer> =>
    client.connection.sendRequest<Answer>(what, { uri: uriOf('plate.kerf'), ...params });

/** The text of a file once the edits of an answer are taken. */
function taken(text: string, answer: WrittenAnswer): string {
    if ('problem' in answer) throw new Error(answer.problem);
    return answer.edits
        .toSorted((a, b) => b.offset - a.offset)
        .reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
}

describe('making a coupon in the editor', () => {
    it('offers what the file sees, and knows the coupon under the cursor', async () => {
        const all = await ask<CouponChoices>(requests.couponChoices.method);
        expect(all).toEqual({
            sheets: ['walnut-12', 'ash-10', 'maple-06'],
            lasers: ['shed'],
            coupons: [{ sheet: 'walnut-12', laser: 'shed', rows: 6 }],
        });
        const there = await ask<CouponChoices>(requests.couponChoices.method, {
            uri: uriOf('shop.kerf'),
            offset: shop.indexOf('60 % at 300'),
        });
        expect(there.here).toEqual({ sheet: 'walnut-12', laser: 'shed' });
    });
    it('gives the files, of which the tables are to be filled in', async () => {
        const answer = await ask<CouponAnswer>(requests.coupon.method, { sheet: 'ash-10', laser: 'shed' });
        expect(answer.folder).toBe('coupon-ash-10-shed');
        expect(answer.problems).toEqual([]);
        expect(answer.files.filter((file) => file.fillIn).map((file) => file.path)).toEqual(['coupon.csv', 'coupon.kerf']);
        expect(answer.files.find(({ path: name }) => name === 'coupon.kerf')!.text).toContain('use "../../shop.kerf"');
    });
    it('says why there is none', async () => {
        expect(await ask<CouponAnswer>(requests.coupon.method, { sheet: 'oak', laser: 'shed' })).toMatchObject({
            files: [],
            problems: ['There is no board or veneer oak here; there is walnut-12, ash-10, maple-06.'],
        });
    });
});

describe('the squares that wait to be measured', () => {
    it('are those of the newest files that have some left', async () => {
        const stock = { sheet: 'walnut-12', laser: 'shed' };
        const write = (folder: string, row: string): void => {
            mkdirSync(path.join(plate.folder, 'made', folder), { recursive: true });
            const block = `use "../../shop.kerf"\ncoupon walnut-12 on shed {\n  pitch 0.1 mm\n  // ${row}\n}\n`;
            writeFileSync(path.join(plate.folder, 'made', folder, 'coupon.kerf'), block);
        };
        const words = async (): Promise<string[]> => {
            const found = await ask<SquaresAnswer>(requests.squares.method, stock);
            return 'problem' in found ? [found.problem] : found.squares.map((each) => `${each.number}: ${each.words}`);
        };
        write('coupon-walnut-12-shed', 'burn 30 % at 400 mm/s gives … mm  // square 1');
        expect(await words()).toEqual(['1: burn 30 % at 400 mm/s']);
        // The coupon has six squares.
        write('coupon-walnut-12-shed-from-7', 'burn 75 % at 300 mm/s x 3 gives … mm  // square 7');
        expect(await words()).toEqual(['7: burn 75 % at 300 mm/s x 3']);
        write('coupon-walnut-12-shed-from-7', 'burn 60 % at 400 mm/s gives … mm  // square 7');
        expect(await words()).toEqual(['1: burn 30 % at 400 mm/s']);
    });
});

describe('writing measured squares down', () => {
    const stock = { sheet: 'ash-10', laser: 'shed' };

    it('makes the block beside the board, and the next time asks only for the rest', async () => {
        const found = await ask<SquaresAnswer>(requests.squares.method, stock);
        if ('problem' in found) throw new Error(found.problem);
        expect(found.squares).toHaveLength(16);
        const rows = [
            { words: found.squares[0]!.words, depth: '0,05' },
            { words: found.squares[3]!.words, depth: '12 thou' },
        ];
        const answer = await ask<WrittenAnswer>(requests.measured.method, { ...stock, rows });
        expect(answer).toMatchObject({ uri: uriOf('shop.kerf') });
        const text = taken(shop, answer);
        expect(text).toContain(
            `coupon ash-10 on shed {\n  pitch 0.08 mm\n  ${rows[0]!.words} gives 0.05 mm  // square 1\n  ${rows[1]!.words} gives 12 thou  // square 4\n}\n`,
        );
        await client.open(uriOf('shop.kerf'), text);
        await client.diagnostics(uriOf('shop.kerf'), () => true);
        const left = await ask<SquaresAnswer>(requests.squares.method, stock);
        expect(left).toEqual({ squares: found.squares.filter(({ words }) => !rows.some((row) => row.words === words)) });
    });
    it('asks for the squares of the file that was written, with its pitch', async () => {
        const made = 'coupon ash-10 on shed {\n pitch 0.05 mm\n // burn 7 % at 70 mm/s gives … mm // square 12\n}';
        expect(await ask<SquaresAnswer>(requests.squares.method, { ...stock, made })).toEqual({
            squares: [{ words: 'burn 7 % at 70 mm/s', number: 12 }],
        });
        const rows = [{ words: 'burn 7 % at 70 mm/s', depth: '0.3' }];
        const text = taken(shop, await ask<WrittenAnswer>(requests.measured.method, { ...stock, made, rows }));
        expect(text).toContain('pitch 0.05 mm\n  burn 7 % at 70 mm/s gives 0.3 mm  // square 12\n');
    });
    it('does not mix pitches in one block', async () => {
        const made = 'coupon walnut-12 on shed {\n pitch 0.05 mm\n // burn 7 % at 70 mm/s gives … mm\n}';
        const answer = await ask<SquaresAnswer>(requests.squares.method, { sheet: 'walnut-12', laser: 'shed', made });
        expect(answer).toEqual({
            problem: expect.stringContaining('pitch of 0.05 mm, the coupon in the text is one of 0.10 mm'),
        });
    });
    it('writes nothing that it did not ask for, or that is no depth', async () => {
        const rows = [{ words: 'burn 7 % at 70 mm/s', depth: '0.3' }];
        expect(await ask<WrittenAnswer>(requests.measured.method, { ...stock, rows })).toEqual({
            problem: expect.stringContaining('no square'),
        });
        const found = await ask<SquaresAnswer>(requests.squares.method, stock);
        const words = 'squares' in found ? found.squares[0]!.words : '';
        expect(await ask<WrittenAnswer>(requests.measured.method, { ...stock, rows: [{ words, depth: '3 s' }] })).toHaveProperty(
            'problem',
        );
    });
    it('reads a depth while it is typed', async () => {
        expect(await ask(requests.readDepth.method, { text: '1/64 in' })).toEqual({ depth: '1/64 in', value: 25.4 / 64 });
        expect(await ask(requests.readDepth.method, { text: 'x' })).toHaveProperty('problem');
    });
});
