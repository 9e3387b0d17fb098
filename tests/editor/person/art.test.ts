import { strict as assert } from 'node:assert';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { eventually, session } from './shared.ts';

// First, since what is copied in the explorer stays on a clipboard of the editor's own.
describe('art brought in from outside of the workspace', () => {
    const made = (name: string) => join(session.workshop, 'art', name);

    it('a picture that is pasted is copied beside the recipe, and undo takes both away', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
        await page.keyboard.press('Control+1');
        await workbench.openFile('seed-box.kerf');
        await page.evaluate(async () => {
            const canvas = document.createElement('canvas');
            canvas.width = canvas.height = 60;
            canvas.getContext('2d')!.fillRect(10, 10, 40, 40);
            const png = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve));
            await navigator.clipboard.write([new ClipboardItem({ 'image/png': png! })]);
        });
        await workbench.goToLine('seed-box.kerf', 19);
        await page.keyboard.press('Control+v');
        await eventually('the line', async () => (await text()).includes('art image "art/image.png"'));
        await eventually('the file', async () => existsSync(made('image.png')));
        await session.shot('art-pasted-picture');
        await page.keyboard.press('Control+z');
        await eventually('both to be gone', async () => !(await text()).includes('image.png') && !existsSync(made('image.png')));
    });

    it('a drawing that is dropped is copied under a name that nothing has yet', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await page.keyboard.press('Control+1');
        await workbench.openFile('seed-box.kerf');
        const line = page.locator('.monaco-editor[data-uri$="/seed-box.kerf"] .view-line').nth(7);
        const at = (await line.boundingBox())!;
        const dataTransfer = await page.evaluateHandle(() => {
            const data = new DataTransfer();
            const drawing =
                '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm"><rect width="30" height="30"/></svg>';
            data.items.add(new File([drawing], 'heron.svg', { type: 'image/svg+xml' }));
            return data;
        });
        const event = { dataTransfer, clientX: at.x + 60, clientY: at.y + at.height / 2, shiftKey: true };
        for (const name of ['dragenter', 'dragover', 'dragover', 'drop']) {
            await line.dispatchEvent(name, { ...event, bubbles: true, cancelable: true });
            await new Promise((resolve) => setTimeout(resolve, 300));
        }
        await eventually('the line', async () => (await text()).includes('"art/heron-2.svg"'));
        assert.match(readFileSync(made('heron-2.svg'), 'utf8'), /width="40mm"/);
        assert.doesNotMatch(readFileSync(made('heron.svg'), 'utf8'), /width="40mm" height="40mm"><rect/);
        await page.keyboard.press('Control+1');
        await page.keyboard.press('Control+z');
        await eventually('both to be gone', async () => !(await text()).includes('heron-2') && !existsSync(made('heron-2.svg')));
    });
});

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
