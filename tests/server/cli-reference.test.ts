import { readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { lowerCoupons } from '../../language/lowering/coupons';
import { predictOnBoard } from '../../shared/burn/law';
import { fitMeasured } from '../../shared/rules/coupon/examine-coupons';
import { memoryWorkshop } from '../kit/memory-workshop';
import { shop } from '../kit/shop';
import { repository } from './shop-files';

describe('commands that tell of the tool itself', () => {
    it('explain gives the page of a rule, a line for each, or the nearest name', async () => {
        const repo = repository();
        const page = await repo.kerfbook(['explain', 'thin-floor']);
        expect(page.out).toMatch(/^# Floor left too thin\n[\s\S]*\*\*How to mend it\.\*\*/);
        const all = await repo.kerfbook(['explain']);
        expect(all.out.split('\n').length).toBeGreaterThan(100);
        expect(all.out).toContain('\nsyntax: ');
        expect(await repo.kerfbook(['explain', 'thin-flor'])).toMatchObject({
            code: 2,
            err: expect.stringContaining('thin-floor'),
        });
    });

    it('vocabulary has each word with its place, and says where there is none', async () => {
        const repo = repository();
        const { out } = await repo.kerfbook(['vocabulary', 'depth', '--format', 'json']);
        const words = JSON.parse(out) as { readonly in: string; readonly units: readonly string[][] }[];
        expect(words.map((word) => word.in)).toContain('Engrave');
        expect(words.find((word) => word.in === 'Engrave')!.units[0]).toContain('mm');
        expect((await repo.kerfbook(['vocabulary', 'moon'])).code).toBe(2);
    });

    it('curve is the prediction for one more square, over what was measured', async () => {
        const repo = repository();
        const { out } = await repo.kerfbook(['curve', 'walnut-12', 'shed', '--format', 'json']);
        const { curve, facts } = JSON.parse(out) as {
            curve: { dose: number; depth: number; low: number; high: number }[];
            facts: unknown[];
        };
        expect(facts.length).toBeGreaterThan(4);
        const kit = await memoryWorkshop({});
        const [measured] = lowerCoupons(await kit.open(shop));
        const { law } = fitMeasured(measured!);
        expect([curve[0]!.dose, curve.at(-1)!.dose]).toEqual([law.range!.low, law.range!.high]);
        for (const { dose, depth, low, high } of curve) {
            const said = predictOnBoard(law, { power: dose, speed: 1, pitch: 1, passes: 1 }, 'square')!;
            expect([depth, low, high]).toEqual([said.value, said.low, said.high]);
        }
        expect((await repo.kerfbook(['curve', 'oak', 'shed'])).err).toContain('no coupon of oak on shed');
    });
});

describe('format', () => {
    const loose = 'recipe  a "A" {\nlaser shed\n      blank b { size 10 x 10 mm }\n}\n';

    it('checks, writes, and has nothing more to do then', async () => {
        const repo = repository({ 'a.kerf': loose });
        expect(await repo.kerfbook(['format', '--check'])).toMatchObject({ code: 1, out: expect.stringContaining('a.kerf') });
        expect(readFileSync(path.join(repo.folder, 'a.kerf'), 'utf8')).toBe(loose);
        expect((await repo.kerfbook(['format', '--write'])).code).toBe(0);
        const now = readFileSync(path.join(repo.folder, 'a.kerf'), 'utf8');
        expect(now).toBe('recipe a "A" {\n  laser shed\n  blank b { size 10 x 10 mm }\n}\n');
        expect(await repo.kerfbook(['format', '--check'])).toMatchObject({ code: 0, out: 'All is laid out.\n' });
        expect((await repo.kerfbook(['format', 'a.kerf'])).out).toBe(now);
    });

    it('writes through no link that leads out, and takes one way at a time', async () => {
        const repo = repository({ 'a.kerf': loose });
        const other = repository({ 'out.kerf': loose });
        symlinkSync(path.join(other.folder, 'out.kerf'), path.join(repo.folder, 'link.kerf'));
        const { code, err } = await repo.kerfbook(['format', '--write', 'link.kerf']);
        expect(code, err).toBe(2);
        expect(readFileSync(path.join(other.folder, 'out.kerf'), 'utf8')).toBe(loose);
        expect((await repo.kerfbook(['format', '--write', '--check'])).code).toBe(2);
        expect((await repo.kerfbook(['format', 'a.kerf', 'link.kerf'])).code).toBe(2);
    });
});
