import { describe, expect, it } from 'vitest';
import { placedFindings } from '../../server/report/placed-finding';
import type { Finding } from '../../shared/recipe/finding';
import { memoryWorkshop } from '../kit/memory-workshop';
import { planOf } from '../kit/plan-of';
import { art, shop } from '../kit/shop';

const blank = 'blank tray { of walnut-12  size 100 x 80 mm  grain along width }';

function recipe(name: string, steps: string, tray = 'tray'): string {
    const flag = steps.includes('flag') ? 'art flag "flag.svg"' : '';
    return `recipe ${name} { laser shed  ${flag}  ${blank.replace('tray', tray)}\n${steps}\n}\n`;
}

async function said(routines: string, recipes: string) {
    const text = `${shop}${routines}${recipes}`;
    const kit = await memoryWorkshop(art);
    const document = await kit.open(text, 'all.kerf');
    expect(kit.workshop.textFindings(document).map(({ message }) => message)).toEqual([]);
    const { findings } = (await kit.workshop.survey(document))!;
    const at = ({ where }: Pick<Finding, 'where'>) => text.slice(where.offset, where.offset + where.length);
    return findings.map((finding) => ({
        rule: finding.rule,
        on: at(finding),
        isInRoutine: finding.where.offset >= shop.length && finding.where.offset < shop.length + routines.length,
        beside: finding.related.map(at),
        changes: finding.fixes.map(({ changes }) => changes.map((change) => JSON.stringify(change)).join()),
    }));
}

const coarse = 'routine oiled for piece {\n  sand piece { take 0.05 mm  grits 60, 240 }\n  finish piece with drying-oil\n}\n';

describe('a routine', () => {
    it('is done on the blank that is named, in the place of the line', async () => {
        const routines =
            'routine even for it { sand it { take 0.05 mm  grits 120 }  wait 1 h }\nroutine all for piece { follow even on piece  finish piece with wax }\n';
        const plan = await planOf(`${shop}${routines}${recipe('a', 'do "Begin"\nfollow all on tray\ndo "End"')}`);
        expect(plan.steps.map(({ title }) => title)).toEqual([
            'Begin',
            'Sand tray',
            expect.stringMatching(/^Wait 1 h/),
            'Finish tray with wax',
            'End',
        ]);
        expect(plan.recipe.incomplete).toBeUndefined();
    });

    it('has its findings once, where it is written, whoever follows it', async () => {
        const found = await said(coarse, recipe('a', 'follow oiled on tray') + recipe('b', 'follow oiled on lid', 'lid'));
        const jumps = found.filter(({ rule }) => rule === 'grit-jump');
        expect(jumps).toMatchObject([{ isInRoutine: true, on: 'grits 60, 240' }]);
        expect(jumps[0]!.beside).toEqual(['follow oiled on tray', 'follow oiled on lid']);
        expect(jumps[0]!.changes.length).toBeGreaterThan(0);
    });

    it('has what comes of it and a step of the recipe said at the line that follows', async () => {
        const carve = (wait: string) =>
            `engrave pocket on tray { art flag depth 0.5 mm }  fill pocket with tide-blue ${wait}\nfollow oiled on tray`;
        const fine = coarse.replace('60, 240', '120, 180, 240').replace('take 0.05 mm', 'flush then 0.1 mm');
        const found = await said(fine, recipe('a', carve('')) + recipe('b', carve('wait 24 h')));
        const early = found.filter(({ rule }) => rule === 'sand-before-cure');
        expect(early).toMatchObject([{ isInRoutine: false, on: 'follow oiled on tray' }]);
        expect(early[0]!.beside.slice(0, 2)).toEqual(['sand', 'fill']);
        // The wait goes before the line that follows: the routine is others', too.
        expect(early[0]!.changes.join()).toContain('"text":"wait');
    });

    it('is mended by its piece', async () => {
        const masked = 'routine oiled for piece {\n  mask piece\n  finish piece with drying-oil\n}\n';
        const [left] = (await said(masked, recipe('a', 'follow oiled on tray'))).filter(({ rule }) => rule === 'mask-left-on');
        expect(left).toMatchObject({ isInRoutine: true });
        expect(left!.changes.join()).toContain('peel piece');
    });

    it('leaves to the recipe what only the recipe can mend', async () => {
        const halves = `engrave pocket on tray { art flag depth 0.5 mm }
  blank top { of maple-06  size 80 x 60 mm  grain along width  backing foil }
  engrave half on top { art flag inverse within rectangle 60 x 50 mm  mirror  depth through }
  inlay half into pocket { glue wood-glue }
  wait 24 h
  follow oiled on tray`;
        const fine = coarse.replace('60, 240', '120, 180, 240').replace('take 0.05 mm', 'flush then 0.1 mm');
        const [backed] = (await said(fine, recipe('a', halves))).filter(({ rule }) => rule === 'sand-before-peel');
        expect(backed).toMatchObject({ isInRoutine: false, on: 'follow oiled on tray' });
        expect(backed!.changes.join()).toContain('peel top');
    });

    it('can hold exceptions, and so can the line that follows', async () => {
        const reason = 'allow grit-jump because "only for a look"';
        const inside = coarse.replace('60, 240', `60, 240  ${reason}`);
        expect((await said(inside, recipe('a', 'follow oiled on tray'))).map(({ rule }) => rule)).not.toContain('grit-jump');
        const outside = await said(coarse, recipe('a', `follow oiled on tray { ${reason} }`));
        expect(outside.map(({ rule }) => rule)).not.toContain('grit-jump');
    });

    it('in another file is said there, once', async () => {
        const kit = await memoryWorkshop(art);
        await kit.open(`${shop}${coarse}`, 'stock.kerf');
        const uses = 'use "stock.kerf"\n';
        const one = await kit.open(uses + recipe('a', 'follow oiled on tray'), 'a.kerf');
        const [found] = (await placedFindings(kit.workshop, one, ({ uri }) => uri.path)).filter(
            ({ finding }) => finding.rule === 'grit-jump',
        );
        expect(found).toMatchObject({ file: '/shop/stock.kerf', related: [{ file: '/shop/a.kerf' }] });
    });
});
