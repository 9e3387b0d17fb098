import { strict as assert } from 'node:assert';
import type { Locator } from 'playwright-core';
import { eventually, openPanels, openTray, session } from './shared.ts';

describe('what is changed in the bench view', () => {
    before(openTray);

    const textAt = async (line: number) => {
        const workbench = await session.open();
        await workbench.goToLine('heron-tray.kerf', line);
        const lines = await workbench.page.locator('.editor-instance .view-line').allTextContents();
        // The editor shows spaces that do not break.
        return lines.join('\n').replaceAll('\u00a0', ' ');
    };

    /** One change or more: as fast as the keys were written down. Undone once too often, what a test before did would come back. */
    const undoUntil = async (back: Locator, most = 2) => {
        const { page } = await session.open();
        for (let undone = 0; undone < most && !(await back.isVisible()); undone += 1) {
            await page.keyboard.press('Control+z');
            await back.waitFor({ timeout: 4000 }).catch(() => undefined);
        }
        await back.waitFor();
    };

    it('a number typed over is written into the text, and undone there', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).click();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await bench.getByRole('button', { name: /^Change depth of Engrave pocket/ }).click();
        await bench.getByRole('textbox', { name: /^New depth of Engrave pocket/ }).fill('0.6 mm');
        await session.shot('type-over');
        await page.keyboard.press('Enter');
        await bench.getByRole('button', { name: 'Change depth of Engrave pocket, 0.6 mm' }).waitFor();
        assert.match(await textAt(26), /depth 0\.6 mm/);
        await page.keyboard.press('Control+z');
        await bench.getByRole('button', { name: /^Change depth of Engrave pocket, 0\.5/ }).waitFor();
    });

    it('what is no number there is refused, and said so', async () => {
        const { bench, page } = await session.open();
        await bench.getByRole('button', { name: /^Change depth of Engrave pocket/ }).click();
        await bench.getByRole('textbox', { name: /^New depth of Engrave pocket/ }).fill('3 h');
        await page.keyboard.press('Enter');
        await bench
            .getByRole('alert')
            .getByText(/cannot be written here/)
            .waitFor();
    });

    it('the floor in the section moved with the keyboard changes the depth in the text', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        const floor = bench.getByRole('slider', { name: 'Depth of Engrave pocket' });
        const written = bench.getByRole('button', { name: /^Change depth of Engrave pocket, / });
        // As it is written, which may be `0.50 mm`: what is undone comes back letter by letter.
        const before = ((await written.getAttribute('aria-label')) ?? '').replace(/^.*, /, '');
        await floor.focus();
        await page.keyboard.press('Shift+ArrowDown');
        await page.keyboard.press('ArrowUp');
        const wanted = `${(Number.parseFloat(before) + 0.09).toFixed(2).replace(/0+$/, '')} mm`;
        await bench.getByRole('button', { name: `Change depth of Engrave pocket, ${wanted}` }).waitFor();
        await session.shot('depth-grip');
        assert.ok((await textAt(26)).includes(`depth ${wanted}`));
        await undoUntil(bench.getByRole('button', { name: `Change depth of Engrave pocket, ${before}` }));
    });

    it('keys that come while an earlier change is being written count as well', async () => {
        const { bench, page } = await session.open();
        const floor = bench.getByRole('slider', { name: 'Depth of Engrave pocket' });
        const before = Number(await floor.getAttribute('aria-valuenow'));
        await floor.focus();
        await page.keyboard.press('ArrowDown');
        // Just after the first has been sent.
        await new Promise((resolve) => setTimeout(resolve, 530));
        await page.keyboard.press('ArrowDown');
        const wanted = `${(before + 0.02).toFixed(2).replace(/0+$/, '')} mm`;
        await bench.getByRole('button', { name: `Change depth of Engrave pocket, ${wanted}` }).waitFor();
        assert.ok((await textAt(26)).includes(`depth ${wanted}`));
        await undoUntil(bench.locator(`[role=slider][aria-label="Depth of Engrave pocket"][aria-valuenow="${before}"]`));
    });

    it('what the text refuses goes back to where the text has it', async () => {
        const { bench, page } = await session.open();
        const floor = bench.getByRole('slider', { name: 'Depth of Engrave pocket' });
        const before = await floor.getAttribute('aria-valuetext');
        await floor.focus();
        await page.keyboard.press('Shift+ArrowDown');
        assert.notEqual(await floor.getAttribute('aria-valuetext'), before);
        await floor.evaluate(() => postMessage({ type: 'refused', why: 'The text was changed meanwhile.' }));
        await eventually('the floor to go back', async () => (await floor.getAttribute('aria-valuetext')) === before);
        await bench.getByRole('alert').getByText('changed meanwhile').waitFor();
    });

    it('the machine’s way is replayed by time, with the keyboard', async () => {
        const { bench, page } = await session.open();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await openPanels(bench);
        const slider = bench.getByRole('slider', { name: 'Time into the step' });
        await slider.focus();
        await page.keyboard.press('Home');
        assert.match((await slider.getAttribute('aria-valuetext')) ?? '', /^0 s of \d+ min/);
        for (let i = 0; i < 4; i += 1) await page.keyboard.press('PageUp');
        assert.match((await slider.getAttribute('aria-valuetext')) ?? '', /^\d+ min.* of \d+ min: pocket, pass \d of 3/);
        const inked = await bench.locator('.toolpath canvas').evaluate((canvas: HTMLCanvasElement) => {
            const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
            return data.filter((_, index) => index % 4 === 3 && data[index]! > 0).length;
        });
        assert.ok(inked > 2000, `only ${inked} dots are drawn`);
        await slider.scrollIntoViewIfNeeded();
        await session.shot('toolpath');
    });

    it('art moved with the keyboard, or dragged, is moved in the text', async () => {
        const { bench, page } = await session.open();
        const grip = bench.getByRole('button', { name: /^Place of art heron/ });
        const start = bench.getByRole('button', { name: 'Place of art heron: 150, 100 mm' });
        // What a first try may have left.
        if (!(await start.isVisible())) await undoUntil(start, 6);
        await grip.focus();
        await page.keyboard.press('Shift+ArrowRight');
        await page.keyboard.press('ArrowUp');
        await bench.getByRole('button', { name: 'Place of art heron: 160, 99 mm' }).waitFor();
        await eventually('the text to follow', async () => /art heron at 160, 99 mm/.test(await textAt(25)));
        // The picture may be drawn anew under the pointer: a drag that met the old one is made again.
        await eventually('the art to be elsewhere', async () => {
            const box = (await grip.locator('.reach').boundingBox())!;
            const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
            await page.mouse.move(x, y);
            await page.mouse.down();
            await page.mouse.move(x - 30, y + 20, { steps: 5 });
            await session.shot('drag-art');
            await page.mouse.up();
            await page.waitForTimeout(1000);
            return !/160, 99 mm/.test((await grip.getAttribute('aria-label')) ?? '160, 99 mm');
        });
        await eventually('the text to follow', async () => !/at 160, 99 mm/.test(await textAt(25)));
        await undoUntil(start, 3);
    });
});
