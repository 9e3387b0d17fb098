import { strict as assert } from 'node:assert';
import { openTray, session } from './shared.ts';

describe('the checklist', () => {
    before(openTray);

    it('lists the steps of the recipe and ticks them', async () => {
        const { page } = await session.open();
        await page.getByRole('tab', { name: 'Kerfbook' }).first().click();
        const row = page.getByRole('treeitem', { name: /Engrave pocket/ });
        await row.waitFor();
        await row.getByRole('checkbox').click();
        await page.getByText('1 of 9 steps done').waitFor();
        await session.shot('checklist');
    });

    it('starts the wait of a step that is ticked', async () => {
        const { page } = await session.open();
        const row = page.getByRole('treeitem', { name: /Wait 1 d/ });
        const box = row.getByRole('checkbox');
        const waiting = page.getByRole('treeitem', { name: /Wait 1 d.*(23 h|1 d).*left/ });
        // The tree may be drawn anew under the pointer; a click that met the old row is made again.
        for (let tries = 0; tries < 4 && !(await waiting.isVisible()); tries++) {
            if ((await box.getAttribute('aria-checked')) !== 'true') await box.click();
            await waiting.waitFor({ timeout: 8000 }).catch(() => undefined);
        }
        await waiting.waitFor();
        await page.getByText('2 of 9 steps done').waitFor();
        await session.shot('checklist-waiting');
    });

    it('goes to the text of a step that is clicked', async () => {
        const workbench = await session.open();
        await workbench.page.getByRole('treeitem', { name: /Sand tray/ }).click();
        await workbench.atLine(52);
    });

    it('unticks', async () => {
        const { page } = await session.open();
        const box = page.getByRole('treeitem', { name: /Engrave pocket/ }).getByRole('checkbox');
        await box.click();
        await page.getByText('1 of 9 steps done').waitFor();
        assert.equal(await box.getAttribute('aria-checked'), 'false');
    });
});
