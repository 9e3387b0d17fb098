import { describe, expect, it } from 'vitest';
import { but, filled, inlaid } from '../classics/recipes';
import { drawings } from '../classics/stock';
import { all, mended, of, one, under, workshop } from './harness';

workshop(drawings);

const pocket = (depth: string): string => but(inlaid, 'depth 0.55 mm', `depth ${depth}`);

/** What the findings of a text would write in place of a number, once each. */
async function offered(text: string, title: RegExp): Promise<string[]> {
    const titles = (await all(text)).flatMap(({ fixes }) => fixes.map((fix) => fix.title));
    return [...new Set(titles.filter((each) => title.test(each)))];
}

describe('findings about one number offer one figure that serves them all', () => {
    it('a pocket that is too shallow for the veneer and for the sanding', async () => {
        const text = but(pocket('0.25 mm'), 'then 0.10 mm', 'then 0.65 mm');
        expect(await offered(text, /^Make pocket/)).toEqual(['Make pocket 1 mm deep']);
        const proud = await one(text, 'veneer-proud');
        expect(proud.message).toMatch(/it needs a depth of 1 mm\.$/);
        expect(await under(text, 'veneer-proud', 'veneer-thin')).toMatch(/a pocket of 1 mm would leave enough\.$/);
        const after = await all(mended(text, proud));
        expect(after.map(({ rule }) => rule).filter((rule) => rule.startsWith('veneer'))).toEqual([]);
    });

    it('passes for a deep pocket, that char less and are lowered often enough', async () => {
        // Light passes, and one for each 1.39 mm that the focus reaches.
        const text = but(filled, 'depth 1.0 mm', 'depth 7.8 mm\n    passes 2');
        expect(await offered(text, /^Take/)).toEqual(['Take 32 passes']);
        expect((await one(text, 'one-heavy-pass')).fixes).toHaveLength(1);
        expect((await one(text, 'out-of-focus')).fixes).toHaveLength(1);
        // So far beyond the coupon of walnut that its range holds for any settings: the light passes still serve both.
        const deeper = but(but(filled, 'of oak-9', 'of walnut-12'), 'depth 1.0 mm', 'depth 8.6 mm\n    passes 2');
        expect(await offered(deeper, /^Take/)).toEqual(['Take 35 passes']);
        const after = await all(mended(deeper, await one(deeper, 'out-of-focus')));
        expect(after.filter(({ rule }) => ['out-of-focus', 'one-heavy-pass'].includes(rule))).toEqual([]);
    });

    it.each([
        [
            'deeper-than-blank',
            '0.55 in',
            /: 0\.022 in leaves a floor of 1 mm and suits the rest\. Or was 0\.55 mm meant\?$/,
            ['Write 0.55 mm'],
        ],
        ['thin-floor', '0.45 in', /, so engrave 0\.022 in deep\.$/, []],
    ] as const)('%s, where mm was meant: a depth of %s becomes one for the veneer too', async (rule, depth, says, others) => {
        const text = pocket(depth);
        const finding = await one(text, rule);
        expect(finding.message).toMatch(says);
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Make pocket 0.022 in deep', ...others]);
        const after = mended(text, finding);
        for (const other of [rule, 'veneer-proud', 'veneer-thin']) expect(await of(after, other)).toEqual([]);
    });

    it('settings that cannot reach the depth are solved again for one that takes the veneer', async () => {
        const text = pocket('8 mm\n    speed 500 mm/s\n    passes 1');
        const finding = await one(text, 'depth-unreachable');
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Ask for 0.55 mm and solve again']);
        const after = await all(mended(text, finding));
        expect(after.map(({ rule }) => rule).filter((rule) => rule.startsWith('veneer'))).toEqual([]);
    });
});
