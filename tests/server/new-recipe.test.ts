import { beforeAll, describe, expect, it } from 'vitest';
import { veneersFor } from '../../language/starting/picked-stock';
import { choicesOf } from '../../language/starting/shop-here';
import type { Shop } from '../../server/starting/new-recipe';
import { techniques } from '../../shared/view/techniques';
import { begin, filesOf, samples, shopWith } from '../kit/new-recipe-shop';
import { diamond } from '../kit/shop';

const drawings = ['art/heron.svg', 'art/tide-rings.svg', 'art/gate-sign.svg', 'art/seed-head.svg'];
let own: Shop;
let bare: Shop;

beforeAll(async () => {
    own = await shopWith({
        'workshop.kerf': samples('workshop.kerf'),
        ...Object.fromEntries(drawings.map((path) => [path, samples(path)])),
    });
    bare = await shopWith({});
});

describe('a new recipe has neither errors nor warnings', () => {
    const shopBoards = ['walnut-12', 'cherry-6', 'cedar-18', 'ash-quarter'];
    const file = 'file:///shop/workshop.kerf';

    describe.each(techniques)('%s', (technique) => {
        it.each(shopBoards)('on %s, with each laser of the shop', async (board) => {
            for (const laser of ['shed', 'loft']) {
                const answer = await begin(own, { technique, board: { name: board, file }, laser: { name: laser, file } });
                if ('problem' in answer) throw new Error(answer.problem);
                expect(answer.findings, `${laser}\n${filesOf(answer)['low-water.kerf']}`).toEqual([]);
            }
        });
        it('on a board of every built-in wood, with each source that can burn it', async () => {
            const { boards: woods, lasers } = choicesOf(bare.documents);
            for (const { name } of woods) {
                for (const laser of lasers) {
                    if (technique === 'inlay' && !laser.foilStops) continue;
                    const answer = await begin(bare, { technique, board: { name }, laser: { name: laser.name } });
                    if ('problem' in answer) throw new Error(answer.problem);
                    const recipe = filesOf(answer);
                    expect(answer.findings, `${name} ${laser.name}\n${Object.values(recipe).slice(0, 2).join('\n')}`).toEqual([]);
                }
            }
        }, 240_000);
    });
});

