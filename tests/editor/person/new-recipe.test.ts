import { strict as assert } from 'node:assert';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { choose, eventually, session } from './shared.ts';

describe('a new recipe', () => {
    it('is asked for with the keyboard alone, written, opened and shown', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        const input = page.locator('.quick-input-widget input[type="text"]');
        const answer = async (asked: string, text: string, shot?: string) => {
            await page.locator('.quick-input-title', { hasText: 'New Recipe' }).waitFor();
            await page
                .locator(`.quick-input-widget input[placeholder*="${asked}"], .quick-input-message:has-text("${asked}")`)
                .first()
                .waitFor();
            await input.fill(text);
            if (shot !== undefined) await session.shot(shot);
            await page.keyboard.press('Enter');
        };
        await workbench.command('Kerfbook: New Recipe');
        await answer('technique', 'inlay', 'new-recipe-technique');
        await answer('Which board', 'walnut-12', 'new-recipe-board');
        await answer('veneer', 'stands out');
        await answer('Which laser', 'shed');
        await answer('Which art', 'heron.svg', 'new-recipe-art');
        await answer('called', 'Slipway lid');
        await page.locator('.quick-input-message', { hasText: 'How large' }).waitFor();
        await session.shot('new-recipe-size');
        assert.match(await input.inputValue(), /^\d+ x \d+ mm$/);
        await page.keyboard.press('Enter');
        await page.getByRole('tab', { name: /^slipway-lid\.kerf/ }).waitFor();
        await workbench.bench.getByRole('heading', { name: 'Slipway lid' }).waitFor();
        const text = readFileSync(join(session.workshop, 'slipway-lid.kerf'), 'utf8');
        assert.match(text, /^use "workshop\.kerf"/);
        assert.match(text, /art heron "art\/heron\.svg"/);
        await eventually('no finding', async () => /\d+ h/.test((await workbench.status.textContent()) ?? ''));
        assert.equal(await page.locator('.monaco-editor .squiggly-error, .monaco-editor .squiggly-warning').count(), 0);
        await session.shot('new-recipe');
    });

    it('goes a question back, and Escape leaves everything as it was', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        const input = page.locator('.quick-input-widget input[type="text"]');
        await workbench.command('Kerfbook: New Recipe');
        await input.and(page.getByPlaceholder('Which technique?')).waitFor();
        await page.keyboard.press('Enter');
        await input.and(page.getByPlaceholder('Which board?')).waitFor();
        await page.locator('.quick-input-widget').getByRole('button', { name: 'Back' }).click();
        await input.and(page.getByPlaceholder('Which technique?')).waitFor();
        await page.keyboard.press('Escape');
        await input.waitFor({ state: 'hidden' });
        assert.equal(existsSync(join(session.workshop, 'piece.kerf')), false);
    });

    it('begins from a drawing in the explorer', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await (await workbench.inExplorer('seed-head.svg', 'art')).click({ button: 'right' });
        await choose(workbench, 'New Recipe from This Art…');
        await page.getByPlaceholder('Which technique?').waitFor();
        await session.shot('new-recipe-from-art');
        await page.keyboard.press('Enter');
        await page.getByPlaceholder('Which board?').waitFor();
        await page.locator('.quick-input-widget input[type="text"]').fill('cherry-6');
        await page.keyboard.press('Enter');
        await page.getByPlaceholder('Which laser?').waitFor();
        await page.keyboard.press('Enter');
        await page.locator('.quick-input-message', { hasText: 'called' }).waitFor();
        assert.equal(await page.locator('.quick-input-widget input[type="text"]').inputValue(), 'Seed head');
        await page.keyboard.press('Enter');
        await page.locator('.quick-input-message', { hasText: 'How large' }).waitFor();
        await page.keyboard.press('Enter');
        await page.getByRole('tab', { name: /^seed-head\.kerf/ }).waitFor();
        assert.match(readFileSync(join(session.workshop, 'seed-head.kerf'), 'utf8'), /art seed-head "art\/seed-head\.svg"/);
    });
});
