import { strict as assert } from 'node:assert';
import { eventually, lineOf, openTray, session } from './shared.ts';

describe('typing with the bench view open', () => {
    before(openTray);

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

        await workbench.goToLine('heron-tray.kerf', lineOf('heron-tray.kerf', 'depth 0.54 mm'));
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

    it('keeps up with a storm of keys without a flicker', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        const picture = bench.locator('.picture > svg');
        await picture.focus();
        await page.keyboard.press('+');
        const transform = await picture.locator('> g').first().getAttribute('transform');
        const chosen = await bench.getByRole('tab', { selected: true }).getAttribute('id');
        await bench.locator('body').evaluate(() => {
            const seen = { frames: 0, without: 0, sizes: new Set<number>() };
            Object.assign(globalThis, { seen });
            const look = () => {
                const svg = document.querySelector('.picture > svg');
                seen.frames += 1;
                if (svg === null || svg.querySelector('use') === null) seen.without += 1;
                else seen.sizes.add(Math.round(svg.getBoundingClientRect().width));
                requestAnimationFrame(look);
            };
            look();
        });
        await workbench.goToLine('heron-tray.kerf', lineOf('heron-tray.kerf', 'depth 0.54 mm'));
        await page.keyboard.press('End');
        for (let round = 0; round < 4; round += 1) {
            // Broken half of the time: "depth 0.50", "depth 0.", "depth 0.5 m".
            for (let i = 0; i < 5; i += 1) await page.keyboard.press('Backspace', { delay: 8 });
            await page.keyboard.type(round % 2 === 0 ? '57 mm' : '50 mm', { delay: 15 });
        }
        await bench
            .getByText(/0\.5 mm ±/)
            .first()
            .waitFor();
        const seen = await bench.locator('body').evaluate(() => {
            const { frames, without, sizes } = (
                globalThis as unknown as { seen: { frames: number; without: number; sizes: Set<number> } }
            ).seen;
            return { frames, without, sizes: sizes.size };
        });
        assert.ok(seen.frames > 10);
        assert.deepEqual({ without: seen.without, sizes: seen.sizes }, { without: 0, sizes: 1 });
        assert.equal(await picture.locator('> g').first().getAttribute('transform'), transform);
        assert.equal(await bench.getByRole('tab', { selected: true }).getAttribute('id'), chosen);
        await eventually('the banner to go', async () => (await bench.locator('.banner[role="status"]').textContent()) === '');
        await bench
            .getByRole('button', { name: /Show the whole piece/ })
            .first()
            .click();
    });

    it('keeps the last good picture while a step is broken', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await workbench.goToLine('heron-tray.kerf', lineOf('heron-tray.kerf', 'depth 0.54 mm'));
        const facts = bench.locator('.steps > li').first().locator('.facts').first();
        const before = await facts.textContent();
        await page.keyboard.press('End');
        await page.keyboard.type(' {');
        await bench
            .getByRole('status')
            .getByText(/picture is of the last text that could be read/)
            .waitFor();
        assert.equal(await facts.textContent(), before);
        await page.keyboard.press('Backspace');
        await page.keyboard.press('Backspace');
        await eventually('the banner to go', async () => (await bench.locator('.banner[role="status"]').textContent()) === '');
        await bench.getByRole('button', { name: /^Change depth of Engrave pocket/ }).waitFor();
    });

    it('keeps the picture and says so while the text is broken', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await workbench.goToLine('heron-tray.kerf', 4);
        await page.keyboard.press('Home');
        await page.keyboard.type('// ');
        await bench
            .getByRole('status')
            .getByText(/picture is of the last text that could be read/)
            .waitFor();
        assert.equal(await bench.getByRole('tab').count(), 10);
        // Nothing in it stands in the text of now, so that nothing can be written there.
        assert.equal(await bench.getByRole('button', { name: /^Change / }).count(), 0);
        await session.shot('stale');
        for (let i = 0; i < 3; i += 1) await page.keyboard.press('Backspace');
        await eventually('the banner to go', async () => (await bench.locator('.banner[role="status"]').textContent()) === '');
    });
});
