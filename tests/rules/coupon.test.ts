import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitCoupon } from '../../shared/burn/fit';
import { couponRules } from '../../shared/rules/coupon/examine-coupons';
import { pageText } from '../../shared/rules/page';
import { burn, couponOf, shed, woodOf } from '../burn/stock';
import { all, expectMended, mended, of, one, silent, words, workshop } from './harness';

workshop();

const stock = `laser shed { beam co2 power 45 W spot 0.15 mm top speed 600 mm/s acceleration 6000 mm/s2 }
board walnut-12 { wood black-walnut thickness 12 mm }
`;
const rows = [
    'burn 40 % at 400 mm/s gives 0.07 mm',
    'burn 50 % at 400 mm/s gives 0.11 mm',
    'burn 60 % at 300 mm/s gives 0.23 mm',
    'burn 70 % at 300 mm/s gives 0.27 mm',
    'burn 80 % at 250 mm/s gives 0.41 mm',
    'burn 80 % at 250 mm/s x 2 gives 0.81 mm',
    'burn 70 % at 300 mm/s x 3 gives 0.81 mm',
    'burn 60 % at 300 mm/s x 4 gives 0.87 mm',
];
const coupon = (lines: readonly string[]): string =>
    `${stock}coupon walnut-12 on shed {\n  pitch 0.10 mm\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const samples = new URL('../../samples/workshop.kerf', import.meta.url);

describe('coupon-outlier', () => {
    const text = coupon(rows.with(4, 'burn 80 % at 250 mm/s gives 0.14 mm'));
    it('names the square that does not go with the others, with both depths', async () => {
        const finding = await one(text, 'coupon-outlier');
        expect(words(text, finding)).toBe('burn 80 % at 250 mm/s gives 0.14 mm');
        expect(finding.message).toMatch(
            /^This square was measured 0\.14 mm deep; by the others it should be 0\.41 mm\. It is left out until it is measured again\.$/,
        );
        expect(await expectMended(text, finding)).not.toContain('0.14');
    });
    it('points at the row where it stands now, and not where it stood', async () => {
        await one(text, 'coupon-outlier');
        const moved = `// moved\n\n${text}`;
        expect(words(moved, await one(moved, 'coupon-outlier'))).toBe('burn 80 % at 250 mm/s gives 0.14 mm');
    });
    it('is silent for good squares, and for the coupons of the sample workshop', async () => {
        await silent(coupon(rows), 'coupon-outlier');
        await silent(readFileSync(samples, 'utf8'), 'coupon-outlier');
    });
});

describe('squares-off-law', () => {
    // What a pass takes off falls behind the dose; the second of each pair was read a hundredth deeper.
    const shielded = [
        [40, 400, 0.07],
        [60, 400, 0.19],
        [60, 300, 0.27],
        [80, 300, 0.36],
        [80, 250, 0.4],
        [80, 200, 0.44],
        [80, 150, 0.48],
    ].flatMap(([power, speed, depth]) =>
        [depth!, depth! + 0.01].map((mm) => `burn ${power} % at ${speed} mm/s gives ${mm.toFixed(2)} mm`),
    );
    it('says that wood does not follow the line, at the pair that lies farthest off it', async () => {
        const text = coupon(shielded);
        const finding = await one(text, 'squares-off-law');
        expect(finding.message).toMatch(
            /^Squares burnt alike agree, but lie off the line: .* wider ranges\. This one was measured 0\.\d+ mm deep, .* and the line says 0\.\d+ mm\. /,
        );
        expect(words(text, finding)).toMatch(/^burn \d+ % at/);
    });
    it('is silent where squares follow the line, where none was burnt twice, and for the samples', async () => {
        const straight = rows.flatMap((row) => [
            row,
            row.replace(/(\d\.\d\d) mm$/, (_, depth: string) => `${(Number(depth) + 0.01).toFixed(2)} mm`),
        ]);
        await silent(coupon(straight), 'squares-off-law');
        await silent(coupon(shielded.filter((_, at) => at % 2 === 0)), 'squares-off-law');
        await silent(readFileSync(samples, 'utf8'), 'squares-off-law');
    });
    it('is silent for two squares that a coarse gauge reads alike', async () => {
        await silent(coupon(rows.flatMap((row) => [row, row])), 'squares-off-law');
    });
});

