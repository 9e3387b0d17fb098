import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { places } from '../harness/places.ts';
import { eventually, session } from './shared.ts';

describe('who looks around first', () => {
    // Two files of one name would be in the way of the tests that come after.
    after(() => rmSync(join(session.workshop, 'kerfbook-samples'), { recursive: true, force: true }));

    it('copies the sample workshop, sees its first recipe with the bench view, and has kerfbook in the terminal', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await workbench.command('View: Close All Editors');
        await workbench.command('Kerfbook: Copy the Sample Workshop');
        const input = page.locator('.quick-input-widget input[type="text"]');
        await page.locator('.quick-input-title', { hasText: 'kerfbook-samples' }).waitFor();
        await input.fill(`${session.workshop}/`);
        // While the dialog still reads the folder it takes no click.
        const copyHere = page.getByRole('button', { name: 'Copy Here' });
        await eventually('the dialog to take the folder', async () => {
            await copyHere.click({ timeout: 1000 }).catch(() => undefined);
            return copyHere.waitFor({ state: 'hidden', timeout: 2000 }).then(
                () => true,
                () => false,
            );
        });
        await workbench.bench.getByRole('heading', { name: 'Heron serving tray' }).waitFor();
        const copy = join(session.workshop, 'kerfbook-samples');
        const all = (folder: string) => readdirSync(folder, { recursive: true }).toSorted().join('\n');
        await eventually('all samples', async () => all(copy) === all(places.samples));
        await session.shot('samples');
        await workbench.command('Terminal: Create New Terminal');
        const screen = page.locator('.xterm-rows').first();
        await screen.waitFor();
        await page.locator('.xterm-helper-textarea').first().focus();
        await page.keyboard.type('kerfbook check kerfbook-samples/gate-sign.kerf\n');
        await eventually('the report', async () => /\d+ errors?, \d+ warnings?/.test((await screen.textContent()) ?? ''));
        await session.shot('samples-terminal');
        await workbench.command('Terminal: Kill the Active Terminal Instance');
    });
});
