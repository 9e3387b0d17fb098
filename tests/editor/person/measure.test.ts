import { strict as assert } from 'node:assert';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { faultless } from './faults.ts';
import { eventually, openTray, session } from './shared.ts';

describe('measuring, leaving out and saving the page', () => {
    const saved = () => join(session.workshop, 'heron-tray-bench.html');
    after(() => rmSync(saved(), { force: true }));

    it('is done with keys and boxes, and the page stands by itself', async () => {
        const { bench, page } = await openTray();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        const picture = bench.locator('.picture > svg');
        await picture.press('m');
        const measured = bench.locator('.measured output');
        await measured.filter({ hasText: '150 mm; 150 mm across, 0 mm down' }).waitFor();
        const end = bench.getByRole('button', { name: /^Second end of the ruler/ });
        await end.press('Shift+ArrowRight');
        await end.press('ArrowDown');
        await measured.filter({ hasText: /across, 1 mm down/ }).waitFor();
        await session.shot('ruler');
        await faultless(bench);
        await end.press('Escape');
        await measured.waitFor({ state: 'detached' });
        const burnt = bench.locator('.picture use[fill="url(#soot)"]').first();
        await burnt.waitFor({ state: 'attached' });
        const box = bench.getByRole('checkbox', { name: 'burnt colour' });
        await box.uncheck();
        await burnt.waitFor({ state: 'detached' });
        await box.check();
        await burnt.waitFor({ state: 'attached' });
        await bench.getByRole('button', { name: 'Save this page …' }).click();
        const name = page.locator('.quick-input-widget input[type="text"]');
        await name.waitFor();
        await eventually('the name to be proposed', async () => (await name.inputValue()).endsWith('heron-tray-bench.html'));
        await name.press('Enter');
        await eventually('the page', async () => existsSync(saved()) && readFileSync(saved(), 'utf8').includes('</html>'));
        const html = readFileSync(saved(), 'utf8');
        assert.match(html, /<title>Heron serving tray<\/title>/);
        assert.match(html, /\.film/);
        assert.doesNotMatch(html, /<script|<button|<input|https?:\/\/(?!www\.w3\.org)/);
    });
});