describe('squares-disagree', () => {
    const twin = (depth: string): string => coupon([...rows, `burn 60 % at 300 mm/s gives ${depth} mm`]);
    it('names two squares of the same settings that came out unlike, and asks for a third', async () => {
        const finding = await one(twin('0.42'), 'squares-disagree');
        expect(words(twin('0.42'), finding)).toBe('burn 60 % at 300 mm/s gives 0.42 mm');
        expect(finding.message).toBe(
            'Burnt with the same settings, this square is 0.42 mm deep and another 0.23 mm. Measure both again, or burn a third with 60 % at 300 mm/s: it says which of them the wood meant.',
        );
        expect(finding.related).toHaveLength(1);
    });
    it('adds the third to the coupon once, as a row to be filled in, on a line of its own', async () => {
        for (const text of [
            twin('0.42'),
            twin('0.42').replace(/\{\n {2}pitch[^}]*/, (block) => block.replaceAll(/\n */g, ' ')),
        ]) {
            const finding = await one(text, 'squares-disagree');
            const after = mended(text, finding);
            expect(after).toMatch(/\n {2,4}\/\/ burn 60 % at 300 mm\/s gives … mm\n\}/);
            expect((await one(after, 'squares-disagree')).fixes).toEqual([]);
        }
    });
    it('is silent for two that differ as readings do, or were burnt in another number of passes', async () => {
        await silent(twin('0.27'), 'squares-disagree');
        await silent(coupon([...rows, 'burn 60 % at 300 mm/s x 2 gives 0.42 mm']), 'squares-disagree');
        await silent(readFileSync(samples, 'utf8'), 'squares-disagree');
    });
    it('goes by the tolerance of a reading where one is written', async () => {
        await silent(coupon([...rows, 'burn 60 % at 300 mm/s gives 0.42 mm +- 0.1 mm']), 'squares-disagree');
    });
});

describe('few-coupon-rows', () => {
    it.each([
        [1, '1 square is too few to stand alone: it is weighed against a guess from density.'],
        [2, '2 squares are too few to stand alone'],
        [4, '4 squares leave 2 rows to spare'],
    ])('%d of them', async (count, says) => {
        const text = coupon(rows.slice(0, count));
        const finding = await one(text, 'few-coupon-rows');
        expect(finding.severity).toBe('info');
        expect(finding.message).toContain(says);
        expect(words(text, finding)).toBe('coupon');
    });
    it('squares that took nothing off, or are all alike', async () => {
        const bare = rows.map((row) => row.replace(/gives .*/, 'gives 0 mm'));
        expect((await one(coupon(bare), 'few-coupon-rows')).message).toBe(
            'No square of this coupon took anything off: burn stronger ones.',
        );
        const alike = Array.from({ length: 6 }, (_, i) => `burn 60 % at 300 mm/s gives 0.2${i} mm`);
        expect((await one(coupon(alike), 'few-coupon-rows')).message).toContain('too much alike');
    });
    it('is silent for enough of them, for none, and for the sample workshop', async () => {
        await silent(coupon(rows), 'few-coupon-rows');
        await silent(coupon([]), 'few-coupon-rows');
        await silent(readFileSync(samples, 'utf8'), 'few-coupon-rows');
    });
});

describe('coupon-contradicts', () => {
    it('more dose came out shallower', async () => {
        const depths = [0.6, 0.5, 0.4, 0.3, 0.1];
        const upside = rows.slice(0, 5).map((row, i) => row.replace(/gives .*/, `gives ${depths[i]} mm`));
        const text = coupon(upside);
        expect(words(text, await one(text, 'coupon-contradicts'))).toBe('coupon');
        await silent(text, 'few-coupon-rows');
    });
    it('is silent for good squares and for the sample workshop', async () => {
        await silent(coupon(rows), 'coupon-contradicts');
        await silent(readFileSync(samples, 'utf8'), 'coupon-contradicts');
    });
});

describe('coupons in general', () => {
    it('hostile figures give findings and never a throw', async () => {
        const odd = ['1e308', '0', '1e-308', '-1', '999999999999'];
        for (const power of odd) {
            for (const depth of odd) {
                const found = await all(coupon([...rows, `burn ${power} W at 300 mm/s gives ${depth} mm`]));
                for (const { message } of found) expect(message).not.toMatch(/NaN|undefined|Infinity/);
            }
        }
        expect(await of(coupon(['burn 40 % at gives mm', ...rows.slice(0, 2)]), 'few-coupon-rows')).toHaveLength(1);
    });
    it('of a heap of rows the first are fitted, and it is said that others were left out', () => {
        const heap = Array.from({ length: 5000 }, (_, i) => burn((20 + (i % 70)) / 100, 200 + (i % 300), 1, 0.1 + (i % 9) / 10));
        const law = fitCoupon(couponOf(heap), shed, woodOf(600e-6));
        expect(law.rows).toHaveLength(500);
        expect(law.notes).toContain('rows-left-out');
        expect(fitCoupon(couponOf(heap.slice(0, 500)), shed, woodOf(600e-6)).notes).not.toContain('rows-left-out');
    });
    it('explain themselves', () => {
        for (const { page } of couponRules) {
            expect(page.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
            for (const text of [page.condition, page.why, page.mend, page.source]) expect(text).toMatch(/^\S.{10,}[.!?…”"]\)?$/s);
            expect(pageText(page)).not.toMatch(/\bsafe(ly)?\b/i);
        }
    });
});
