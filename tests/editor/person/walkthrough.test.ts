import { strict as assert } from 'node:assert';
import { session } from './shared.ts';

const steps = [
    'A folder for the workshop',
    'Begin a recipe',
    'See the piece after every step',
    'Know what your laser does to this wood',
    'Take it to the machine and the bench',
    'Tick it off at the bench',
    'Review before the next board',
];

describe('the walkthrough', () => {
    it('leads from a drawing to a finished piece, each step with its own drawing', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        // Beside other editors there is no room for the drawings.
        await workbench.command('View: Close All Editors');
        await workbench.command('Kerfbook: Show the Way from a Drawing to a Finished Piece');
        await page.getByRole('heading', { name: 'Kerfbook: from a drawing to a finished piece', level: 2 }).waitFor();
        for (const [index, name] of steps.entries()) {
            const step = page.locator('.getting-started-step', { hasText: name });
            await step.first().click();
            await page.locator('.getting-started-step.expanded', { hasText: name }).waitFor();
            const media = page.frameLocator('.getting-started-media iframe.webview.ready').frameLocator('iframe#active-frame');
            await media.locator('svg').first().waitFor();
            await new Promise((resolve) => setTimeout(resolve, 400));
            await session.shot(`walkthrough-${index + 1}`);
        }
        assert.equal(await page.locator('.getting-started-step').count(), steps.length);
        await page.keyboard.press('Control+F4');
    });
});
