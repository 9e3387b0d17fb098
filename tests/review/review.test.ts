import { describe, expect, it } from 'vitest';
import { fillRecipe, flag, inlayRecipe, shop } from '../kit/shop';
import { inlayChange, review, step } from './review-kit';

const labels = (changes: readonly { readonly label: string }[]): string[] => changes.map(({ label }) => label);

describe('what was written differently, and what follows from it', () => {
    it('a deeper pocket: depth, seam, veneer left, time', async () => {
        const [before, after] = inlayChange({ pocket: 'art flag depth 0.60 mm air off' });
        const found = await review(before, after);
        const pocket = step(found, 'Engrave pocket');
        expect(pocket.settings).toEqual([
            expect.objectContaining({ label: 'depth', before: '0.55 mm', after: '0.6 mm', by: '+0.05 mm' }),
        ]);
        expect(labels(pocket.follows)).toContain('depth');
        const inlay = step(found, 'Let relief into pocket');
        expect(inlay.settings).toEqual([]);
        expect(inlay.follows).toContainEqual(expect.objectContaining({ label: 'veneer left', by: '+0.05 mm' }));
        expect(inlay.follows).toContainEqual(expect.objectContaining({ label: 'stands proud', by: '−0.05 mm' }));
        expect(found.steps.filter(({ status }) => status !== 'same')).toHaveLength(2);
        expect(labels(found.times)).toEqual(['machine']);
        expect(found.same).toBe(false);
    });

    it('what an edit does to the wood that is left: floor, thinnest wall, parts cut free', async () => {
        const board = (depth: string, place: string, rest = '') =>
            `${shop}\nrecipe plate "Plate" { revision 1 make 1 laser shed blank b { of walnut-12 size 100 x 100 mm grain along width }
             engrave one on b { rectangle 20 x 20 mm at 30, 50 mm depth 0.5 mm air off }
             engrave two on b { rectangle 20 x 20 mm at ${place} mm depth ${depth} air off } ${rest} }`;
        const found = await review(
            board('0.5 mm', '53, 50'),
            board('0.4 mm', '52, 50', 'cut rim on b { circle 90 mm at 50, 50 mm air on }'),
        );
        const { follows } = step(found, 'Engrave two');
        expect(follows).toContainEqual(expect.objectContaining({ label: 'floor left', by: '+0.1 mm' }));
        expect(follows).toContainEqual(
            expect.objectContaining({ label: 'thinnest wall', before: '2.92 mm to one', after: '1.92 mm to one', by: '−1 mm' }),
        );
        expect(step(found, 'Cut rim').follows).toContainEqual(expect.objectContaining({ label: 'cut free', after: '1' }));
        expect(step(found, 'Engrave one').status).toBe('same');
    });

    it('numbers are there for a program, in base units', async () => {
        const [before, after] = inlayChange({ pocket: 'art flag depth 0.60 mm air off' });
        const { settings } = step(await review(before, after), 'Engrave pocket');
        expect(settings[0]?.amounts).toMatchObject({
            before: { value: 0.55, dimension: 'length' },
            after: { value: 0.6, dimension: 'length' },
        });
    });

    it('the same length in another unit is no change', async () => {
        const [before, after] = inlayChange(
            { pocket: 'art flag at 4 in, 75 mm depth 0.55 mm air off' },
            {
                pocket: 'art flag at 101.6 mm, 75 mm depth 0.55 mm air off',
            },
        );
        expect((await review(before, after)).same).toBe(true);
    });

    it('comments and layout are no change', async () => {
        const text = inlayRecipe();
        expect((await review(text, text.replaceAll('  ', '\n  // so\n    '))).same).toBe(true);
    });

    it('a wait is told once, not again as what follows from itself', async () => {
        const text = inlayRecipe();
        const { settings, follows } = step(await review(text, text.replace('wait 12 h', 'wait 18 h')), 'Wait 18 h');
        expect(settings).toEqual([expect.objectContaining({ before: '12 h', after: '18 h', by: '+6 h' })]);
        expect(follows).toEqual([]);
    });

    it('the recipe as a whole, its blanks, and how many are made', async () => {
        const text = fillRecipe();
        const changed = text
            .replace('make 2', 'make 5')
            .replace('"Coaster"', '"Round coaster"')
            .replace('size 100 x 100', 'size 100 x 110');
        const found = await review(text, changed);
        expect(labels(found.recipe)).toEqual(['title', 'make']);
        expect(found.things).toEqual([
            {
                thing: 'blank disc',
                status: 'changed',
                changes: [expect.objectContaining({ label: 'size', before: '100 x 100 mm', after: '100 x 110 mm' })],
            },
        ]);
        expect(found.supplies).toContainEqual(expect.objectContaining({ label: 'board ash-10', by: '+3' }));
    });

    it('stock that differs behind the recipe: a thinner board, another mix', async () => {
        const text = fillRecipe();
        const found = await review(
            text,
            text
                .replace('thickness 10 mm +- 0.2 mm', 'thickness 9 mm +- 0.2 mm')
                .replace('colour #1f6f8b', 'colour #102030 mix 3 : 1 by weight'),
        );
        expect(found.things.map(({ thing }) => thing)).toEqual(['board ash-10', 'resin tide-blue']);
        expect(found.things[0]?.changes).toEqual([expect.objectContaining({ label: 'thickness', by: '−1 mm' })]);
        expect(labels(found.things[1]!.changes)).toEqual(expect.arrayContaining(['mix', 'colour']));
    });

    it('what a clearance ladder found, and which side of a cut-out part is up', async () => {
        const text = `${shop} coupon ash-10 on shed { cut 95 % at 8 mm/s gives through kerf 0.4 mm fits 0.30 mm }
            recipe r { laser shed art flag "flag.svg" blank tile { of ash-10 size 90 x 80 mm } blank stuff { of ash-10 size 60 x 50 mm }
            cut gap on tile { art flag power 95 % speed 8 mm/s } cut boat on stuff { art flag power 95 % speed 8 mm/s mirror }
            inlay boat into gap { clearance 0.3 mm glue wood-glue } }`;
        const found = await review(text, text.replace('fits 0.30 mm', 'fits 0.26 mm'));
        expect(found.things).toMatchObject([
            {
                thing: 'coupon of ash-10 on shed',
                changes: [{ label: 'cut 95 % at 8 mm/s fits', before: '0.3 mm', after: '0.26 mm' }],
            },
        ]);
        expect(labels(step(found, 'Let boat into gap').follows)).toContain('seam');
        const turned = await review(text, text.replace(' mirror }', ' }'));
        expect(step(turned, 'Let boat into gap').follows).toContainEqual(
            expect.objectContaining({ label: 'side up', before: 'the back', after: 'the face' }),
        );
    });

    it('a coupon square measured again is one change, and the settings that follow from it are told', async () => {
        const text = inlayRecipe();
        const found = await review(
            text,
            text.replace('burn 80 % at 300 mm/s gives 0.34 mm', 'burn 80 % at 300 mm/s gives 0.40 mm'),
        );
        expect(found.things).toEqual([
            {
                thing: 'coupon of walnut-12 on shed',
                status: 'changed',
                changes: [expect.objectContaining({ label: '80 % at 300 mm/s gives', before: '0.34 mm', after: '0.4 mm' })],
            },
        ]);
        expect(step(found, 'Engrave pocket').follows.length).toBeGreaterThan(0);
    });

    it('another board is told at the blank, not as a change of the board', async () => {
        const found = await review(fillRecipe(), fillRecipe({ wood: 'walnut-12' }));
        expect(found.things.filter(({ thing }) => thing.startsWith('blank'))[0]?.changes).toEqual([
            expect.objectContaining({ label: 'sheet', before: 'ash-10', after: 'walnut-12' }),
            expect.objectContaining({ label: 'thickness', before: '10 mm ± 0.2 mm', after: '12 mm ± 0.3 mm' }),
        ]);
        expect(found.things.map(({ thing }) => thing)).not.toContain('board walnut-12');
    });
});

