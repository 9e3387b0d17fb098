import { strict as assert } from 'node:assert';
import type { Workbench } from '../harness/workbench.ts';
import { lineOf, openTray, session, setTick, untickAll } from './shared.ts';

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
        await setTick(workbench, /Engrave pocket/);
        await count.waitFor();
        await session.shot('checklist');
        await setTick(workbench, /Engrave pocket/, false);
        await count.waitFor({ state: 'hidden' });
        assert.equal(await box.getAttribute('aria-checked'), 'false');
    });

    it('starts the wait of a step that is ticked', async () => {
        const waiting = row(/Wait 1 d.*(23 h|1 d).*left/);
        await setTick(workbench, /Wait 1 d/);
        await waiting.waitFor();
        await workbench.page.getByText('1 of 9 steps done').waitFor();
        await session.shot('checklist-waiting');
    });

    it('goes to the text of a step that is clicked', async () => {
        await row(/Sand tray/).click();
        await workbench.atLine(lineOf('heron-tray.kerf', 'sand tray'));
    });
});
