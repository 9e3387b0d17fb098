import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type InstalledWindow, openInstalled } from '../harness/installed-window.ts';
import { places } from '../harness/places.ts';
import type { Workbench } from '../harness/workbench.ts';
import { quickPlate } from './quick-plate.ts';
import { eventually, step } from './shared.ts';

const quick = quickPlate('30 min "the smoke clears"');

/** From the open recipe to the finished run: nothing here touches the mouse. */
describe('the whole way with the keyboard alone', () => {
    let window: InstalledWindow;
    let workbench: Workbench;
    let page: Page;

    beforeEach(async () => {
        window = await openInstalled();
        workbench = window.workbench;
        page = workbench.page;
        writeFileSync(join(window.workshop, 'quick.kerf'), quick);
        const git = (...args: string[]) =>
            execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@shop.example', ...args], {
                cwd: window.workshop,
                stdio: 'pipe',
            });
        git('init', '--quiet');
        git('add', '--all');
        git('commit', '--quiet', '--message', 'as it was');
    });
    afterEach(() => window?.close());

    const input = () => page.locator('.quick-input-widget input[type="text"]');

    const command = (title: string) => workbench.commandByKeys(title);

    /** Tabs on inside of a page of ours until what is looked for has the keyboard. */
    async function tabTo(wanted: string, most = 60): Promise<void> {
        const found = workbench.bench.locator(wanted).first();
        await found.waitFor({ state: 'attached' });
        for (let tabs = 0; tabs < most; tabs += 1) {
            if (await found.evaluate((each) => each === each.ownerDocument.activeElement)) return;
            await page.keyboard.press('Tab');
        }
        throw new Error(`${wanted} is not reached by Tab.`);
    }

    const row = (name: RegExp) => page.getByRole('treeitem', { name });
    const ticked = async (name: RegExp) => (await row(name).getByRole('checkbox').getAttribute('aria-checked')) === 'true';

    it('leads from an open recipe to its finished run', async function () {
        this.timeout(300_000);
        await step('opens a recipe and its bench view', async () => {
            await page.keyboard.press('Control+p');
            await input().waitFor();
            await page.keyboard.type('quick.kerf');
            await page.locator('.quick-input-list .monaco-list-row.focused', { hasText: 'quick.kerf' }).waitFor();
            await page.keyboard.press('Enter');
            await page.locator('.codelens-decoration').first().waitFor();
            await page.keyboard.press('Control+k');
            await page.keyboard.press('b');
            await workbench.bench.getByRole('heading', { name: 'Quick plate' }).waitFor();
        });

        await step('changes the frame and moves the line of the section', async () => {
            const { bench } = workbench;
            await page.keyboard.press('Control+2');
            await tabTo('[role=tab][tabindex="0"]');
            await page.keyboard.press('Home');
            await page.keyboard.press('ArrowRight');
            const tab = bench.getByRole('tab', { name: /Engrave pocket/ });
            await eventually('the frame to turn', async () => (await tab.getAttribute('aria-selected')) === 'true');
            await tabTo('[role=slider][aria-label="Section line"]');
            const line = bench.getByRole('slider', { name: 'Section line' });
            const before = await line.getAttribute('aria-valuetext');
            await page.keyboard.press('Shift+ArrowDown');
            await eventually('the line to move', async () => (await line.getAttribute('aria-valuetext')) !== before);
        });

        await step('types over a depth and leads from a step to the text', async () => {
            const { bench } = workbench;
            await tabTo('button[aria-label^="Change depth of Engrave pocket"]');
            await page.keyboard.press('Enter');
            await bench.getByRole('textbox', { name: /^New depth of Engrave pocket/ }).waitFor();
            await page.keyboard.press('Control+a');
            await page.keyboard.type('0.4 mm');
            await page.keyboard.press('Enter');
            await bench.getByRole('button', { name: 'Change depth of Engrave pocket, 0.4 mm' }).waitFor();
            await page.screenshot({ path: join(places.shots, 'keys-depth.png') });
        });

        await step('ticks a step and starts the time of a wait', async () => {
            await command('Kerfbook: Focus on Checklist View');
            await row(/^Engrave pocket/).waitFor();
            await eventually('the first step to be reached', async () => {
                // From the cautions, which are first: an arrow pressed once too often would lead past it.
                await page.keyboard.press('Home');
                await page.keyboard.press('ArrowDown');
                return row(/^Engrave pocket/).evaluate((each) => each.classList.contains('focused'));
            });
            await page.keyboard.press('Space');
            await eventually('the tick', () => ticked(/^Engrave pocket/));
            await page.keyboard.press('ArrowDown');
            await page.keyboard.press('Space');
            await row(/^Wait 30 min.*left/).waitFor();
            await page.screenshot({ path: join(places.shots, 'keys-checklist.png') });
        });

        await step('compares with what was committed, and leads from a change to its line', async () => {
            await page.keyboard.press('Control+1');
            await command('Kerfbook: Compare with Committed');
            await page.getByRole('tab', { name: /^Compare: quick\.kerf/, selected: true }).waitFor();
            await workbench.bench.getByRole('row', { name: /^depth 0\.3 mm 0\.4 mm/ }).waitFor();
            await page.keyboard.press('Control+2');
            await tabTo('td a');
            await page.screenshot({ path: join(places.shots, 'keys-compare.png') });
            await page.keyboard.press('Enter');
            await workbench.atLine(7);
        });

        await step('finishes the run and shows it', async () => {
            await command('Kerfbook: Finish the Run');
            await page.locator('.quick-input-title', { hasText: 'Engrave pocket: depth of pocket' }).waitFor();
            await page.keyboard.type('0.31 mm');
            await page.keyboard.press('Enter');
            await page.locator('.quick-input-title', { hasText: 'Finish the run of Quick plate' }).waitFor();
            await page.keyboard.type('Clean at the first go.');
            await page.keyboard.press('Enter');
            await workbench.answer(/Run of Quick plate written to runs/, 'Show');
            await page.getByText('Clean at the first go.').first().waitFor();
            await page.getByText('depth 0.31 mm').first().waitFor();
        });
    });
});
