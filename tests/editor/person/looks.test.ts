import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { openPanels, openTray, session } from './shared.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const themes = [
    { label: 'Light 2026', name: 'light', body: 'vscode-light' },
    { label: 'Dark 2026', name: 'dark', body: 'vscode-dark' },
    { label: 'Dark High Contrast', name: 'contrast-dark', body: 'vscode-high-contrast' },
    { label: 'Light High Contrast', name: 'contrast-light', body: 'vscode-high-contrast-light' },
];

interface Violation {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

describe('the bench view in every kind of theme', () => {
    before('everything that can be opened is open', async () => {
        const { bench } = await openTray();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await bench.getByRole('slider', { name: /^Depth of/ }).waitFor();
        await openPanels(bench);
        await bench.locator('.day-book').waitFor();
    });

    for (const { label, name, body } of themes) {
        it(`${name}: has no fault that an accessibility checker finds`, async () => {
            const workbench = await session.open();
            const { bench } = workbench;
            await workbench.theme(label, body);
            await bench.locator('.toolpath').scrollIntoViewIfNeeded();
            await session.shot(`toolpath-${name}`);
            await bench.locator('.press-section').scrollIntoViewIfNeeded();
            await session.shot(`press-${name}`);
            await bench.locator('.film').scrollIntoViewIfNeeded();
            await session.shot(`tray-${name}`);
            const page = bench.locator('body');
            await page.evaluate((_body, source) => new Function(source)(), axe);
            const violations = await page.evaluate(async (element) => {
                const { axe } = globalThis as unknown as { axe: { run(on: Element): Promise<{ violations: Violation[] }> } };
                return (await axe.run(element)).violations;
            });
            assert.deepEqual(
                violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 120)} ${nodes[0]!.failureSummary ?? ''}`),
                [],
            );
        });
    }

    it('fits a wide window too', async () => {
        const workbench = await session.open();
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
