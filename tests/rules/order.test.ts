import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, mended, of, one, recipe, silent, under, words, workshop } from './harness';

workshop();

const board = 'blank b { of ash-10 size 100 x 80 mm grain along width }';

describe('out-of-order', () => {
    it('a fill before its pocket', async () => {
        const text = recipe(`${board}\n fill e with tide-blue\n engrave e on b { art flag depth 1.2 mm air off }`);
        const finding = await one(text, 'out-of-order');
        expect(finding.severity).toBe('error');
        expect(words(text, finding)).toBe('e');
        await expectMended(text, finding);
    });
    it('an inlay before both halves: one finding for each, and both mended', async () => {
        const inlay = 'inlay relief into pocket { clearance 0.15 mm glue wood-glue }';
        const text = inlayRecipe().replace(inlay, '').replace('engrave pocket', `${inlay}\n  engrave pocket`);
        const found = await of(text, 'out-of-order');
        expect(found.map((finding) => words(text, finding))).toEqual(['relief', 'pocket']);
        const half = mended(text, found[0]!);
        await expectMended(half, await one(half, 'out-of-order'));
    });
    it('a check before the work', async () => {
        expect(
            (
                await one(
                    recipe(`${board}\n check e { depth 1 .. 1.4 mm }\n engrave e on b { art flag depth 1.2 mm air off }`),
                    'out-of-order',
                )
            ).message,
        ).toContain('is measured here');
    });
    it('is silent in order', async () => {
        await silent(inlayRecipe(), 'out-of-order');
        await silent(fillRecipe(), 'out-of-order');
    });
});

describe('fill-before-dry', () => {
    it('no wait at all: one is put in', async () => {
        const text = fillRecipe({ between: 'seal disc with shellac' });
        const finding = await one(text, 'fill-before-dry');
        expect(finding.message).toBe('shellac needs 1 h to dry; tide-blue goes on it after 0 s.');
        expect(await expectMended(text, finding)).toContain('wait 1 h\n  fill hollow');
    });
    it('too short a wait is made longer', async () => {
        const text = fillRecipe({ between: 'seal disc with shellac wait 20 min' });
        const after = await expectMended(text, await one(text, 'fill-before-dry'));
        expect(after).not.toContain('wait 20 min');
    });
    it('is silent after its drying time', async () => silent(fillRecipe(), 'fill-before-dry'));
});

describe('glue-on-sealed', () => {
    const sealed = (glue: string) =>
        inlayRecipe({ inlay: `clearance 0.15 mm glue ${glue}` }).replace(
            'inlay relief',
            'seal tray with shellac wait 2 h inlay relief',
        );
    it('wood glue on shellac', async () => {
        const text = sealed('wood-glue');
        const finding = await one(text, 'glue-on-sealed');
        expect(finding.related).toHaveLength(1);
        const after = await expectMended(text, finding);
        expect(after).toMatch(/wait 2 h engrave pocket on tray.*\n *inlay relief/);
    });
    it('is mended before a fill, and not past what the order matters to', async () => {
        const hollow = 'engrave hollow on tray { rectangle 10 x 10 mm at 20, 20 mm depth 0.6 mm air off }';
        const filled = sealed('wood-glue').replace('inlay relief', `fill hollow with tide-blue wait 24 h inlay relief`);
        const text = filled.replace('seal tray', `${hollow} seal tray`);
        const after = await expectMended(text, await one(text, 'glue-on-sealed'));
        expect(after.indexOf('engrave hollow')).toBeLessThan(after.indexOf('engrave pocket'));
        expect(after.indexOf('engrave pocket')).toBeLessThan(after.indexOf('fill hollow'));
        await silent(after, 'laser-on-resin');
        await silent(after, 'unsealed-fill');
        for (const between of [
            'engrave over on tray { rectangle 60 x 60 mm tone 60 % air off }',
            'check pocket { depth 0.55 mm }',
            'sand tray { take 0.05 mm grits 120 }',
            'mask tray',
            'cut out on tray { rectangle 180 x 130 mm }',
        ]) {
            const kept = sealed('wood-glue').replace('seal tray', `${between} seal tray`);
            expect((await one(kept, 'glue-on-sealed')).fixes, between).toEqual([]);
        }
    });
    it('is silent for epoxy, and for bare wood', async () => {
        await silent(sealed('epoxy-glue'), 'glue-on-sealed');
        await silent(inlayRecipe(), 'glue-on-sealed');
    });
});

