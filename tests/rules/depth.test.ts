import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, one, recipe, silent, words, workshop } from './harness';

workshop();

const board = 'blank b { of ash-10 size 100 x 80 mm grain along width }';

describe('too-deep-to-touch', () => {
    const open = (depth: string, after = '') => recipe(`${board}\n engrave e on b { art flag depth ${depth} air off }\n${after}`);
    it('speaks of a pocket that stays open 1/16 in deep', async () => {
        const text = open('2 mm');
        const finding = await one(text, 'too-deep-to-touch');
        expect(finding.severity).toBe('hint');
        expect(words(text, finding)).toBe('2 mm');
    });
    it('counts what is sanded off the face', async () =>
        silent(open('1.8 mm', 'sand b { take 0.4 mm grits 120 }'), 'too-deep-to-touch'));
    it('is silent for a shallower one, and for one that is filled', async () => {
        await silent(open('1.5 mm'), 'too-deep-to-touch');
        await silent(fillRecipe({ pocket: 'art flag depth 2.5 mm air off' }), 'too-deep-to-touch');
    });
});

describe('pocket-without-floor', () => {
    it('a through pocket that is filled', async () => {
        const text = fillRecipe({ pocket: 'art flag depth through air off' });
        const finding = await one(text, 'pocket-without-floor');
        expect(finding.message).toContain('runs out at the back');
        expect(words(text, finding)).toBe('depth through');
    });
    it('a through pocket that takes an inlay', async () => {
        expect((await one(inlayRecipe({ pocket: 'art flag depth through air off' }), 'pocket-without-floor')).message).toContain(
            'no floor',
        );
    });
    it('is silent with a backing, with a depth, and for piercing', async () => {
        await silent(fillRecipe(), 'pocket-without-floor');
        await silent(
            fillRecipe({ pocket: 'art flag depth through air off' }).replace('blank disc { of', 'blank disc { backing tape of'),
            'pocket-without-floor',
        );
        await silent(recipe(`${board}\n engrave e on b { art flag depth through air off }`), 'pocket-without-floor');
    });
});

describe('tone-sanded-away', () => {
    const text = (take: string) =>
        recipe(`${board}\n engrave e on b { art flag tone 70 % air off }\n sand b { take ${take} grits 180 }`);
    it('speaks, and sanding first mends it', async () => {
        const finding = await one(text('0.1 mm'), 'tone-sanded-away');
        expect(words(text('0.1 mm'), finding)).toBe('0.1 mm');
        await expectMended(text('0.1 mm'), finding);
    });
    it('counts sandings together, from the face that it was burnt into', async () => {
        const twice = text('0.05 mm').replace('grits 180 }', 'grits 180 } sand b { take 0.05 mm grits 240 }');
        const finding = await one(twice, 'tone-sanded-away');
        expect(finding.message).toBe('Sanding takes 0.1 mm off the face that e was burnt into, and with it its colour.');
        await expectMended(twice, finding);
        await silent(text('0.05 mm').replace('engrave e', 'sand b { take 0.3 mm grits 120 } engrave e'), 'tone-sanded-away');
    });
    it('lets a mere breath of sanding pass', async () => silent(text('0.02 mm'), 'tone-sanded-away'));
    it('is silent for a depth', async () => silent(fillRecipe(), 'tone-sanded-away'));
});

describe('leaves-scorch', () => {
    it('speaks when nothing comes off the face', async () => {
        expect(await one(fillRecipe({ after: 'sand disc { flush grits 120, 180 }' }), 'leaves-scorch')).toMatchObject({
            severity: 'info',
        });
    });
    it('speaks when too little does, with a fix', async () => {
        const text = fillRecipe({ after: 'sand disc { flush then 0.02 mm grits 120, 180 }' });
        await expectMended(text, await one(text, 'leaves-scorch'));
    });
    it('is silent when enough does, over two sandings too, or when it was masked', async () => {
        await silent(fillRecipe(), 'leaves-scorch');
        await silent(
            fillRecipe({ after: 'sand disc { flush grits 120 } sand disc { flush then 0.1 mm grits 180 }' }),
            'leaves-scorch',
        );
        const masked = fillRecipe({ after: 'sand disc { flush grits 120, 180 }' }).replace(
            'engrave hollow',
            'mask disc engrave hollow',
        );
        await silent(masked, 'leaves-scorch');
    });
});

describe('left-proud', () => {
    it('a fill that nobody sands', async () => {
        const finding = await one(fillRecipe({ after: '' }), 'left-proud');
        expect(finding.message).toBe('tide-blue still stands above the face of disc at the end: nothing sands it flush.');
        const after = await expectMended(fillRecipe({ after: '' }), finding);
        expect(after).toMatch(/wait 24 h\n.*\n? *sand disc \{ flush {2}grits 120, 180, 240 \}\n\}/);
    });
    it('an inlay that nobody sands', async () => {
        const text = inlayRecipe({ after: '' });
        const finding = await one(text, 'left-proud');
        expect(finding.message).toContain('bird');
        await expectMended(text, finding);
    });
    it('is sanded once it is cured and peeled, before a finish goes on', async () => {
        const soft = fillRecipe({ after: 'finish disc with oil-varnish' }).replace('wait 24 h', 'wait 2 h');
        const filled = await expectMended(soft, await one(soft, 'left-proud'));
        expect(filled).toMatch(/wait 22 h\n *sand disc \{ flush {2}grits 120, 180, 240 \}\n *finish disc/);
        const text = inlayRecipe({ after: 'finish tray with oil-varnish' }).replace('peel bird', '');
        const inlaid = await expectMended(text, await one(text, 'left-proud'));
        expect(inlaid).toMatch(/peel bird\n *sand tray/);
        for (const rule of ['sand-before-cure', 'sand-before-peel', 'finish-before-sanding']) {
            await silent(filled, rule);
            await silent(inlaid, rule);
        }
        const late = inlayRecipe({ after: 'finish tray with oil-varnish peel bird' }).replace('peel bird', '');
        expect((await one(late, 'left-proud')).fixes.filter((fix) => fix.untilMeasured !== true)).toEqual([]);
    });
    it('in a sanding that is there but takes nothing off', async () => {
        const text = fillRecipe({ after: 'sand disc { grits 120, 180 } finish disc with oil-varnish' });
        expect(await expectMended(text, await one(text, 'left-proud'))).toContain('sand disc { grits 120, 180  flush }');
        const between = fillRecipe({
            after: 'finish disc with oil-varnish sand disc { grits 320 } finish disc with oil-varnish',
        });
        expect((await one(between, 'left-proud')).fixes).toEqual([]);
    });
    it('is silent once it is flush', async () => {
        await silent(fillRecipe(), 'left-proud');
        await silent(inlayRecipe(), 'left-proud');
    });
});
