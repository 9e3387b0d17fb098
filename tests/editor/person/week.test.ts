import { faultlessCopy, themes } from './faults.ts';
import { session } from './shared.ts';

describe('the week', () => {
    it('is asked for with its first day, shows what is ordered, and has no fault that an accessibility checker finds', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await workbench.command('View: Close All Editors');
        await workbench.openFile('order-book.kerf');
        await workbench.command('Kerfbook: Show the Week…');
        const day = page.locator('.quick-input-widget input[type="text"]');
        await page.locator('.quick-input-title', { hasText: 'The week: first working day' }).waitFor();
        await day.fill('soon');
        await page.locator('.quick-input-message', { hasText: '2026-11-26T07:30' }).waitFor();
        await day.fill('2026-12-07');
        await day.press('Enter');
        await bench
            .getByRole('heading', { name: /7 Dec 2026/ })
            .first()
            .waitFor();
        await bench.getByText('heron-tray').first().waitFor();
        for (const { label, name, body } of themes.filter(({ name }) => name === 'light' || name === 'dark')) {
            await workbench.theme(label, body);
            await session.shot(`week-${name}`);
            await faultlessCopy(workbench, bench);
        }
    });

    it('has a page of the season beside it: what runs made, spoiled, took and cost', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await workbench.command('View: Close All Editors');
        await workbench.openFile('order-book.kerf');
        await workbench.command('Kerfbook: Show the Season…');
        await page.locator('.quick-input-title', { hasText: 'The season: first and last day' }).waitFor();
        await page.locator('.quick-input-widget input[type="text"]').press('Enter');
        await bench.getByText('heron-tray').first().waitFor();
        for (const { label, name, body } of themes.filter(({ name }) => name === 'light' || name === 'contrast-dark')) {
            await workbench.theme(label, body);
            await session.shot(`season-${name}`);
            await faultlessCopy(workbench, bench);
        }
    });
});