describe('laser-on-resin', () => {
    const again = (placed: string, wait: string) =>
        fillRecipe({ after: `${wait} engrave line on disc { ${placed} tone 60 % air off }` }).replace('wait 24 h', '');
    it('uncured resin on the same blank', async () => {
        const finding = await one(again('rectangle 5 x 5 mm at 8, 8 mm', 'wait 2 h'), 'laser-on-resin');
        expect(finding.severity).toBe('error');
        expect(finding.message).toContain('has not cured');
    });
    it('cured resin under the beam', async () => {
        const text = again('rectangle 60 x 60 mm', 'wait 24 h');
        const finding = await one(text, 'laser-on-resin');
        expect(finding.severity).toBe('warning');
        await expectMended(text, finding);
    });
    it('is silent beside cured resin, and before it', async () => {
        await silent(again('rectangle 5 x 5 mm at 8, 8 mm', 'wait 24 h'), 'laser-on-resin');
        await silent(fillRecipe(), 'laser-on-resin');
    });
});

describe('cut-too-early', () => {
    const text = (cut: string, after: string, blank = board) => recipe(`${blank}\n cut rim on b { circle ${cut} }\n ${after}`);
    const inside = 'engrave e on b { art flag tone 60 % air off }';
    it('engraved after it was cut free', async () => {
        const finding = await one(text('60 mm', inside), 'cut-too-early');
        await expectMended(text('60 mm', inside), finding);
    });
    it('is silent with tabs, with a backing, for a hole, and when cut last', async () => {
        await silent(text('60 mm tabs 4', inside), 'cut-too-early');
        await silent(text('60 mm', inside, board.replace('size', 'backing tape size')), 'cut-too-early');
        await silent(text('5 mm', inside), 'cut-too-early');
        await silent(recipe(`${board}\n ${inside}\n cut rim on b { circle 60 mm }`), 'cut-too-early');
    });
});

describe('glue that has not dried', () => {
    const waits = (time: string) => inlayRecipe().replace('wait 12 h', time);
    it('peel-before-dry, and a longer wait mends it', async () => {
        const text = waits('wait 2 h');
        const finding = await one(text, 'peel-before-dry');
        expect(finding.message).toBe('wood-glue needs 12 h before bird can be peeled; here it has had 2 h.');
        await silent(await expectMended(text, finding), 'sand-before-cure');
    });
    it('sand-before-cure of the glue', async () => {
        const text = waits('').replace('peel bird', 'peel bird { allow peel-before-dry because "it is held by hand" }');
        await expectMended(text, await one(text, 'sand-before-cure'));
    });
    it('sand-before-cure follows where it was peeled too early, too', async () => {
        expect(await under(waits(''), 'peel-before-dry', 'sand-before-cure')).toMatch(
            /^wood-glue needs 12 h before it can be sanded/,
        );
    });
    it('is silent after half of the cure', async () => {
        await silent(inlayRecipe(), 'peel-before-dry');
        await silent(inlayRecipe(), 'sand-before-cure');
    });
});

describe('sand-before-cure of resin', () => {
    it('too early, told once however often it is sanded', async () => {
        const text = fillRecipe({
            after: 'sand disc { flush then 0.1 mm grits 120 } sand disc { take 0.1 mm grits 180 }',
        }).replace('wait 24 h', 'wait 6 h');
        const finding = await one(text, 'sand-before-cure');
        expect(finding.message).toContain('tide-blue needs 1 d');
        expect(await expectMended(text, finding)).toContain('wait 24 h');
    });
    it.each([
        ['5 h', 'error'],
        ['6 h', 'warning'],
    ])('after %s it is an %s: a quarter of a day is where it has set', async (wait, severity) => {
        const finding = await one(fillRecipe().replace('wait 24 h', `wait ${wait}`), 'sand-before-cure');
        expect(finding.severity).toBe(severity);
    });
    it('counts work in between, and lets a breath be missing', async () =>
        silent(fillRecipe().replace('wait 24 h', 'wait 23.5 h'), 'sand-before-cure'));
});

