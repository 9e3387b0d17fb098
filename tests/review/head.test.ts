import { describe, expect, it } from 'vitest';
import { reviewMarkdown } from '../../shared/review/as-markdown';
import { reviewsText, reviewText } from '../../shared/review/as-text';
import { consequencesOf } from '../../shared/review/consequences';
import { headOf } from '../../shared/review/head';
import type { Review } from '../../shared/review/review';
import { withoutNoise } from '../../shared/review/without-noise';
import { coupon, diamond, fillRecipe, flag, inlayRecipe } from '../kit/shop';
import { answer, inlayChange, review } from './review-kit';

const worst = (of: Review): string[] => consequencesOf(of).map(({ text }) => text);

function named(of: Review, name: string): Review {
    return { ...of, before: { ...of.before, recipe: name }, after: { ...of.after, recipe: name } };
}

describe('what a change comes to', () => {
    it('a part of the drawing that was deleted, by its name', async () => {
        const art = { 'flag.svg': flag.replace(/<path id="pole"[^>]*>/, ''), 'diamond.svg': diamond };
        const { review: found } = await answer({ text: inlayRecipe() }, { text: inlayRecipe(), art });
        expect(worst(found).some((text) => /78 mm² \(\d+ %\) of flag no longer burns, #pole is gone/.test(text))).toBe(true);
    });

    it('art that lies 5 mm further, and which way', async () => {
        const found = await review(
            ...inlayChange(
                { pocket: 'art flag at 105, 75 mm depth 0.55 mm air off' },
                { pocket: 'art flag at 100, 75 mm depth 0.55 mm air off' },
            ),
        );
        expect(worst(found)).toContain('flag lies 5 mm to the right on tray');
        const both = await review(
            ...inlayChange(
                { pocket: 'art flag at 100, 73 mm depth 0.55 mm air off' },
                { pocket: 'art flag depth 0.55 mm air off' },
            ),
        );
        expect(worst(both)).toContain('flag lies 2 mm up on tray');
    });

    it('nothing moves where only the blank around its middle grows', async () => {
        const blanks = (size: string): string =>
            `blank tray { of walnut-12 size ${size} grain along width } blank bird { of maple-06 size 80 x 70 mm grain along width backing foil }`;
        const found = await review(...inlayChange({ blanks: blanks('240 x 150 mm') }, { blanks: blanks('200 x 150 mm') }));
        expect(worst(found).join()).not.toContain(' lies ');
    });

    it('a veneer that stands 0.4 mm proud', async () => {
        const found = await review(...inlayChange({ pocket: 'art flag depth 0.26 mm air off' }));
        expect(worst(found).join('\n')).toMatch(/stands proud 0\.4 mm/);
    });

    it('a wait that was cut short, and one that got longer, which is none', async () => {
        const waits = (hours: number): string => fillRecipe().replace('wait 24 h', `wait ${hours} h`);
        expect(worst(await review(waits(24), waits(4)))).toContain('only 4 h instead of 24 h');
        expect(worst(await review(waits(24), waits(30))).join()).not.toContain('only');
    });

    it('a step that is gone, and another board with its thickness', async () => {
        expect(worst(await review(...inlayChange({ after: '' })))).toContain('this step is gone');
        const other = await review(fillRecipe(), fillRecipe({ wood: 'walnut-12' }));
        expect(worst(other)).toContain('blank disc, sheet: ash-10 → walnut-12, thickness: 10 mm ± 0.2 mm → 12 mm ± 0.3 mm');
    });

    it('errors first, then warnings, then what the piece loses; each finding with what was written in its step', async () => {
        const found = await review(fillRecipe(), fillRecipe({ after: 'sand disc { flush then 2 mm grits 80, 120, 180 }' }));
        const [first] = consequencesOf(found);
        expect(first).toMatchObject({ kind: 'error', rule: 'fill-sanded-away', cause: 'take: 0.3 mm → 2 mm' });
        const weights = consequencesOf(found).map(({ weight }) => weight);
        expect(weights).toEqual(weights.toSorted((a, b) => b - a));
    });
});

describe('what says nothing', () => {
    it('is left out: pins as solved, cents, two seconds, art in another folder', async () => {
        const found = await review(...inlayChange({ pocket: 'art flag depth 0.60 mm air off' }));
        const amounts = (dimension: 'time' | 'money', before: number, after: number) => ({
            amounts: { before: { value: before, dimension }, after: { value: after, dimension } },
        });
        const noisy: Review = {
            ...found,
            recipe: [],
            steps: [],
            findings: [],
            allows: [],
            things: [],
            supplies: [],
            times: [{ label: 'machine', ...amounts('time', 100, 102) }],
            run: [],
            cost: [{ label: 'cost', ...amounts('money', 45.4, 45.38) }],
            cautions: { gained: [], lost: [] },
            art: [
                {
                    name: 'flag',
                    status: 'changed',
                    changes: [{ label: 'file', before: 'a.svg', after: 'b/a.svg' }],
                    gained: 0,
                    lost: 0,
                    kept: 90,
                },
            ],
            pinned: {
                before: [],
                after: [{ step: 0, title: 'Engrave pocket', setting: 'passes', written: '3', solved: '3' }],
            },
        };
        expect(withoutNoise(noisy)).toMatchObject({ same: true, times: [], cost: [], art: [], pinned: { after: [] } });
        const more = { ...noisy, times: [{ label: 'machine', ...amounts('time', 100, 103) }] };
        expect(withoutNoise(more)).toMatchObject({ same: false, times: more.times });
        expect(withoutNoise({ ...noisy, art: [{ ...noisy.art[0]!, lost: 3 }] }).same).toBe(false);
    });
});

describe('the head of several reviews', () => {
    it('counts, tells stock once, and has a line for each recipe, worst first', async () => {
        const dearer = (text: string): string => text.replace('80 % at 300 mm/s gives 0.34', '80 % at 300 mm/s gives 0.40');
        const byStock = await review(fillRecipe({ wood: 'walnut-12' }), dearer(fillRecipe({ wood: 'walnut-12' })));
        const worse = await review(
            fillRecipe({ wood: 'walnut-12' }),
            dearer(fillRecipe({ wood: 'walnut-12', after: 'sand disc { flush then 2 mm grits 80, 120, 180 }' })),
        );
        const milder = await review(fillRecipe(), fillRecipe({ after: 'sand disc { flush then 0.30 mm grits 80, 120 }' }));
        const same = await review(fillRecipe(), fillRecipe());
        const all = [
            named(byStock, 'one'),
            named(byStock, 'two'),
            named(milder, 'mild'),
            named(worse, 'bad'),
            named(same, 'still'),
        ];
        const head = headOf(all.map(withoutNoise), ['far']);
        expect(head.counts).toEqual({ changed: 4, added: 0, removed: 0, untouched: 2 });
        expect(head.rows.map(({ name }) => name)).toEqual(['bad', 'mild']);
        expect(head.byStock).toEqual(['one', 'two']);
        expect(head.stock).toMatchObject([{ thing: { thing: 'coupon of walnut-12 on shed' }, recipes: ['one', 'two', 'bad'] }]);
        const text = reviewsText(all, ['far']);
        expect(text.split('\n')[0]).toMatch(/^Of the recipes 4 changed, 2 untouched; gained: \d+ errors?/);
        expect(text.match(/coupon of walnut-12/g)).toHaveLength(1);
        expect(text).toMatch(/^ {2}error +bad +Sand disc, take: 0\.3 mm → 2 mm: /m);
        expect(text).toContain('Untouched: far, still');
        expect(text).not.toContain('nothing that matters differs');
        const markdown = reviewMarkdown(all, ['far']);
        expect(markdown).toContain('- **error** [bad](#bad): Sand disc');
        expect(markdown).toContain('\n### bad\n');
    });

    it('a new recipe takes five lines', async () => {
        const found = await review(fillRecipe(), fillRecipe({ after: 'sand disc { flush then 2 mm grits 80, 120, 180 }' }));
        const fresh = { ...found, before: { from: 'nothing', title: '', revision: 0 } };
        const lines = reviewText(fresh).trimEnd().split('\n');
        expect(lines[0]).toContain('coaster is new');
        expect(lines.length).toBeLessThanOrEqual(5);
        expect(lines.at(-1)).toContain('error: Sand disc');
    });

    it('is never cut out of Markdown, nor is a recipe that gained findings; tables go first', async () => {
        const bad = await review(fillRecipe(), fillRecipe({ after: 'sand disc { flush then 2 mm grits 80, 120, 180 }' }));
        const mild = await review(fillRecipe(), fillRecipe({ after: 'sand disc { flush then 0.30 mm grits 80, 120 }' }));
        const all = [
            ...Array.from({ length: 80 }, (_, index) => named(mild, `mild-${index}`)),
            ...Array.from({ length: 40 }, (_, index) => named(bad, `bad-${index}`)),
        ];
        const markdown = reviewMarkdown(all);
        expect(markdown.length).toBeLessThan(61_000);
        for (let index = 0; index < 40; index += 1) expect(markdown).toContain(`### bad-${index}\n`);
        for (let index = 0; index < 80; index += 1) expect(markdown).toContain(`](#mild-${index})`);
        expect(markdown).toContain('there is more than a comment can hold');
        const few = reviewMarkdown(all.slice(70, 100));
        expect(few).toContain('### mild-79\n');
        expect(few).toContain('| --- |');
    });

    it('tells sixteen causes in its first ten lines, errors first, and no recipe twice', async () => {
        const bad = await review(fillRecipe(), fillRecipe({ after: 'sand disc { flush then 2 mm grits 80, 120, 180 }' }));
        const { step: _step, ...gained } = bad.findings[0]!;
        const sixteen = Array.from({ length: 16 }, (_, index) =>
            named(
                {
                    ...bad,
                    steps: [],
                    findings: [
                        {
                            ...gained,
                            severity: index === 15 ? 'error' : 'warning',
                            message: `Place ${index} of it is lost (at worst), so that it fails: more of that.`,
                        },
                    ],
                },
                `piece-${index}`,
            ),
        );
        const lines = reviewsText(sixteen).split('\n');
        const head = lines.slice(0, 10).join('\n');
        for (let index = 0; index < 16; index += 1)
            expect(head).toContain(`piece-${index}: Place ${index} of it is lost, so that it fails`);
        expect(lines[1]).toMatch(/^ {2}error +piece-15: /);
        expect(
            lines
                .slice(0, lines.indexOf(''))
                .join('\n')
                .match(/piece-3:/g),
        ).toHaveLength(1);
        expect(lines[10] ?? '').not.toMatch(/^ {2}warning/);
        expect(Math.max(...lines.slice(0, 10).map(({ length }) => length))).toBeLessThanOrEqual(170);
        expect(reviewMarkdown(sixteen)).toContain('[piece-3](#piece-3): Place 3 of it is lost');
        const nine = reviewsText(sixteen.slice(7)).split('\n');
        expect(nine[2]).toMatch(/^ {2}warning +piece-\d+ +/);
    });

    it('tells in the stock line what a changed coupon says of itself, and prices as they are written', async () => {
        const more = [
            [70, 300, 0.29],
            [50, 300, 0.19],
            [70, 400, 0.2],
            [50, 400, 0.13],
            [90, 300, 0.39],
        ] as const;
        const squares = more.map(([power, speed, depth]) => `burn ${power} % at ${speed} mm/s gives ${depth} mm`).join(' ');
        const whole = fillRecipe({ wood: 'walnut-12' }).replace('pitch 0.10 mm', `pitch 0.10 mm ${squares}`);
        const found = await review(whole, whole.replace('300 mm/s gives 0.34', '300 mm/s gives 0.15'));
        const text = reviewsText([named(found, 'one'), named(found, 'two')]);
        expect(text).toMatch(
            /stock +coupon of walnut-12 on shed: .*, in one, two: warning: This square was measured 0\.15 mm deep/,
        );
        const priced = (price: string): string =>
            fillRecipe({ wood: 'walnut-12' }).replace('thickness 12 mm', `price ${price} thickness 12 mm`);
        const dearer = await review(priced('34 for 1 sheet'), priced('36 for 1 sheet'));
        expect(reviewText(dearer)).toContain('price: 34 for 1 sheet → 36 for 1 sheet');
    });
});

describe('a change of the laser that many coupons are older than', () => {
    const dated = (text: string): string => text.replace(/coupon (\S+) on shed \{/g, 'coupon $1 on shed {\n  burnt 2026-05-02');
    const other = coupon('ash-10', 'shed');
    const burntFirst = (name: string): string => dated(`${fillRecipe()}\n${other}`).replace(/recipe \S+ "/, `recipe ${name} "`);
    const serviced = (text: string): string => text.replace('laser shed {', 'laser shed { serviced 2026-06-01 ');
    const onBoth = (text: string): string =>
        text.replace(
            /(blank disc \{[^}]*\})/,
            '$1\n  blank rim { of walnut-12  size 60 x 60 mm }\n  engrave ring on rim { circle 20 mm at 30, 30 mm  depth 0.3 mm }',
        );

    it('is one line that counts the coupons, not one a coupon', async () => {
        const reviews = await Promise.all(
            ['one', 'two', 'three'].map((name) => review(onBoth(burntFirst(name)), serviced(onBoth(burntFirst(name))))),
        );
        const lines = reviewsText(reviews).split('\n');
        const counted = lines.filter((line) => line.includes('coupons were burnt before it'));
        expect(counted[0]).toMatch(/2 coupons were burnt before it/);
        expect(lines.slice(0, 3).filter((line) => line.includes('was burnt on'))).toEqual([]);
        expect(lines[2]).toContain('Reached by the stock alone: one, two, three');
    });
});
