import { strict as assert } from 'node:assert';
import type { Workbench } from '../harness/workbench.ts';
import { lineOf, openTray, session, untickAll } from './shared.ts';

describe('the checklist', () => {
    let workbench: Workbench;
    const row = (name: RegExp) => workbench.page.getByRole('treeitem', { name });

    before(async () => {
        workbench = await openTray();
    });
    beforeEach(async () => {
        await workbench.command('Kerfbook: Focus on Checklist View');
        await row(/Engrave pocket/).waitFor();
        await untickAll(workbench);
    });

    it('lists the steps of the recipe, ticks them and takes ticks away', async () => {
        const box = row(/Engrave pocket/).getByRole('checkbox', { name: 'Done: Engrave pocket' });
        const count = workbench.page.getByText('1 of 9 steps done');
        await box.click();
        await count.waitFor();
        await session.shot('checklist');
        await box.click();
        await count.waitFor({ state: 'hidden' });
        assert.equal(await box.getAttribute('aria-checked'), 'false');
    });

    it('starts the wait of a step that is ticked', async () => {
        const box = row(/Wait 1 d/).getByRole('checkbox');
        const waiting = row(/Wait 1 d.*(23 h|1 d).*left/);
        // The tree may be drawn anew under the pointer; a click that met the old row is made again.
        for (let tries = 0; tries < 4 && !(await waiting.isVisible()); tries++) {
            if ((await box.getAttribute('aria-checked')) !== 'true') await box.click();
            await waiting.waitFor({ timeout: 8000 }).catch(() => undefined);
        }
        await waiting.waitFor();
        await workbench.page.getByText('1 of 9 steps done').waitFor();
        await session.shot('checklist-waiting');
    });

    it('goes to the text of a step that is clicked', async () => {
        await row(/Sand tray/).click();
        await workbench.atLine(lineOf('heron-tray.kerf', 'sand tray'));
    });
});
