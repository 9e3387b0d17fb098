import { strict as assert } from 'node:assert';
import { eventually, session } from './shared.ts';

describe('art brought into a recipe', () => {
    it('is declared and used when it is copied in the explorer and pasted into a step', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
        await workbench.openFile('seed-box.kerf');
        await (await workbench.inExplorer('tide-rings.svg', 'art')).click();
        await page.keyboard.press('Control+c');
        await workbench.openFile('seed-box.kerf');
        await workbench.goToLine('seed-box.kerf', 19);
        await page.keyboard.press('Control+v');
        await eventually(
            'both lines',
            async () =>
                (await text()).includes('art tide-rings "art/tide-rings.svg"') &&
                (await text()).split('art tide-rings').length === 3,
        );
        await session.shot('art-pasted');
        await page.keyboard.press('Control+z');
        await eventually('both to be gone at once', async () => !(await text()).includes('tide-rings'));
    });

    it('is declared when it is dragged from the explorer onto the recipe', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await workbench.openFile('seed-box.kerf');
        const from = (await (await workbench.inExplorer('gull.png', 'art')).boundingBox())!;
        const to = (await page.locator('.monaco-editor[data-uri$="/seed-box.kerf"] .view-line').nth(7).boundingBox())!;
        await page.mouse.move(from.x + 40, from.y + from.height / 2);
        await page.mouse.down();
        await page.keyboard.down('Shift');
        await page.mouse.move(to.x + 60, to.y - 30, { steps: 8 });
        await page.mouse.move(to.x + 60, to.y + to.height / 2, { steps: 8 });
        await new Promise((resolve) => setTimeout(resolve, 500));
        await page.mouse.up();
        await page.keyboard.up('Shift');
        await eventually('the line', async () => (await text()).includes('art gull "art/gull.png"'));
        await session.shot('art-dropped');
        await page.keyboard.press('Control+1');
        await page.keyboard.press('Control+z');
        await eventually('it to be gone', async () => !(await text()).includes('gull.png'));
        assert.equal(await page.locator('.tab.dirty', { hasText: 'seed-box.kerf' }).count(), 0);
    });
});

async function text(): Promise<string> {
    const { page } = await session.open();
    const lines = page.locator('.monaco-editor[data-uri$="/seed-box.kerf"] .view-lines').first();
    return ((await lines.textContent()) ?? '').replaceAll('\u00a0', ' ');
}