describe('a new recipe of one’s own art', () => {
    const file = 'file:///shop/workshop.kerf';
    const tray = { board: { name: 'walnut-12', file }, laser: { name: 'shed', file } } as const;

    it.each(drawings.filter((path) => path !== 'art/gate-sign.svg'))('%s can be let in as it is', async (path) => {
        const answer = await begin(own, { technique: 'inlay', ...tray, art: `file:///shop/${path}` });
        if ('problem' in answer) throw new Error(answer.problem);
        const text = filesOf(answer)['low-water.kerf']!;
        expect(answer.findings, text).toEqual([]);
        expect(text).toContain(`"${path}"`);
    });
    it('says what is wrong with the art itself', async () => {
        const answer = await begin(own, { technique: 'inlay', ...tray, art: 'file:///shop/art/gate-sign.svg' });
        expect(answer).toMatchObject({ findings: [expect.stringContaining('vanish')] });
    });
    it('has marks where it goes in more than one way round', async () => {
        const shop = await shopWith({ 'workshop.kerf': samples('workshop.kerf'), 'diamond.svg': diamond });
        const answer = await begin(shop, { technique: 'inlay', ...tray, art: 'file:///shop/diamond.svg' });
        expect(answer).toMatchObject({ findings: [] });
        expect(filesOf(answer)['low-water.kerf']).toContain('marks 3');
    });
    it('keeps the size that the art has, and makes it fit where there is less room', async () => {
        const large = filesOf(await begin(own, { technique: 'engraving', ...tray, art: 'file:///shop/art/heron.svg' }));
        expect(large['low-water.kerf']).toMatch(/art heron "art\/heron\.svg"\n/);
        const size = { width: 100, height: 80 };
        const small = await begin(own, { technique: 'engraving', ...tray, art: 'file:///shop/art/heron.svg', size });
        expect(small).toMatchObject({ size, findings: [] });
        expect(filesOf(small)['low-water.kerf']).toMatch(/art heron "art\/heron\.svg" \{\n {4}width \d+ mm\n/);
    });
    it.each([
        ['art/none.svg', 'none.svg is not there.'],
        ['workshop.kerf', 'workshop.kerf is neither a drawing (SVG) nor a picture'],
    ])('says why %s is no art', async (path, problem) => {
        const answer = await begin(own, { technique: 'filled', ...tray, art: `file:///shop/${path}` });
        expect(answer).toEqual({ problem: expect.stringContaining(problem) });
    });
    it('says that a drawing is no picture', async () => {
        const answer = await begin(own, { technique: 'picture', ...tray, art: 'file:///shop/art/heron.svg' });
        expect(answer).toEqual({ problem: expect.stringContaining('heron.svg is a drawing') });
    });
});

describe('what a new recipe names', () => {
    const wood = { board: { name: 'black-cherry' }, laser: { name: 'co2' } } as const;

    it('is the shop’s own, through one file that sees it all', async () => {
        const file = 'file:///shop/workshop.kerf';
        const answer = await begin(own, {
            technique: 'filled',
            board: { name: 'cherry-6', file },
            laser: { name: 'shed', file },
        });
        const files = filesOf(answer);
        expect(Object.keys(files)).toEqual(['low-water.kerf', 'art/low-water.svg']);
        expect(files['low-water.kerf']).toMatch(/^use "workshop\.kerf"\n\n\/\/ Filled/);
        expect(files['low-water.kerf']).toMatch(/seal piece with thin-shellac\n {2}wait 45 min/);
        expect(files['low-water.kerf']).not.toContain('coupon');
    });
    it('asks for a measured pocket before it is filled or laid in', async () => {
        const filled = filesOf(await begin(bare, { technique: 'filled', ...wood }))['low-water.kerf'];
        expect(filled).toMatch(/depth 0\.9 mm\n {2}\}\n {2}check pocket \{\n {4}depth 0\.8 \.\. 1 mm\n/);
        const inlaid = filesOf(await begin(bare, { technique: 'inlay', ...wood, veneer: { name: 'sugar-maple' } }))[
            'low-water.kerf'
        ];
        expect(inlaid).toMatch(/depth 0\.54 mm\n {2}\}\n {2}check pocket \{\n {4}depth 0\.48 \.\. 0\.6 mm\n/);
    });
    it('is filled with the resin that was chosen, or with one of the colour that was', async () => {
        const file = 'file:///shop/workshop.kerf';
        const chosen = { technique: 'filled', board: { name: 'cherry-6', file }, laser: { name: 'shed', file } } as const;
        expect(choicesOf(own.documents).resins).toContainEqual(
            expect.objectContaining({ name: 'rust-red', file, colour: '#8f3a24' }),
        );
        const red = await begin(own, { ...chosen, resin: { name: 'rust-red', file } });
        expect(red).toMatchObject({ findings: [] });
        expect(filesOf(red)['low-water.kerf']).toContain('fill pocket with rust-red');
        const blue = await begin(bare, { technique: 'filled', ...wood, colour: '#1d5f7a' });
        expect(blue).toMatchObject({ findings: [] });
        expect(filesOf(blue)['workshop.kerf']).toMatch(/resin tinted-epoxy \{\n {2}kind table-top-epoxy\n {2}colour #1d5f7a\n/);
        expect(filesOf(blue)['low-water.kerf']).toMatch(/fill pocket with tinted-epoxy[\s\S]*wait 12 h "the resin cures"/);
    });
    it('is offered with boards first of which a coupon was burnt', async () => {
        const shop = await shopWith({
            'workshop.kerf': `${samples('workshop.kerf')}\n`.replace(
                'board walnut-12',
                'board aaa { wood teak thickness 9 mm }\nboard walnut-12',
            ),
        });
        expect(
            choicesOf(shop.documents)
                .boards.slice(0, 5)
                .map(({ name }) => name),
        ).toEqual([...['walnut-12', 'cherry-6', 'cedar-18', 'ash-quarter', 'aaa']]);
    });
    it('is offered with resins in the order of their files, whichever was read first', async () => {
        const shop = await shopWith({
            'b.kerf': 'resin second { kind table-top-epoxy colour #1d5f7a }\n',
            'a.kerf': 'resin first { kind table-top-epoxy colour #b98a2f }\n',
        });
        for (const documents of [shop.documents, shop.documents.toReversed()])
            expect(choicesOf(documents).resins.map(({ name }) => name)).toEqual(['first', 'second']);
    });
    it('is offered with stock of the shop before what stands in the file of one piece', async () => {
        const shop = await shopWith({
            'a-piece.kerf':
                'use "workshop.kerf"\nboard aaa { wood teak thickness 9 mm }\nveneer thick { wood sugar-maple thickness 2 mm }\ncoupon aaa on shed { burn 40 % at 400 mm/s gives 0.1 mm }\nrecipe piece { laser shed }\n',
            'workshop.kerf': samples('workshop.kerf'),
        });
        const names = choicesOf(shop.documents).boards.map(({ name }) => name);
        expect(names.slice(0, 5)).toEqual(['walnut-12', 'cherry-6', 'cedar-18', 'ash-quarter', 'aaa']);
        // Of one wood: the thin one of the shop, not the thick one of a piece.
        expect(veneersFor('#2a1a12', shop.documents)[0]?.name).toBe('maple-06');
    });
    it('is written into a new workshop file where there is nothing yet, and says that it is a guess', async () => {
        const files = filesOf(await begin(bare, { technique: 'engraving', ...wood }));
        expect(Object.keys(files)).toEqual(['low-water.kerf', 'workshop.kerf', 'art/low-water.svg']);
        expect(files['workshop.kerf']).toMatch(/laser co2-laser \{[\s\S]*board black-cherry-6 \{\n {2}wood black-cherry\n/);
        expect(files['low-water.kerf']).toContain('// No coupon of black-cherry-6 has been burnt on co2-laser yet');
    });
    it('stands above the recipe where there is a workshop file already', async () => {
        const shop = await shopWith({ 'workshop.kerf': 'glue pot { kind wood-glue }\n' });
        const files = filesOf(await begin(shop, { technique: 'engraving', ...wood }));
        expect(Object.keys(files)).toEqual(['low-water.kerf', 'art/low-water.svg']);
        expect(files['low-water.kerf']).toMatch(/^\/\/ The figures of a usual machine/);
    });
    it('never clashes with what is there, nor with a word of the language', async () => {
        const shop = await shopWith({ 'a.kerf': 'recipe low-water { }\nlaser co2-laser { power 40 W }\n' });
        expect(Object.keys(filesOf(await begin(shop, { technique: 'engraving', ...wood })))[0]).toBe('low-water-2.kerf');
        const named = async (title: string) =>
            Object.keys(filesOf(await begin(bare, { technique: 'engraving', ...wood, title })))[0];
        expect(await named('Recipe')).toBe('recipe-2.kerf');
        expect(await named('7 tides, "quoted"')).toBe('piece-7-tides-quoted.kerf');
        expect(await named('Ebbe über Watt')).toBe('ebbe-über-watt.kerf');
        expect(await named('水位')).toBe('水位.kerf');
        expect(await named('///')).toBe('piece.kerf');
    });
    it('leaves a drawing alone that is there already', async () => {
        const shop = await shopWith({ 'art/low-water.svg': diamond });
        const files = filesOf(await begin(shop, { technique: 'engraving', ...wood }));
        expect(Object.keys(files)).toContain('art/low-water-2.svg');
        expect(files['low-water.kerf']).toContain('"art/low-water-2.svg"');
    });
    it('refuses a laser that foil does not stop for an inlay', async () => {
        const answer = await begin(bare, { technique: 'inlay', board: wood.board, laser: { name: 'fibre' } });
        expect(answer).toEqual({ problem: expect.stringContaining('Foil does not stop the beam') });
    });
});
