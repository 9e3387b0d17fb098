import { strict as assert } from 'node:assert';
import { join } from 'node:path';
import { places } from '../harness/places.ts';
import type { Workbench } from '../harness/workbench.ts';
import { atLength, eventually, lineOf, session } from './shared.ts';

describe('an editor that is only a browser', () => {
    let workbench: Workbench;

    before(async () => {
        workbench = await session.openBrowserOnly();
    });

    it('finds what is wrong in a recipe, geometry included', async () => {
        await workbench.openFile('heron-tray-faulty.kerf');
        await workbench.page.locator('.monaco-editor .squiggly-error').first().waitFor({ state: 'attached' });
        await workbench.openBench();
        await workbench.bench.getByRole('button', { name: /^Show \d+ more/ }).click();
        await workbench.bench.getByText(/is not mirrored: turned over/).waitFor();
    });

    it('shows the piece after each step', async () => {
        await workbench.openFile('tide-coaster.kerf');
        await workbench.openBench();
        await workbench.bench.getByRole('heading', { name: 'Tide coaster' }).waitFor();
        assert.equal(await workbench.bench.getByRole('tab').count(), 14);
        await workbench.page.screenshot({ path: join(places.shots, 'browser-only.png') });
    });

    atLength('says what a recipe takes above it, what lies under the cursor, and what can come next', async () => {
        const { page } = workbench;
        await workbench.openFile('tide-coaster.kerf');
        await page
            .locator('.codelens-decoration')
            .getByText(/of laser, .* attended/)
            .first()
            .waitFor();
        await workbench.goTo('tide-coaster.kerf', 12, 9);
        await workbench.command('Show or Focus Hover');
        await page
            .locator('.monaco-hover')
            .getByText(/black-cherry/)
            .first()
            .waitFor();
        await page.keyboard.press('Escape');
        await workbench.goTo('tide-coaster.kerf', 20);
        await page.keyboard.press('End');
        await page.keyboard.type('\nou');
        await workbench.command('Trigger Suggest');
        await page.locator('.suggest-widget .monaco-list-row', { hasText: 'outline' }).first().waitFor();
        await page.keyboard.press('Escape');
        for (let i = 0; i < 2; i += 1) await page.keyboard.press('Backspace');
    });

    atLength('leads from a name into the workshop file, and from there into the built-in stock', async () => {
        const { page } = workbench;
        await workbench.openFile('tide-coaster.kerf');
        await workbench.goTo('tide-coaster.kerf', 12, 9);
        await page.keyboard.press('F12');
        await page.getByRole('tab', { name: /^workshop\.kerf/, selected: true }).waitFor();
        // The tab turns before the cursor is at the board and the keyboard in its text.
        const board = lineOf('workshop.kerf', 'board cherry-6');
        await workbench.status.getByText(new RegExp(`^Ln ${board}, Col `)).waitFor();
        await workbench.goTo('workshop.kerf', board + 1);
        await page.keyboard.press('End');
        await page.keyboard.press('F12');
        await page.getByRole('tab', { name: /^woods\.kerf/, selected: true }).waitFor();
    });

    it('checks a whole folder as a task, without a line of Node', async () => {
        const { page } = workbench;
        await workbench.command('Tasks: Run Task');
        const row = (name: string) => page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first();
        await row('kerfbook').click();
        await row('kerfbook: check').click();
        // Rows without a blank between them, and the last of them are in sight.
        await eventually('the report', async () => {
            const said = ((await page.locator('.xterm-rows').first().textContent()) ?? '').replaceAll('\u00a0', ' ');
            return /tray-variants\.kerf:\d+:\d+: info/.test(said) && /\d+ files: \d+ errors, \d+ warnings/.test(said);
        });
        await page.screenshot({ path: join(places.shots, 'browser-only-check.png') });
        await page.keyboard.press('Control+j');
    });

    it('says what comparing a recipe needs, and sets variants side by side all the same', async () => {
        await workbench.command('View: Close All Editors');
        await workbench.openFile('tray-variants.kerf');
        await workbench.command('Kerfbook: Compare with Committed');
        await workbench.bench.getByText(/^Earlier versions are read by git/).waitFor();
        await workbench.command('View: Close All Editors');
        await workbench.openFile('tray-variants.kerf');
        await workbench.command('Kerfbook: Show Variants Side by Side');
        await workbench.bench.getByRole('columnheader', { name: 'Large heron tray' }).waitFor();
    });
});
