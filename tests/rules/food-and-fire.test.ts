import { describe, expect, it } from 'vitest';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

workshop();

const stock = `finish board-oil { kind drying-oil  cure 14 d  food "The maker's declaration of March 2026." }
finish any-oil { kind drying-oil }
finish any-wax { kind wax }
resin clear-pour { kind slow-epoxy  cure 24 h  food "Test report 7 of the maker." }
board ply-6 { made of plywood  thickness 6 mm }`;
const board = (steps: string, touched = 'touched by food', of_ = 'ash-10') =>
    recipe(
        `blank cutting-board { of ${of_} size 200 x 150 mm grain along width ${touched} }
  ${steps}
  do "wipe the oily rags into the can of water" for 2 min`,
        stock,
    );

describe('food-contact', () => {
    it('a finish of which nobody says that food may touch it', async () => {
        const text = board('finish cutting-board with any-wax\n wait 2 d');
        const finding = await one(text, 'food-contact');
        expect(finding).toMatchObject({ severity: 'warning' });
        expect(finding.message).toBe(
            'Food touches cutting-board, but nothing written of any-wax says that food may touch it. Write whose word it is with `food "…"` in its block, or take another.',
        );
        expect(words(text, finding)).toBe('finish');
        expect(text.slice(finding.related[0]!.where.offset).startsWith('touched by food')).toBe(true);
    });
    it('one that has not cured, mended by waiting', async () => {
        const text = board('finish cutting-board with board-oil\n wait 2 d');
        const finding = await one(text, 'food-contact');
        expect(finding.message).toMatch(/^board-oil cures for 14 d before food may touch cutting-board; here it has had 2 d/);
        await expectMended(text, finding);
        const never = board('finish cutting-board with board-oil');
        const added = await expectMended(never, await one(never, 'food-contact'));
        expect(added).toMatch(/wait 14 d\n\s*\}\s*$/);
    });
    it('resin, glue and char, and the glue of a sheet', async () => {
        const filled = (resin: string) =>
            board(
                `engrave hollow on cutting-board { art flag depth 1.2 mm air off } seal cutting-board with shellac wait 2 h
   fill hollow with ${resin} wait 24 h sand cutting-board { flush then 0.30 mm grits 80, 120 }`,
            );
        expect((await one(filled('tide-blue'), 'food-contact')).message).toContain('nothing written of tide-blue says');
        await silent(filled('clear-pour'), 'food-contact');
        const burnt = 'engrave words on cutting-board { art flag tone 60 % air off }';
        expect(await one(board(burnt), 'food-contact')).toMatchObject({ severity: 'warning' });
        const oiled = `${burnt} finish cutting-board with board-oil\n wait 14 d`;
        const char = await one(board(oiled), 'food-contact');
        expect(char).toMatchObject({ severity: 'info' });
        expect(char.message).toContain('words leaves burnt wood open on cutting-board, which food touches');
        expect((await one(board('', 'touched by food', 'ply-6'), 'food-contact')).message).toContain('is made of plywood');
    });
    it('is silent where no food is said to touch it, and with a reason', async () => {
        for (const touched of ['', 'touched by hands', 'touched by nobody']) {
            await silent(board('finish cutting-board with any-wax', touched), 'food-contact');
        }
        await silent(
            board('finish cutting-board with any-wax { allow food-contact because "the buyer has it declared" }'),
            'food-contact',
        );
    });
});

describe('too-deep-to-touch by what touches it', () => {
    const deep = (touched: string) => board('engrave hollow on cutting-board { art flag depth 2 mm air off }', touched);
    it('is a hint where nobody says, a warning for food and hands, nothing for a piece that is looked at', async () => {
        const text = deep('');
        const finding = await one(text, 'too-deep-to-touch');
        expect(finding).toMatchObject({ severity: 'hint' });
        expect(await expectMended(text, finding)).toContain('touched by nobody');
        expect(await one(deep('touched by hands'), 'too-deep-to-touch')).toMatchObject({
            severity: 'warning',
            message: expect.stringContaining('that hands touch.'),
        });
        expect((await one(deep('touched by food'), 'too-deep-to-touch')).message).toContain('that food touches.');
        await silent(deep('touched by nobody'), 'too-deep-to-touch');
    });
});

