import { strict as assert } from 'node:assert';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type InstalledWindow, openInstalled } from '../harness/installed-window.ts';
import { places } from '../harness/places.ts';
import type { Workbench } from '../harness/workbench.ts';

describe('a workspace that is not trusted', () => {
    let window: InstalledWindow;
    let workbench: Workbench;

    before(async () => {
        window = await openInstalled(true);
        workbench = window.workbench;
        await workbench.page.getByText('Restricted Mode').first().waitFor();
    });
    after(() => window?.close());

    it('has its recipes checked and shown', async () => {
        await workbench.openFile('heron-tray-faulty.kerf');
        await workbench.page.locator('.monaco-editor .squiggly-error').first().waitFor({ state: 'attached' });
        await workbench.openFile('seed-box.kerf');
        await workbench.openBench();
        await workbench.bench.getByRole('heading', { name: 'Seed box lid' }).waitFor();
    });

    it('has nothing written into it, and is told why', async () => {
        const { page } = workbench;
        await page.getByRole('tab', { name: /^seed-box\.kerf/ }).click();
        await workbench.command('Kerfbook: Write Files for Machine and Bench');
        const message = workbench.message(
            'This workspace is not trusted: recipes are checked and shown, but no files are written',
        );
        await message.waitFor();
        await page.screenshot({ path: join(places.shots, 'trust.png') });
        assert.equal(existsSync(join(window.workshop, 'made')), false);
    });

    it('has no git started in it, and is led with the keyboard to where trust is given', async () => {
        const { page } = workbench;
        await workbench.command('Notifications: Clear All Notifications');
        await page.getByRole('tab', { name: /^seed-box\.kerf/ }).click();
        await workbench.command('Kerfbook: Compare with Committed');
        await workbench.answer('earlier versions are not looked up, since git goes by', 'Manage Workspace Trust');
        await page.getByText('In a Trusted Folder').or(page.getByText('You are in Restricted Mode')).first().waitFor();
        await page.screenshot({ path: join(places.shots, 'trust-managed.png') });
    });

    it('has its files written once it is trusted', async () => {
        const { page } = workbench;
        await page.getByRole('button', { name: 'Trust', exact: true }).first().click();
        await page.getByText('Restricted Mode').first().waitFor({ state: 'hidden' });
        await workbench.openFile('seed-box.kerf');
        await workbench.command('Kerfbook: Write Files for Machine and Bench');
        await workbench.message(/seed-box: \d+ files written to made\/seed-box/).waitFor();
        assert.equal(existsSync(join(window.workshop, 'made', 'seed-box', 'job-sheet.html')), true);
    });
});