describe('what a reviewer must not overlook', () => {
    it('findings gained and lost, at their step', async () => {
        const [before, after] = inlayChange({ relief: 'art flag inverse within grown 6 mm depth through air off' });
        const there = await review(before, after);
        expect(there.findings).toContainEqual(
            expect.objectContaining({ change: 'gained', rule: 'not-mirrored', severity: 'error', step: expect.any(Number) }),
        );
        const back = await review(after, before);
        expect(back.findings.map(({ change, rule }) => `${change} ${rule}`)).toContain('lost not-mirrored');
    });

    it('a finding with other numbers is the same finding, changed', async () => {
        const deep = (mm: number): string => inlayRecipe({ pocket: `art flag depth ${mm} mm air off` });
        const found = await review(deep(12.5), deep(13));
        const changed = found.findings.filter(({ rule }) => rule === 'deeper-than-blank');
        expect(changed).toEqual([
            expect.objectContaining({
                change: 'changed',
                before: expect.objectContaining({ message: expect.stringContaining('12.5 mm') }),
            }),
        ]);
    });

    it('findings of the text are gained too', async () => {
        const text = inlayRecipe();
        const found = await review(text, text.replace('glue wood-glue', 'glue wood-glu'));
        expect(found.findings).toContainEqual(expect.objectContaining({ change: 'gained', rule: 'unknown-name' }));
    });

    it('every exception, whether new, reworded, withdrawn or as before', async () => {
        const allow = (reason: string): string => `art flag depth 0.55 mm air off allow thin-floor because "${reason}"`;
        const at = async (before?: string, after?: string) =>
            (
                await review(
                    inlayRecipe({ pocket: before ?? 'art flag depth 0.55 mm air off' }),
                    inlayRecipe({ pocket: after ?? 'art flag depth 0.55 mm air off' }),
                )
            ).allows;
        const where = { rule: 'thin-floor', step: 'Engrave pocket' };
        expect(await at(undefined, allow('so'))).toEqual([{ status: 'added', ...where, reason: 'so' }]);
        expect(await at(allow('so'), allow('so'))).toEqual([{ status: 'same', ...where, reason: 'so' }]);
        expect(await at(allow('so'), allow('thus'))).toEqual([
            { status: 'changed', ...where, reason: 'thus', reasonBefore: 'so' },
        ]);
        expect(await at(allow('so'), undefined)).toEqual([{ status: 'removed', ...where, reason: 'so' }]);
    });

    it('settings that no coupon stands behind', async () => {
        const text = inlayRecipe();
        const without = text.replace(/coupon walnut-12 on shed \{[^}]*\}/, '');
        const { guesses } = await review(text, without);
        expect(guesses.before).not.toContain('Engrave pocket');
        expect(guesses.after).toContain('Engrave pocket');
    });
});

