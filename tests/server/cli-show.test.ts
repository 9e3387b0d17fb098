import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { shop } from '../kit/shop';
import { coaster, repository, shopFiles } from './shop-files';

describe('kerfbook show', () => {
    it('a recipe as lines of one fact, the same every time and wherever it lies', async () => {
        const repo = repository();
        const { code, out } = await repo.kerfbook(['show', 'coaster.kerf']);
        expect(code).toBe(0);
        expect(out).toContain('\nEngrave hollow\n  blank: disc\n');
        expect(out).toMatch(/^ {2}depth: 0\.5 mm$/m);
        expect(out).toMatch(/^ {2}= depth: 0\.\d+ mm/m);
        expect(out).not.toContain(repo.folder);
        const other = repository();
        expect((await other.kerfbook(['show', path.join(repo.folder, 'coaster.kerf')])).out).toBe(out);
    });

    it('settings, times and money only where all is asked for', async () => {
        const repo = repository({ ...shopFiles, 'stock/shop.kerf': `${shop}\nshop yard { currency EUR hourly 40 }\n` });
        const lines = async (...options: string[]) => (await repo.kerfbook(['show', 'coaster.kerf', ...options])).out.split('\n');
        const [before, allBefore] = [await lines(), await lines('--all')];
        repo.write({ 'coaster.kerf': coaster.replace('depth 0.5 mm', 'depth 0.52 mm') });
        const [after, allAfter] = [await lines(), await lines('--all')];
        const fresh = (now: readonly string[], then: readonly string[]) => now.filter((line) => !then.includes(line));
        expect(fresh(after, before).map((line) => line.split(':')[0]!.trim())).toEqual([
            'depth',
            '= depth',
            '= floor left',
            '= fill depth',
        ]);
        expect(fresh(allAfter, allBefore).length).toBeGreaterThan(6);
        expect(allAfter.join('\n')).toMatch(/= cost of one: /);
        expect(after.join('\n')).not.toMatch(/= (cost|machine|speed)/);
    });

    it('parts of art, a check of a cut and how surely a half comes through, as a recipe says them, without any place of the text', async () => {
        const repo = repository();
        const recipe = `use "stock/shop.kerf"
recipe tag {
  laser shed
  art mark "flag.svg"
  blank disc { of maple-06  size 90 x 60 mm }
  engrave marks on disc { art mark #pole, .cloth but #rim, #eye  mirror off  depth through sure 99 % }
  cut rim on disc { circle 40 mm }
  check rim { through }
}`;
        repo.write({ 'coaster.kerf': recipe });
        const { out } = await repo.kerfbook(['show', 'coaster.kerf']);
        expect(out).toContain('  art: mark #pole, .cloth but #rim, #eye\n');
        expect(out).toContain('  depth: through sure 99 %\n');
        expect(out).toContain('\nCheck rim\n  step: rim\n  through: yes\n');
        expect(out).not.toMatch(/offset \d/);
    });

    it('layout and comments change nothing, stock stands as it is written', async () => {
        const repo = repository();
        const { out } = await repo.kerfbook(['show', 'coaster.kerf']);
        repo.write({ 'coaster.kerf': coaster.replaceAll('\n', '\n\n// a word\n') });
        expect((await repo.kerfbook(['show', 'coaster.kerf'])).out).toBe(out);
        const stock = (await repo.kerfbook(['show', 'stock/shop.kerf'])).out;
        for (const line of shop.trim().split('\n')) expect(stock).toContain(line);
    });

    it('a broken file is shown as it is', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': `${coaster}\nrecipe half {` });
        expect((await repo.kerfbook(['show', 'coaster.kerf'])).out).toContain(coaster);
    });

    it('makes git diff speak of what follows, even for the copies that git hands over', async () => {
        const repo = repository({ ...shopFiles, '.gitattributes': '*.kerf diff=kerf\n' });
        repo.git('config', 'diff.kerf.textconv', `${repo.command} show`);
        repo.write({ 'coaster.kerf': coaster.replace('depth 0.5 mm', 'depth 0.6 mm') });
        repo.commit('deeper');
        const out = repo.git('diff', 'HEAD~1', 'HEAD');
        expect(out).toMatch(/^- {2}depth: 0\.5 mm$/m);
        expect(out).toMatch(/^\+ {2}depth: 0\.6 mm$/m);
        expect(out).toMatch(/^- {2}= depth: /m);
        expect(out).not.toContain('= speed');
        expect(out).not.toContain('missing');
    });

    it.each([[['show']], [['show', 'a.kerf', 'b.kerf']], [['show', 'nothing.kerf']]])('%j is refused', async (args) => {
        const { code, err } = await repository().kerfbook(args);
        expect(err).not.toBe('');
        expect(code).toBe(2);
    });
});
