import { strict as assert } from 'node:assert';
import { decode } from 'fast-png';
import type { Locator } from 'playwright-core';
import { touchColour } from '../../../shared/bench/gap-scale.ts';
import { eventually, session } from './shared.ts';

describe('both halves pressed together', () => {
    it('is begun, stopped and begun again with the keyboard alone, and tells how far it is', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await page.keyboard.press('Control+1');
        await workbench.openFile('heron-tray.kerf');
        await workbench.openBench();
        const press = bench.locator('.press');
        // A good machine is done in less than a second: what comes and goes is noted down, not waited for.
        await press.evaluate((element) => {
            const watch = new MutationObserver(() => {
                const bar = element.querySelector('[aria-label="Pressing"]');
                if (bar !== null) element.setAttribute('data-seen', `${bar.getAttribute('role') ?? bar.tagName}`);
                const button = element.querySelector('.pressing button')?.textContent ?? '';
                if (button.trim() === 'Stop') element.setAttribute('data-stop', 'seen');
            });
            watch.observe(element, { childList: true, subtree: true });
        });
        await press.getByRole('button', { name: /^Press (the halves|again)$/ }).focus();
        await page.keyboard.press('Enter');
        // The same button stops it; whoever looks first finds it done on a good machine.
        await page.keyboard.press('Enter');
        await press.getByText(/^Nothing to show: it was stopped/).waitFor();
        const again = press.getByRole('button', { name: 'Press again' });
        assert.equal(await focused(again), true, 'the keyboard has lost its place');
        await page.keyboard.press('Enter');
        await press.getByRole('status').getByText('the veneer lies on its glue all over').waitFor();
        await press.locator('.press-section').waitFor();
        assert.equal(await focused(again), true, 'the keyboard has lost its place');
        assert.match((await press.getAttribute('data-seen')) ?? 'nothing', /^progress/i);
        assert.equal(await press.getAttribute('data-stop'), 'seen');
    });

    it('its map of gaps is let through by the page’s own policy and is really drawn', async () => {
        const { bench } = await session.open();
        const size = await bench.locator('.gaps image').evaluate(async (element) => {
            const refused: string[] = [];
            document.addEventListener('securitypolicyviolation', (event) => refused.push(event.effectiveDirective));
            const picture = new Image();
            picture.src = element.getAttribute('href')!;
            await picture.decode();
            return { width: picture.naturalWidth, refused };
        });
        assert.ok(size.width > 100);
        assert.deepEqual(size.refused, []);
        assert.equal(await dots(bench.locator('.gaps > svg'), touchColour), 0, 'something touches in a good inlay');
        await bench.locator('.press').scrollIntoViewIfNeeded();
        await session.shot('pressed');
    });

    it('shows at a glance that a half was not mirrored', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await page.keyboard.press('Control+1');
        await workbench.openFile('heron-tray-faulty.kerf');
        await workbench.openBench();
        const halves = bench.locator('section.inlay').first();
        await halves.locator('.verdict', { hasText: 'Turned over it is the wrong way round and does not go in' }).waitFor();
        // Where it would land is seen before anything is turned.
        await halves.getByText('lands on wood', { exact: true }).waitFor();
        await halves.getByText('stays empty', { exact: true }).first().waitFor();
        await halves.scrollIntoViewIfNeeded();
        await session.shot('halves-not-mirrored');
        const press = bench.locator('.press').first();
        await press.getByRole('button', { name: 'Press the halves' }).click();
        await press.locator('.verdict', { hasText: 'One half has to be the mirror image of the other' }).waitFor();
        const map = press.locator('.gaps > svg');
        await map.scrollIntoViewIfNeeded();
        await eventually('what touches to be coloured', async () => (await dots(map, touchColour)) > 1500);
        await session.shot('pressed-not-mirrored');
        await page.getByRole('tab', { name: /^heron-tray\.kerf/ }).click();
        await page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).click();
    });
});

/** How many dots of a picture on the screen are of about that colour. */
async function dots(element: Locator, colour: string): Promise<number> {
    const { data, channels } = decode(await element.screenshot());
    const wanted = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
    let count = 0;
    for (let at = 0; at < data.length; at += channels) {
        if (wanted.every((value, k) => Math.abs(data[at + k]! - value) < 24)) count += 1;
    }
    return count;
}

function focused(element: Locator): Promise<boolean> {
    return element.evaluate((each) => each === each.ownerDocument.activeElement);
}
