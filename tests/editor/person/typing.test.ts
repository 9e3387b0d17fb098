import { strict as assert } from 'node:assert';
import { eventually, session } from './shared.ts';

describe('typing with the bench view open', () => {
    it('changes the picture and leaves the chosen frame, the zoom and the scroll alone', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        const picture = bench.locator('.picture > svg');
        await picture.focus();
        await page.keyboard.press('+');
        const transform = await picture.locator('> g').first().getAttribute('transform');
        const node = await picture.elementHandle();
        await bench.locator('body').evaluate(() => document.scrollingElement!.scrollTo(0, 40));

        await workbench.goToLine('heron-tray.kerf', 26);
        await page.keyboard.press('End');
        for (let i = 0; i < 'depth 0.54 mm'.length; i += 1) await page.keyboard.press('Backspace');
        await page.keyboard.type('depth 0.50 mm');
        await bench
            .getByText(/0\.5 mm ±/)
            .first()
            .waitFor();

        assert.equal(await bench.getByRole('tab', { name: /Engrave pocket/ }).getAttribute('aria-selected'), 'true');
        assert.equal(await picture.locator('> g').first().getAttribute('transform'), transform);
        assert.equal(await node!.evaluate((each) => each.isConnected), true, 'the picture was replaced, not patched');
        assert.equal(await bench.locator('body').evaluate(() => document.scrollingElement!.scrollTop), 40);
        await bench
            .getByRole('button', { name: /Show the whole piece/ })
            .first()
            .click();
    });

    it('keeps the picture and says so while the text is broken', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await workbench.goToLine('heron-tray.kerf', 4);
        await page.keyboard.press('Home');
        await page.keyboard.type('// ');
        await bench
            .getByRole('status')
            .getByText(/picture is of the last text/)
            .waitFor();
        assert.equal(await bench.getByRole('tab').count(), 10);
        // Nothing in it stands in the text of now, so that nothing can be written there.
        assert.equal(await bench.getByRole('button', { name: /^Change / }).count(), 0);
        await session.shot('stale');
        for (let i = 0; i < 3; i += 1) await page.keyboard.press('Backspace');
        await eventually('the banner to go', async () => (await bench.locator('.banner[role="status"]').textContent()) === '');
    });
});
