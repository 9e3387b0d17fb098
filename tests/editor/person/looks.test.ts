import { strict as assert } from 'node:assert';
import type { Workbench } from '../harness/workbench.ts';
import { faultless, themes } from './faults.ts';
import { atLength, openPanels, openTray, session } from './shared.ts';

const often = new Set(['light', 'contrast-dark']);

describe('the bench view in every kind of theme', () => {
    before('everything that can be opened is open', async () => {
        const { bench } = await openTray();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await bench.getByRole('slider', { name: /^Depth of/ }).waitFor();
        await openPanels(bench);
        await bench.locator('.day-book').waitFor();
    });

    for (const { label, name, body } of themes) {
        // The two that are farthest apart every time, the others with all the rest.
        (often.has(name) ? it : atLength)(`${name}: has no fault that an accessibility checker finds`, async () => {
            const workbench = await session.open();
            const { bench } = workbench;
            await workbench.theme(label, body);
            await bench.locator('.toolpath').scrollIntoViewIfNeeded();
            await session.shot(`toolpath-${name}`);
            await bench.locator('.press-section').scrollIntoViewIfNeeded();
            await session.shot(`press-${name}`);
            await bench.locator('.film').scrollIntoViewIfNeeded();
            await session.shot(`tray-${name}`);
            await faultless(bench);
        });
    }

    for (const { file, heading, name } of [
        { file: 'heron-tray-faulty.kerf', heading: /everything wrong/, name: 'faulty' },
        { file: 'tide-coaster.kerf', heading: 'Tide coaster', name: 'coaster' },
    ]) {
        it(`so it is with ${file}, as the editor has it`, async () => {
            const { bench } = await show(file, heading);
            await faultless(bench);
        });

        atLength(`so it is with ${file}, in every theme`, async () => {
            const workbench = await show(file, heading);
            for (const { label, name: theme, body } of themes) {
                await workbench.theme(label, body);
                await session.shot(`${name}-${theme}`);
                await faultless(workbench.bench);
            }
        });
    }

    async function show(file: string, heading: string | RegExp): Promise<Workbench> {
        const workbench = await session.open();
        await workbench.page.keyboard.press('Control+1');
        await workbench.openFile(file);
        await workbench.openBench();
        await workbench.bench.getByRole('heading', { name: heading, level: 1 }).waitFor();
        return workbench;
    }

    it('fits a wide window too', async () => {
        const workbench = await openTray();
        await workbench.page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).dblclick();
        await workbench.page.setViewportSize({ width: 1900, height: 1100 });
        await workbench.bench.locator('.notes').waitFor();
        const [look, notes] = await Promise.all([
            workbench.bench.locator('.look').boundingBox(),
            workbench.bench.locator('.notes').boundingBox(),
        ]);
        assert.ok(notes!.x > look!.x + look!.width, 'the notes do not stand beside the picture');
        await session.shot('tray-wide');
        await workbench.page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).dblclick();
        await workbench.page.setViewportSize({ width: 1600, height: 1000 });
    });
});
