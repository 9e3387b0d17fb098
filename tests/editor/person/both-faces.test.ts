import { strict as assert } from 'node:assert';
import { faultless, themes } from './faults.ts';
import { session } from './shared.ts';

describe('a piece with work on both faces', () => {
    it('is shown with the face that is up, and says when it was turned over', async () => {
        const workbench = await session.open();
        const { page, bench } = workbench;
        await page.keyboard.press('Control+1');
        await workbench.openFile('yard-tag.kerf');
        await workbench.openBench();
        await bench.getByRole('heading', { name: 'Yard tag', level: 1 }).waitFor();
        await bench.getByRole('tab', { name: /Engrave oars/ }).click();
        await session.shot('faces-front');
        await bench
            .getByRole('tab', { name: /Flip tag/ })
            .first()
            .click();
        await session.shot('faces-flipped');
        await bench.getByRole('tab', { name: /Engrave seat/ }).click();
        await bench.locator('.state', { hasText: 'back up' }).waitFor();
        await session.shot('faces-back');
        const sides = await bench.locator('.frame-side').allInnerTexts();
        assert.deepEqual([...new Set(sides)], ['front up', 'back up'], 'turned twice, it lies as it lay first');
        assert.equal(sides.at(-1), 'front up');
        await bench.getByRole('tab', { name: /Cut rim/ }).click();
        await session.shot('faces-cut');
        for (const { label, name, body } of themes.filter(({ name }) => name === 'dark' || name === 'contrast-dark')) {
            await workbench.theme(label, body);
            await session.shot(`faces-${name}`);
            await faultless(bench);
        }
    });
});
