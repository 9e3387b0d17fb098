import { strict as assert } from 'node:assert';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { faultless } from './faults.ts';
import { eventually, openTray, session } from './shared.ts';

describe('the piece in the round', () => {
    const saved = () => join(session.workshop, 'heron-tray-tray.png');
    after(() => rmSync(saved(), { force: true }));

    it('is shown, turned with keys and light, and saved as a picture', async () => {
        const { bench, page } = await openTray();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await bench.getByRole('button', { name: 'Show it in the round' }).click();
        const picture = bench.locator('.round canvas');
        await picture.waitFor();
        await picture.scrollIntoViewIfNeeded();
        // Of a canvas without anything on it, a screenshot compresses to next to nothing.
        await eventually('the piece', async () => (await picture.screenshot()).length > 20_000);
        await session.shot('round');
        const turned = async (key: string): Promise<void> => {
            const before = await picture.screenshot();
            await picture.press(key);
            await eventually(`another picture after ${key}`, async () => !(await picture.screenshot()).equals(before));
        };
        for (const key of ['ArrowRight', 'ArrowUp', '+', 'L', 'T']) await turned(key);
        await session.shot('round-turned');
        await faultless(bench);
        await bench.getByRole('button', { name: 'Save picture …' }).click();
        const name = page.locator('.quick-input-widget input[type="text"]');
        await name.waitFor();
        await eventually('the name to be proposed', async () => (await name.inputValue()).endsWith('heron-tray-tray.png'));
        await name.press('Enter');
        await eventually('the picture', async () => existsSync(saved()));
        const head = readFileSync(saved());
        assert.equal(head.subarray(1, 4).toString('latin1'), 'PNG');
        assert.equal(head.readUInt32BE(16), 2000);
        await bench.locator('.round').getByRole('button', { name: 'Close' }).click();
        await picture.waitFor({ state: 'detached' });
    });
});
