import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import { gradeOf, stockLines } from '../../language/stock-sources';
import { stockFiles } from '../house/source-files';
import { runIn } from '../kit/run-in';

const run = (...args: string[]) => runIn(tmpdir(), ['stock', ...args]);

describe('kerfbook stock', () => {
    it('lists the names of what is built in, a line a kind', async () => {
        const { code, out } = await run();
        expect(code).toBe(0);
        expect(out).toMatch(/^wood: black-walnut, sugar-maple, /m);
        expect(out).toMatch(/^glue: wood-glue, cyanoacrylate, /m);
        expect(out.trimEnd().split('\n')).toHaveLength(8);
    });

    it('shows the lines of those that are named, and asks after a slip', async () => {
        const { out } = await run('teak', 'hide-glue');
        expect(out).toMatch(/^wood teak\n {2}density 675 kg\/m3\n/m);
        expect(out).toMatch(/^glue hide-glue\n/m);
        expect(out).not.toContain('walnut');
        const slip = await run('teek');
        expect(slip.code).toBe(2);
        expect(slip.err).toBe('No built-in stock is called teek. Do you mean teak?\n');
    });

    it('says of every line how it is known, in three grades that it explains once', async () => {
        const { out } = await run('--sources');
        const lines = stockLines(stockFiles().filter(({ path }) => !path.startsWith('samples/')));
        const told = out.split('\n').filter((line) => line.startsWith('      '));
        expect(told).toHaveLength(lines.length);
        for (const line of told) expect(line).toMatch(/^ {6}(?:checked|rule of thumb|not checked yet)/);
        const count = (grade: string) => lines.filter((line) => gradeOf(line) === grade).length;
        expect(out.trimEnd().split('\n').at(-1)).toBe(
            `${lines.length} lines: ${count('checked')} checked, ${count('rule of thumb')} rule of thumb, ${count('not checked yet')} not checked yet.`,
        );
        expect(out.match(/common practice or our own judgement; no source is known/g)).toHaveLength(1);
        expect(out).toContain('  tangential 0.274 %\n      checked against Wood Handbook, FPL-GTR-190, 2010, Table 13-5');
        expect(out).toMatch(/checked, at second hand, against a flooring chart/);
    });
});
