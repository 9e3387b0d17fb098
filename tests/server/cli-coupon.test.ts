import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { repository, shopFiles } from './shop-files';

describe('kerfbook coupon', () => {
    it('writes drawing, machine file, tables and text beside the stock', async () => {
        const shop = repository();
        const run = await shop.kerfbook(['coupon', 'ash-10', 'shed']);
        expect(run).toMatchObject({ code: 0, err: '' });
        const folder = path.join(shop.folder, 'stock', 'made', 'coupon-ash-10-shed');
        for (const name of ['coupon.svg', 'coupon.ngc', 'coupon.html', 'coupon.csv', 'coupon.kerf']) {
            expect(run.out).toContain(name);
            expect(existsSync(path.join(folder, name))).toBe(true);
        }
        // The text stands on its own, and says only that nothing is measured yet.
        const check = await shop.kerfbook(['check', 'stock/made/coupon-ash-10-shed/coupon.kerf']);
        expect(check.out).toContain('0 errors, 1 warning');
        expect(check.out).toContain('[missing-property]');
    });

    it('takes the figures that are asked for, gentlest dose first', async () => {
        const shop = repository();
        const args = ['--powers', '60,20', '--speeds', '100,400', '--pitch', '0.12', '--passes', '2', '--out', 'out'];
        expect((await shop.kerfbook(['coupon', 'ash-10', 'shed', 'stock', ...args])).code).toBe(0);
        const text = readFileSync(path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.kerf'), 'utf8');
        expect(text).toContain('use "../../stock/shop.kerf"');
        expect(text).toContain('pitch 0.12 mm');
        expect(text.match(/burn .* gives/g)?.map((row) => row.replaceAll(/ +/g, ' '))).toEqual([
            'burn 20 % at 400 mm/s gives',
            'burn 60 % at 400 mm/s gives',
            'burn 20 % at 100 mm/s gives',
            'burn 60 % at 400 mm/s x 2 gives',
            'burn 20 % at 100 mm/s x 2 gives',
            'burn 60 % at 100 mm/s gives',
        ]);
    });

    it('lays out plugs by the cuts that were tried, and leaves one line open for them', async () => {
        const shop = repository();
        const args = ['coupon', 'ash-10', 'shed', 'stock', '--rungs', '4', '--fits', '5', '--out', 'out'];
        const text = () => readFileSync(path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.kerf'), 'utf8');
        expect(await shop.kerfbook(args)).toMatchObject({ code: 0, err: '' });
        const line = /\/\/ cut \d+ % at ([\d.]+) mm\/s(?: x (\d+))? gives through fits … mm {2}\/\/ plugs 5 to 9\n/;
        const needed = (): number => Number(line.exec(text())![2] ?? 1) / Number(line.exec(text())![1]);
        const guessed = needed();
        const stock = readFileSync(path.join(shop.folder, 'stock', 'shop.kerf'), 'utf8');
        const tried = ['2 mm/s gives skin', '1.6 mm/s gives skin', '1.3 mm/s gives through', '1.1 mm/s gives through'];
        const tests = tried.map((each) => `cut 100 % at ${each}`).join('\n');
        shop.write({ 'stock/shop.kerf': `${stock}\ncoupon ash-10 on shed {\n${tests}\n}\n` });
        expect(await shop.kerfbook(args)).toMatchObject({ code: 0, err: '' });
        expect(needed()).toBeGreaterThan(1.1 * guessed);
        const wrong = await shop.kerfbook(['coupon', 'ash-10', 'shed', 'stock', '--fits', '2']);
        expect(wrong.err).toContain('--fits is a whole number from 3 to 12.');
    });

    it('numbers the squares, and takes as many as are asked for', async () => {
        const shop = repository();
        expect((await shop.kerfbook(['coupon', 'ash-10', 'shed', '--rungs', '9', '--passes', '2', '--out', 'out'])).code).toBe(0);
        const read = (name: string) => readFileSync(path.join(shop.folder, 'out', 'coupon-ash-10-shed', name), 'utf8');
        const rows = [...read('coupon.kerf').matchAll(/burn .*?( x 2)? +gives … mm {2}\/\/ square (\d+)$/gm)];
        expect(rows.map(([, , number]) => Number(number))).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
        expect(rows.filter(([, twice]) => twice !== undefined)).toHaveLength(3);
        expect(read('coupon.csv').split('\r\n')[0]).toMatch(/^square,power %/);
    });

    it('lays strips beside the squares where they are asked for, and takes what is measured of them', async () => {
        const shop = repository();
        const run = await shop.kerfbook(['coupon', 'ash-10', 'shed', '--rungs', '6', '--cuts', '4', '--out', 'out']);
        expect(run).toMatchObject({ code: 0, err: '' });
        const file = path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.kerf');
        const text = readFileSync(file, 'utf8');
        const open = /^ {2}\/\/ (cut .* gives through strip) … mm of 6 mm {2}\/\/ strip (\d+)$/gm;
        expect([...text.matchAll(open)].map(([, , number]) => Number(number))).toEqual([7, 8, 9, 10]);
        writeFileSync(file, text.replace(open, '  $1 5.78 mm of 6 mm  // strip $2'));
        expect((await shop.kerfbook(['check', file])).out).toContain('0 errors');
        expect((await shop.kerfbook(['coupon', 'ash-10', 'shed', '--cuts', '1'])).err).toContain(
            '--cuts is a whole number from 2 to 12',
        );
    });

    it('is burnt with the pitch of the coupon that it can join', async () => {
        const shop = repository();
        await shop.kerfbook(['coupon', 'walnut-12', 'shed', '--out', 'out']);
        expect(readFileSync(path.join(shop.folder, 'out', 'coupon-walnut-12-shed', 'coupon.kerf'), 'utf8')).toContain(
            'pitch 0.1 mm',
        );
        await shop.kerfbook(['coupon', 'ash-10', 'shed', '--out', 'out']);
        expect(readFileSync(path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.kerf'), 'utf8')).toContain(
            'pitch 0.08 mm',
        );
    });

    it('never writes over what somebody has filled in, unless told to', async () => {
        const shop = repository();
        const command = ['coupon', 'ash-10', 'shed', '--out', 'out'];
        await shop.kerfbook(command);
        const table = path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.csv');
        writeFileSync(table, 'mine');
        const again = await shop.kerfbook(command);
        expect(again.code).toBe(0);
        expect(again.err).toContain('coupon.csv is left as it is');
        expect(again.out).toContain('coupon.kerf');
        expect(readFileSync(table, 'utf8')).toBe('mine');
        await shop.kerfbook([...command, '--force']);
        expect(readFileSync(table, 'utf8')).toMatch(/^square,power %/);
    });

    it.each([
        [['ash', 'shed'], 'There is no board or veneer ash here; there is walnut-12, ash-10, maple-06.'],
        [['ash-10', 'loft'], 'There is no laser loft here; there is shed.'],
        [['ash-10'], 'Say for which board'],
        [['ash-10', 'shed', '--powers', '20,x'], '--powers is up to 20 numbers'],
        [['ash-10', 'shed', '--powers', ''], '--powers is up to 20 numbers'],
        [['ash-10', 'shed', '--speeds', Array.from({ length: 30 }, (_, i) => i + 1).join()], '--speeds is up to 20 numbers'],
        [['ash-10', 'shed', '--passes', '2.5'], '--passes is 1 to 30'],
        [['ash-10', 'shed', '--rungs', '3'], '--rungs is a whole number from 4 to 60'],
        [['ash-10', 'shed', '--rungs', '8', '--powers', '20', '--speeds', '100'], '--rungs goes with --powers or --speeds'],
        [['ash-10', 'shed', '--pitch', '1,2'], '--pitch is a number'],
    ])('says what is wrong with %j', async (args, says) => {
        const run = await repository().kerfbook(['coupon', ...args]);
        expect(run.code).toBe(2);
        expect(run.err).toContain(says);
    });

    it('writes nothing that the machine cannot do', async () => {
        const shop = repository();
        const run = await shop.kerfbook(['coupon', 'ash-10', 'shed', '--powers', '120', '--out', 'out']);
        expect(run).toMatchObject({ code: 1, out: '', err: '120 % is more than shed has.\n' });
        expect(existsSync(path.join(shop.folder, 'out'))).toBe(false);
    });
});

describe('kerfbook coupon --next', () => {
    const bowl = `use "stock/shop.kerf"
recipe bowl "Bowl" {
  laser shed
  blank round { of ash-10 size 100 x 100 mm grain along width }
  engrave dish on round { circle 40 mm depth 0.6 mm air off }
  engrave name on round { rectangle 10 x 4 mm at 50, 90 mm tone 60 % }
}
`;
    const next = ['coupon', 'ash-10', 'shed', '--next', '--out', 'out'];
    const rowsIn = (text: string): RegExpMatchArray[] => [
        ...text.matchAll(/\/\/ (burn (\d+) % at ([\d.]+) mm\/s(?: x (\d+))?) +gives … mm {2}\/\/ square (\d+)/g),
    ];

    it('begins a board with six squares, goes on behind them in a folder of its own, and ends when it is enough', async () => {
        const shop = repository({ ...shopFiles, 'bowl.kerf': bowl });
        const read = (folder: string) => readFileSync(path.join(shop.folder, 'out', folder, 'coupon.kerf'), 'utf8');
        const first = await shop.kerfbook(next);
        expect(first).toMatchObject({ code: 0, err: '' });
        expect(first.out).toMatch(/^bowl: dish, 0\.6 mm: ± [\d.]+ mm now, .*about ± [\d.]+ mm with all 6\. ± [\d.]+ mm stays/);
        expect(first.out).toMatch(/Squares \d and \d lie apart from what is asked/);
        const six = rowsIn(read('coupon-ash-10-shed'));
        expect(six.map((row) => Number(row[5]))).toEqual([1, 2, 3, 4, 5, 6]);

        // As a wood of 2.4 J/mm3 above 0.2 J/mm2 that a pass shields by a twentieth answers, to a hundredth of a millimetre.
        const measured = (row: RegExpMatchArray): string => {
            const passes = Number(row[4] ?? 1);
            const each = Math.max(0, (45 * Number(row[2])) / 100 / (Number(row[3]) * 0.1) - 0.2) / 2.4;
            return `${row[1]} gives ${(each * [1, 1, 1.95, 2.8525][passes]!).toFixed(2)} mm  // square ${row[5]}`;
        };
        const stock = readFileSync(path.join(shop.folder, 'stock', 'shop.kerf'), 'utf8');
        const written = (rows_: readonly string[]): string =>
            `${stock}\ncoupon ash-10 on shed {\n  pitch 0.1 mm\n  ${rows_.join('\n  ')}\n}\n`;
        // Two of the six are measured, so that there is something left to know; the numbers of the others are burnt, too.
        shop.write({ 'stock/shop.kerf': written(six.slice(0, 2).map(measured)) });
        const early = await shop.kerfbook(next);
        expect(early.out).toMatch(/^Squares 3, 4, 5, 6 of this coupon are not measured yet: measure them first, and ask again\./);
        expect(rowsIn(read('coupon-ash-10-shed-from-7'))[0]![5]).toBe('7');
        let rows = [...six.slice(0, 2), ...rowsIn(read('coupon-ash-10-shed-from-7'))].map(measured);
        let last = '';
        for (let turn = 0; turn < 4; turn++) {
            shop.write({ 'stock/shop.kerf': written(rows) });
            const again = await shop.kerfbook(next);
            expect(again).toMatchObject({ code: 0, err: '' });
            last = again.out;
            if (!last.includes('coupon.kerf')) break;
            const at = /from-(\d+)\/coupon\.kerf/.exec(last)![1];
            const folder = `coupon-ash-10-shed-from-${at}`;
            const more = rowsIn(read(folder));
            expect(more.map((row) => Number(row[5]))).toEqual(more.map((_, i) => Number(at) + i));
            expect(rows.filter((row) => row.endsWith(`square ${at}`))).toEqual([]);
            expect(existsSync(path.join(shop.folder, 'out', folder, 'coupon.ngc'))).toBe(true);
            expect(more.map((row) => row[1]).filter((words) => rows.some((row) => row.startsWith(`${words} gives`)))).toEqual([]);
            rows = [...rows, ...more.map(measured)];
        }
        expect(last).toContain('It is enough.');
        expect(existsSync(path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.ngc'))).toBe(true);
    });

    it('numbers on behind strips and plugs, too, and leaves the files of squares that nobody has measured alone', async () => {
        const shop = repository({ ...shopFiles, 'bowl.kerf': bowl });
        const file = (folder: string, name: string) => path.join(shop.folder, 'out', folder, name);
        const read = (folder: string, name = 'coupon.kerf') => readFileSync(file(folder, name), 'utf8');
        // Squares 1 to 4, strips 5 to 7, plugs 8 to 11.
        await shop.kerfbook(['coupon', 'ash-10', 'shed', '--rungs', '4', '--cuts', '3', '--fits', '4', '--out', 'out']);
        const burnt = read('coupon-ash-10-shed', 'coupon.ngc');
        const run = await shop.kerfbook(next);
        expect(run).toMatchObject({ code: 0, err: '' });
        expect(run.out).toMatch(/^Squares 1, 2, 3, 4 of this coupon are not measured yet/);
        expect(rowsIn(read('coupon-ash-10-shed-from-12')).map((row) => Number(row[5]))).toEqual([12, 13, 14, 15, 16, 17]);
        expect(read('coupon-ash-10-shed', 'coupon.ngc')).toBe(burnt);
        expect(read('coupon-ash-10-shed-from-12', 'coupon.html')).toContain('Squares 12 to 17 of ash-10 on shed');

        // What was written of a ladder after the files are gone says which numbers are on the offcut.
        const other = repository({ ...shopFiles, 'bowl.kerf': bowl });
        const stock = readFileSync(path.join(other.folder, 'stock', 'shop.kerf'), 'utf8');
        const rows = ['strip 5.78 mm of 6 mm  // strip 9', 'fits 0.20 mm  // plug 14 went in, 15 did not'];
        const block = rows.map((row) => `  cut 95 % at 9 mm/s gives through ${row}`).join('\n');
        other.write({ 'stock/shop.kerf': `${stock}\ncoupon ash-10 on shed {\n  pitch 0.1 mm\n${block}\n}\n` });
        expect((await other.kerfbook(next)).out).toContain('coupon-ash-10-shed-from-16');
    });

    it('says what it does not go with, and when nothing is asked of a board', async () => {
        const shop = repository({ ...shopFiles, 'bowl.kerf': bowl });
        const both = await shop.kerfbook([...next, '--powers', '20,40']);
        expect(both).toMatchObject({ code: 2, out: '' });
        expect(both.err).toContain('--next chooses the squares itself: leave --powers out.');
        expect((await shop.kerfbook([...next, '--rungs', '13'])).err).toContain('--rungs is a whole number from 1 to 12.');
        const none = await shop.kerfbook(['coupon', 'maple-06', 'shed', '--next', '--out', 'out']);
        expect(none.code).toBe(1);
        expect(none.err).toContain('No recipe here engraves maple-06 on shed to a depth');
        const two = await shop.kerfbook([...next, '--rungs', '2']);
        expect(rowsIn(readFileSync(path.join(shop.folder, 'out', 'coupon-ash-10-shed', 'coupon.kerf'), 'utf8'))).toHaveLength(2);
        expect(two.code).toBe(0);
    });
});
