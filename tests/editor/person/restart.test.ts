import { strict as assert } from 'node:assert';
import { eventually, lineOf, openPanels, openTray, session } from './shared.ts';

describe('after the window has been closed and opened again', () => {
    let left: Awaited<ReturnType<typeof look>>;

    before(async () => {
        const workbench = await openTray();
        const { bench, page } = workbench;
        await workbench.command('Kerfbook: Focus on Checklist View');
        const wait = page.getByRole('treeitem', { name: /Wait 1 d/ }).getByRole('checkbox');
        await eventually('the wait to run', async () => {
            if ((await wait.getAttribute('aria-checked')) !== 'true') await wait.click().catch(() => undefined);
            return page.getByRole('treeitem', { name: /Wait 1 d.*left/ }).isVisible();
        });
        await page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).click();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await openPanels(bench);
        await bench.locator('.picture > svg').focus();
        await page.keyboard.press('+');
        await bench.getByRole('slider', { name: 'Section line' }).focus();
        await page.keyboard.press('Shift+ArrowUp');
        await bench.getByLabel('Started').fill('2026-11-26T08:00');
        await bench.locator('body').evaluate(() => document.scrollingElement!.scrollTo(0, 300));
        await eventually('the page to be still', async () => (await look()).scroll === 300);
        left = await look();
        await session.reload();
    });

    async function look() {
        const { bench } = await session.open();
        return {
            zoomed: await bench.locator('.picture > svg > g').first().getAttribute('transform'),
            cut: await bench.getByRole('slider', { name: 'Section line' }).getAttribute('aria-valuetext'),
            start: await bench.getByLabel('Started').inputValue(),
            scroll: await bench.locator('body').evaluate(() => document.scrollingElement!.scrollTop),
        };
    }

    it('the bench view is back, at the same frame', async () => {
        const { bench, page } = await session.open();
        await page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).click();
        const tab = bench.getByRole('tab', { name: /Engrave pocket/ });
        await tab.waitFor();
        await session.shot('restart');
        assert.equal(await tab.getAttribute('aria-selected'), 'true');
    });

    it('what was open and how closely it was looked at is back as well', async () => {
        const { bench } = await session.open();
        await bench.locator('.toolpath canvas').waitFor();
        await bench.locator('.press-section').waitFor();
        await eventually('the page to be where it was', async () => (await look()).scroll === left.scroll);
        assert.deepEqual(await look(), left);
        await session.shot('restart-open');
    });

    it('the checklist still has its ticks, and the wait goes on', async () => {
        const { page } = await session.open();
        await page.getByRole('treeitem', { name: /Wait 1 d.*left/ }).waitFor();
        const box = page.getByRole('treeitem', { name: /Wait 1 d/ }).getByRole('checkbox');
        assert.equal(await box.getAttribute('aria-checked'), 'true');
    });

    describe('pages beside a recipe', () => {
        const heading = /^2026-11-20, issue 3, on shed/;

        it('come back when they are looked at, each about what it was about, and lead into the text', async () => {
            const workbench = await session.open();
            const { bench, page } = workbench;
            const open = async (file: string, command: string) => {
                await page.keyboard.press('Control+1');
                await workbench.openFile(file);
                await workbench.command(command);
            };
            await workbench.command('View: Close All Editors');
            await open('heron-tray.kerf', 'Kerfbook: Compare with Committed');
            await bench
                .getByText(/does not lie in a git repository|Nothing that matters differs|Engrave pocket/)
                .first()
                .waitFor();
            await open('tray-variants.kerf', 'Kerfbook: Show Variants Side by Side');
            await bench.getByRole('columnheader', { name: 'Large heron tray' }).waitFor();
            await open('heron-tray.kerf', 'Kerfbook: Show History of Runs');
            await bench.getByRole('heading', { name: heading }).waitFor();
            await session.reload();
            await bench.getByRole('heading', { name: heading }).waitFor();
            await page.getByRole('tab', { name: /^Variants: / }).click();
            await bench.getByRole('columnheader', { name: 'Large heron tray' }).waitFor();
            await page.getByRole('tab', { name: /^Runs: heron-tray/ }).click();
            await bench.getByRole('link', { name: /^2026-10-02/ }).click();
            await workbench.atLine(lineOf('heron-tray.kerf', 'run heron-tray 2026-10-02'));
        });

        it('also those that were not looked at since the restart before', async () => {
            const workbench = await session.open();
            const { bench, page } = workbench;
            await session.reload();
            await page.getByRole('tab', { name: /^Compare: heron-tray\.kerf/ }).click();
            await bench
                .getByText(/does not lie in a git repository|Nothing that matters differs|Engrave pocket/)
                .first()
                .waitFor();
            await session.shot('restart-pages');
            await workbench.command('View: Close All Editors');
        });
    });
});