describe('oily-rags', () => {
    const oiled = (coat: string, after = '') =>
        recipe(`blank b { of ash-10 size 100 x 80 mm }\n finish b with ${coat}\n  ${after}`, stock);
    it('asks for a step, and writes it behind the finish', async () => {
        const text = oiled('any-oil', 'wait 14 d');
        const finding = await one(text, 'oily-rags');
        expect(finding).toMatchObject({ severity: 'info' });
        expect(words(text, finding)).toBe('finish');
        expect(await expectMended(text, finding)).toMatch(
            /finish b with any-oil\s+do "spread the oily rags[^"]+" for 5 min\s+wait 14 d/,
        );
        const last = oiled('any-oil');
        expect(await expectMended(last, await one(last, 'oily-rags'))).toMatch(/for 5 min\n\s*\}\s*$/);
    });
    it('knows it of a built-in class and of what says so itself', async () => {
        expect(await of(oiled('oil-varnish'), 'oily-rags')).toHaveLength(1);
        const own = oiled('own').replace('finish any-wax', 'finish own { rags ignite }\nfinish any-wax');
        expect(await of(own, 'oily-rags')).toHaveLength(1);
        await silent(
            oiled('tame').replace('finish any-wax', 'finish tame { kind drying-oil rags harmless }\nfinish any-wax'),
            'oily-rags',
        );
    });
    it('is silent with a step that speaks of rags, and for other finishes', async () => {
        await silent(oiled('any-oil', 'do "burn the rags in the stove" for 5 min'), 'oily-rags');
        await silent(oiled('any-wax'), 'oily-rags');
        const before = oiled('any-oil').replace('finish b with', 'do "fetch rags" for 1 min finish b with');
        expect(await of(before, 'oily-rags')).toHaveLength(1);
    });
});

describe('long-burn', () => {
    const burn = (size: string, head = '') =>
        head + recipe(`blank b { of walnut-12 size 500 x 300 mm }\n engrave e on b { rectangle ${size} depth 2 mm air off }`);
    it('says for how long, and that it is longer than the day', async () => {
        const finding = await one(burn('200 x 200 mm'), 'long-burn');
        expect(finding).toMatchObject({ severity: 'info' });
        expect(finding.message).toMatch(/^e keeps the laser running for \d+ h/);
        const day = 'shop estuary { currency EUR hourly 30 workday 2 h }\n';
        expect(await one(burn('200 x 200 mm', day), 'long-burn')).toMatchObject({
            severity: 'warning',
            message: expect.stringContaining('longer than the workday of 2 h'),
        });
    });
    it('is silent for a short one', async () => silent(burn('20 x 20 mm'), 'long-burn'));
});

describe('never-burn by what is written', () => {
    const sheet = (lines: string, name = 'stuff') =>
        recipe(
            `blank b { of ${name} size 100 x 80 mm }\n engrave e on b { art flag tone 50 % air off }`,
            `board ${name} { thickness 3 mm ${lines} }`,
        );
    it('goes by what it is made of, and points there', async () => {
        const text = sheet('made of pvc');
        const finding = await one(text, 'never-burn');
        expect(finding).toMatchObject({
            severity: 'error',
            message: 'stuff must not be burnt: pvc gives off hydrogen chloride. Take another material.',
        });
        expect(text.slice(finding.related[0]!.where.offset)).toMatch(/^made of pvc/);
        expect(await one(sheet('made of plywood'), 'never-burn')).toMatchObject({ severity: 'warning' });
        await silent(sheet('made of acrylic'), 'never-burn');
    });
    it('goes by what it is treated with', async () => {
        for (const [treatment, severity] of [
            ['preservative', 'error'],
            ['fire-retardant', 'error'],
            ['unknown', 'error'],
            ['paint', 'warning'],
        ]) {
            expect(await one(sheet(`wood white-ash treated with ${treatment}`), 'never-burn')).toMatchObject({ severity });
        }
        // The graver of two goes first.
        expect(await one(sheet('made of mdf treated with preservative'), 'never-burn')).toMatchObject({ severity: 'error' });
    });
    it('a fact that is written outweighs the name', async () => {
        await silent(sheet('wood white-ash made of solid', 'ply-look'), 'never-burn');
        await silent(sheet('wood white-ash treated with nothing', 'heat-treated'), 'never-burn');
        expect(await of(sheet('wood white-ash made of solid', 'heat-treated'), 'never-burn')).toHaveLength(1);
    });
});