describe('the art', () => {
    const square = flag.replace('</svg>', '<rect x="30" y="20" width="5" height="4"/></svg>');

    it('is compared as it burns, in square millimetres', async () => {
        const text = fillRecipe();
        const found = await review({ text }, { text, art: { 'flag.svg': square } });
        expect(found.art).toHaveLength(1);
        expect(found.art[0]).toMatchObject({ name: 'flag', status: 'changed', changes: [] });
        expect(found.art[0]!.gained).toBeCloseTo(20, 3);
        expect(found.art[0]!.lost).toBeCloseTo(0, 3);
        expect(step(found, 'Engrave hollow').follows).toContainEqual(expect.objectContaining({ label: 'area', by: '+20 mm²' }));
    });

    it('in another size is compared about the middle of its page', async () => {
        const text = fillRecipe();
        const found = await review(text, text.replace('art flag "flag.svg"', 'art flag "flag.svg" { width 80 mm }'));
        const [art] = found.art;
        expect(labels(art!.changes)).toEqual(['page width', 'page height']);
        // Twice as wide and high: four times the area. What is left of the old one lies inside or outside of the new.
        expect(art!.kept + art!.gained).toBeCloseTo(4 * (art!.kept + art!.lost), 1);
    });

    it('that is gone is told, and does not stop the review', async () => {
        const text = fillRecipe();
        const found = await review({ text }, { text, art: {} });
        expect(found.art[0]?.changes).toContainEqual(expect.objectContaining({ label: 'state', after: 'missing' }));
        expect(found.findings.map(({ change, rule }) => `${change} ${rule}`)).toContain('gained art-missing');
        expect(step(found, 'Engrave hollow').follows).toContainEqual(expect.objectContaining({ label: 'not worked out' }));
    });

    it('under another name is known by its file', async () => {
        const text = fillRecipe();
        const found = await review(text, text.replaceAll('art flag', 'art banner'));
        expect(found.art).toEqual([]);
        expect(found.things).toEqual([]);
    });
});