describe('flipped-wet', () => {
    const flipped = (wait: string): string =>
        fillRecipe({ after: '' }).replace(/wait 24 h/, `wait ${wait}\n  flip disc\n  wait 24 h\n  flip disc`);

    it.each([
        ['5 h', 'error'],
        ['7 h', 'warning'],
    ])('resin after %s is an %s: then it has set', async (wait, severity) => {
        expect((await one(flipped(wait), 'flipped-wet')).severity).toBe(severity);
    });
    it('is silent once it has cured', async () => silent(flipped('24 h'), 'flipped-wet'));
});

describe('sand-before-peel', () => {
    it('peeled only afterwards', async () => {
        const text = inlayRecipe({ after: 'sand tray { flush then 0.10 mm grits 120, 180 } peel bird' }).replace(
            /wait 12 h\s+peel bird/,
            'wait 12 h',
        );
        await expectMended(text, await one(text, 'sand-before-peel'));
    });
    it('never peeled', async () => {
        const text = inlayRecipe().replace(/wait 12 h\s+peel bird/, 'wait 12 h');
        const finding = await one(text, 'sand-before-peel');
        expect(finding.message).toBe('tray is sanded while the foil is still on bird.');
        await expectMended(text, finding);
    });
    it('is silent once it is peeled', async () => silent(inlayRecipe(), 'sand-before-peel'));
});

describe('grits', () => {
    const grits = (list: string) => fillRecipe({ after: `sand disc { flush then 0.3 mm grits ${list} }` });
    it('grit-jump names what goes between', async () => {
        const text = grits('60, 240');
        const finding = await one(text, 'grit-jump');
        expect(words(text, finding)).toBe('grits 60, 240');
        expect(await expectMended(text, finding)).toContain('grits 60, 100, 150, 240');
    });
    it('grit-jump lets one grit be skipped', async () => {
        await silent(grits('80, 120, 180'), 'grit-jump');
        await silent(grits('120'), 'grit-jump');
    });
    it('grits-coarsen puts them in order', async () => {
        const text = grits('180, 120');
        expect(await expectMended(text, await one(text, 'grits-coarsen'))).toContain('grits 120, 180');
        await silent(text, 'grit-jump');
    });
    it('grits-coarsen is silent in order', async () => silent(grits('80, 120, 180'), 'grits-coarsen'));
});

describe('finish-before-sanding', () => {
    const coats = (sand: string) => recipe(`${board}\n finish b with wax\n ${sand}\n finish b with wax`);
    it('sanded to shape after the first coat', async () => {
        const text = recipe(`${board}\n finish b with wax\n sand b { take 0.2 mm grits 120 }`);
        const finding = await one(text, 'finish-before-sanding');
        expect(words(text, finding)).toBe('finish');
        await expectMended(text, finding);
    });
    it('lets fine sanding between coats pass, but not coarse', async () => {
        await silent(coats('sand b { grits 320 }'), 'finish-before-sanding');
        expect(await one(coats('sand b { grits 120 }'), 'finish-before-sanding')).toBeDefined();
    });
    it('is silent when sanded first', async () =>
        silent(recipe(`${board}\n sand b { take 0.2 mm grits 120 }\n finish b with wax`), 'finish-before-sanding'));
});

describe('mask-left-on', () => {
    it('finished with the mask on', async () => {
        const text = recipe(`${board}\n mask b\n engrave e on b { art flag tone 60 % air off }\n finish b with wax`);
        const finding = await one(text, 'mask-left-on');
        expect(finding.severity).toBe('warning');
        await expectMended(text, finding);
    });
    it('never taken off', async () => {
        expect(
            await one(recipe(`${board}\n mask b\n engrave e on b { art flag tone 60 % air off }`), 'mask-left-on'),
        ).toMatchObject({ severity: 'info' });
    });
    it('is silent once peeled', async () =>
        silent(
            recipe(`${board}\n mask b\n engrave e on b { art flag tone 60 % air off }\n peel b\n finish b with wax`),
            'mask-left-on',
        ));
});
