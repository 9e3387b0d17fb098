import { strict as assert } from 'node:assert';
import { session } from './shared.ts';

describe('after the window has been closed and opened again', () => {
    before(async () => {
        const { bench } = await session.open();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await session.reload();
    });

    it('the bench view is back, at the same frame', async () => {
        const { bench, page } = await session.open();
        await page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).click();
        const tab = bench.getByRole('tab', { name: /Engrave pocket/ });
        await tab.waitFor();
        await session.shot('restart');
        assert.equal(await tab.getAttribute('aria-selected'), 'true');
    });

    it('the checklist still has its ticks, and the wait goes on', async () => {
        const { page } = await session.open();
        await page.getByRole('treeitem', { name: /Wait 1 d.*left/ }).waitFor();
        const box = page.getByRole('treeitem', { name: /Wait 1 d/ }).getByRole('checkbox');
        assert.equal(await box.getAttribute('aria-checked'), 'true');
    });
});