describe('recipes that are new or gone', () => {
    const none = { text: `${shop}\nrecipe other "Other" { }` };

    it('every step of an unlike recipe is added and none is kept', async () => {
        const found = await review(none, fillRecipe());
        expect(new Set(found.steps.map(({ status }) => status))).toEqual(new Set(['added']));
        expect(found.recipe).toContainEqual(expect.objectContaining({ label: 'name', before: 'other', after: 'coaster' }));
    });

    it('a coupon burnt on another day, and squares judged by tone', async () => {
        const tones = inlayRecipe().replace(
            'pitch 0.10 mm',
            'pitch 0.10 mm burnt 2026-01-10 burn 10 % at 600 mm/s gives tone 40 %',
        );
        const later = tones.replace('2026-01-10', '2026-03-10').replace('tone 40 %', 'tone 46 %');
        const [coupon] = (await review(tones, later)).things;
        expect(coupon?.changes).toEqual([
            expect.objectContaining({ label: 'burnt', before: '2026-01-10', after: '2026-03-10' }),
            expect.objectContaining({ label: '10 % at 600 mm/s gives tone', before: '40 %', after: '46 %' }),
        ]);
    });

    it('a fill that takes more pours, and an inlay that gets marks', async () => {
        const shallow = fillRecipe({ pocket: 'art flag depth 2 mm air off' });
        const deep = fillRecipe({ pocket: 'art flag depth 8 mm air off' });
        const fill = step(await review(shallow, deep), 'Fill hollow with tide-blue').follows;
        expect(labels(fill)).toEqual(expect.arrayContaining(['fill depth', 'volume', 'pours', 'each pour']));
        // Three marks that are asked for and all have room are told once; where one has no room, that follows.
        const marked = await review(...inlayChange({ inlay: 'clearance 0.15 mm glue wood-glue marks 3' }));
        expect(labels(step(marked, 'Let relief into pocket').settings)).toContain('marks');
        expect(labels(step(marked, 'Let relief into pocket').follows)).not.toContain('marks');
    });

    it('the run as a whole, what it costs, and the shop that reckons it', async () => {
        const priced = fillRecipe().replace('board ash-10 {', 'shop bench { currency EUR hourly 30 }\nboard ash-10 {');
        const found = await review(priced, priced.replace('hourly 30', 'hourly 36').replace('coats 2', 'coats 3'));
        expect(labels(found.run)).toEqual(expect.arrayContaining(['ready after', 'attended']));
        const work = found.cost.find(({ label }) => label === 'work');
        expect(work?.by).toMatch(/^\+\d+\.\d\d EUR$/);
        expect(found.things).toContainEqual(expect.objectContaining({ thing: 'shop bench', status: 'changed' }));
        expect((await review(priced, priced)).cost).toEqual([]);
    });

    it('runs that were written down, and what was changed in one', async () => {
        const run = (depth: string): string =>
            `run coaster 2026-11-20 { revision 1 hollow of ash-10 80 % at 400 mm/s depth ${depth} note "so" }`;
        const none = fillRecipe();
        const found = await review(none, `${none}\n${run('1.1 mm')}`);
        expect(found.same).toBe(false);
        expect(found.runs).toEqual([expect.objectContaining({ thing: 'run 2026-11-20', status: 'added' })]);
        expect(found.runs[0]!.changes).toContainEqual(
            expect.objectContaining({ label: 'hollow', after: 'ash-10 power 80 % speed 400 mm/s passes 1 depth 1.1 mm' }),
        );
        const changed = await review(`${none}\n${run('1.1 mm')}`, `${none}\n${run('1.3 mm')}`);
        expect(changed.runs[0]).toMatchObject({ status: 'changed', changes: [{ label: 'hollow' }] });
        const two = `${none}\n${run('1.1 mm')}\n${run('1.2 mm')}`;
        expect((await review(two, none)).runs.map(({ thing, status }) => `${status} ${thing}`)).toEqual([
            'removed run 2026-11-20',
            'removed run 2026-11-20 (2)',
        ]);
    });

    it('pinned settings are listed with what solving would give', async () => {
        const text = inlayRecipe();
        const pinned = inlayRecipe({ pocket: 'art flag depth 0.55 mm air off power 80 % speed 300 mm/s passes 2' });
        const { pinned: notes } = await review(text, pinned);
        expect(notes.before).toEqual([]);
        expect(notes.after.map(({ setting, written }) => `${setting} ${written}`)).toEqual([
            'power 80 %',
            'speed 300 mm/s',
            'passes 2',
        ]);
        const free = step(await review('recipe none { }', text), 'Engrave pocket').follows;
        const speed = free.find(({ label }) => label === 'speed')?.after;
        expect(notes.after[1]?.solved).toBe(speed);
    });
});
