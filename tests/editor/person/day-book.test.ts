import { strict as assert } from 'node:assert';
import { eventually, session } from './shared.ts';

describe('the day book of every kind of run', () => {
    it('tells when all is ready, from a start that is set by hand', async () => {
        const workbench = await session.open();
        await workbench.openFile('heron-tray.kerf');
        await workbench.openBench();
        const book = workbench.bench.locator('.day-book');
        await book.getByRole('heading', { name: 'Day book for 4 pieces' }).waitFor();
        const ready = book.locator('.ready');
        // Until then it is now.
        assert.match((await ready.textContent()) ?? '', /^Ready \w{3} \d+ \w{3} \d{4}, \d\d:\d\d/);
        await book.getByLabel('Started').fill('2026-11-26T08:00');
        await eventually('the dates to follow', async () =>
            ((await book.locator('.sittings > li').first().textContent()) ?? '').includes('Thu 26 Nov 2026, 08:00'),
        );
        assert.match((await ready.textContent()) ?? '', / Dec 2026, /);
    });

    it('shows how the sheets are cut, and what one piece costs', async () => {
        const { bench } = await session.open();
        await bench.getByRole('img', { name: /^Sheet 1 of walnut-12: tray, tray, tray/ }).waitFor();
        const price = bench.getByRole('row', { name: /^Price of one/ });
        await price.scrollIntoViewIfNeeded();
        assert.match((await price.textContent()) ?? '', /\d+\.\d\d EUR/);
        await session.shot('tray-day-book');
    });

    it('leads from a job to the piece after it', async () => {
        const { bench } = await session.open();
        await bench.locator('.jobs').getByRole('button', { name: 'Engrave pocket' }).first().click();
        const tab = bench.getByRole('tab', { name: /Engrave pocket/ });
        await eventually('the frame to turn', async () => (await tab.getAttribute('aria-selected')) === 'true');
    });
});
