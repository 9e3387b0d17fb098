import { strict as assert } from 'node:assert';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { eventually, session } from './shared.ts';

describe('a coupon', () => {
    it('is made with strips to cut out, where that is chosen', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await workbench.openFile('gate-sign.kerf');
        await workbench.command('Kerfbook: Make Coupon');
        const rows = page.locator('.quick-input-list .monaco-list-row');
        for (const [asked, answer] of [
            ['Which board', 'cherry-6'],
            ['Which laser', 'shed'],
            ['What is the coupon to tell', 'Squares and 6 strips'],
        ] as const) {
            // A list that is still that of the question before takes no click.
            await page.locator('.quick-input-title', { hasText: asked }).waitFor();
            // Typed, since what is said of the row under the mouse hides the next one.
            await page.locator('.quick-input-widget input[type="text"]').fill(answer);
            await rows.and(page.locator('.focused')).filter({ hasText: answer }).waitFor();
            await page.keyboard.press('Enter');
        }
        const folder = join(session.workshop, 'made/coupon-cherry-6-shed');
        const table = () => (existsSync(join(folder, 'coupon.csv')) ? readFileSync(join(folder, 'coupon.csv'), 'utf8') : '');
        await eventually('the strips in the table', async () => /^strip \d+ of 6 mm,/m.test(table()));
        rmSync(join(session.workshop, 'made'), { recursive: true });
        await workbench.command('Notifications: Clear All Notifications');
    });
});

describe('measured squares', () => {
    it('are asked for one by one and written down as one change', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await workbench.openFile('gate-sign.kerf');
        await workbench.command('Kerfbook: Add Measured Squares to Coupon');
        await choose(page.locator('.quick-input-list .monaco-list-row'), 'cherry-06');
        await choose(page.locator('.quick-input-list .monaco-list-row'), 'loft');
        const input = page.locator('.quick-input-widget input[type="text"]');
        const asks = (index: number) => page.locator('.quick-input-title', { hasText: `${index} of 16 to measure` }).waitFor();
        await asks(1);
        await page.locator('.quick-input-message', { hasText: /Square 1, \d+ % at \d+ mm\/s: how deep is it/ }).waitFor();
        await input.fill('0,05');
        await session.shot('coupon-square');
        await input.press('Enter');
        await asks(2);
        await input.press('Enter'); // skipped
        await asks(3);
        await input.fill('deep');
        await page.locator('.quick-input-message', { hasText: 'such as 0.31 mm' }).waitFor();
        await input.fill('6 thou');
        await input.press('Enter');
        await asks(4);
        await input.press('Escape');
        await page.getByRole('button', { name: 'Keep' }).click();
        await page.getByRole('tab', { name: /^workshop.kerf/, selected: true }).waitFor();
        const lines = page.locator('.monaco-editor[data-uri$="/workshop.kerf"] .view-lines');
        const text = async () => ((await lines.textContent()) ?? '').replaceAll('\u00a0', ' ');
        await eventually('the new block', async () =>
            /coupon cherry-06 on loft \{.*gives 0\.05 mm {2}\/\/ square 1.*gives 6 thou {2}\/\/ square 3/.test(await text()),
        );
        await session.shot('coupon-measured');
        await page.keyboard.press('Control+z');
        await eventually('it to be gone at once', async () => !(await text()).includes('coupon cherry-06 on loft'));
        assert.equal(await page.locator('.tab.dirty', { hasText: 'workshop.kerf' }).count(), 0);
    });
});

async function choose(rows: Locator, name: string): Promise<void> {
    await rows.filter({ hasText: name }).first().click();
}
