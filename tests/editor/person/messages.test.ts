import { strict as assert } from 'node:assert';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type InstalledWindow, openInstalled } from '../harness/installed-window.ts';
import { whileLocked } from '../harness/locked-file.ts';
import { places } from '../harness/places.ts';
import type { Workbench } from '../harness/workbench.ts';
import { quickPlate } from './quick-plate.ts';
import { atLength, eventually, runsIn, untickAll } from './shared.ts';

/** Its waits are over while one looks on. */
const quick = quickPlate('4 s "the smoke clears"', '8 s "the dust settles"');

describe('what the editor tells the maker', () => {
    let window: InstalledWindow;
    let workbench: Workbench;
    let page: Page;
    const file = () => readFileSync(join(window.workshop, 'quick.kerf'), 'utf8');

    const runs = () => runsIn(window.workshop);

    before(async () => {
        window = await openInstalled();
        workbench = window.workbench;
        page = workbench.page;
    });
    after(() => window?.close());

    /** The recipe as it was, with no tick and no run, and no message of an earlier test. */
    beforeEach(async () => {
        writeFileSync(join(window.workshop, 'quick.kerf'), quick);
        rmSync(join(window.workshop, 'runs'), { recursive: true, force: true });
        await workbench.command('Notifications: Clear All Notifications');
        await showQuick();
        await untickAll(workbench);
    });

    async function showQuick(): Promise<void> {
        await (await workbench.inExplorer('quick.kerf')).dblclick();
        await workbench.command('Kerfbook: Focus on Checklist View');
        await page.getByText(/^Quick plate, issue 1/).waitFor();
    }

    const row = (name: RegExp) => page.getByRole('treeitem', { name });
    const ticked = async (name: RegExp) => (await row(name).getByRole('checkbox').getAttribute('aria-checked')) === 'true';

    /** Sets a tick with the keyboard, or takes it away. */
    async function toggle(name: RegExp): Promise<void> {
        const before = await ticked(name);
        const isChanged = async () => (await ticked(name)) !== before;
        // The tree may be drawn anew between the row and the key: a key that met nothing is pressed again.
        await eventually('the tick to change', async () => {
            await row(name).click();
            await page.keyboard.press('Space');
            for (let looks = 0; looks < 30 && !(await isChanged()); looks += 1) await page.waitForTimeout(100);
            return isChanged();
        });
    }

    it('a wait that is over is told whatever is in front, and leads to its checklist', async () => {
        await toggle(/^Wait 4 s/);
        await workbench.openFile('seed-box.kerf');
        await page.getByText(/^Seed box lid, issue 1/).waitFor();
        const message = workbench.message('quick: “Wait 4 s” (the smoke clears) is over since');
        await message.waitFor();
        await page.locator('.statusbar').getByText('quick: wait is over').waitFor();
        await page.screenshot({ path: join(places.shots, 'message-wait-over.png') });
        await message.getByRole('button', { name: 'Show Checklist' }).click();
        await row(/^Wait 4 s.*wait is over/).waitFor();
        await page.locator('.statusbar').getByText('quick: wait is over').waitFor({ state: 'hidden' });
        await message.waitFor({ state: 'hidden' });
    });

    it('a wait that ended while the window was closed is told when it is opened again', async () => {
        await toggle(/^Wait 8 s/);
        await window.reopen(8000);
        const message = workbench.message('quick: “Wait 8 s” (the dust settles) is over since');
        await message.waitFor();
        // The editor takes the message away after a while; the bell stays.
        await message.waitFor({ state: 'hidden' });
        await page.locator('.statusbar').getByText('quick: wait is over').click();
        await row(/^Wait 8 s.*wait is over/).waitFor();
        await page.locator('.statusbar').getByText('quick: wait is over').waitFor({ state: 'hidden' });
    });

    it('a finished run is taken back with the keyboard', async () => {
        await toggle(/^Engrave pocket/);
        await finish();
        await workbench.answer(/Run of Quick plate written to runs/, 'Take Back');
        await eventually('no run', async () => runs().length === 0);
        await eventually('the ticks', () => ticked(/^Engrave pocket/));
    });

    it('a run is not written below a recipe that cannot be saved, and every tick stays', async () => {
        const box = /^Engrave pocket/;
        await toggle(box);
        const settings = join(window.workshop, '.vscode', 'settings.json');
        mkdirSync(join(window.workshop, '.vscode'), { recursive: true });
        writeFileSync(settings, '{ "kerfbook.checklist.writeRuns": "belowRecipe" }');
        await new Promise((resolve) => setTimeout(resolve, 8000)); // nothing on the page shows that it was read
        await whileLocked(join(window.workshop, 'quick.kerf'), async () => {
            await answerAll();
            await workbench.message('The file could not be saved, so the run was not written. Every tick is kept.').waitFor();
        });
        rmSync(settings);
        assert.equal(file(), quick);
        assert.equal(await ticked(box), true);
        const lines = page.locator('.monaco-editor[data-uri$="/quick.kerf"] .view-lines').first();
        const text = ((await lines.textContent()) ?? '').replaceAll('\u00a0', ' ');
        assert.ok(!text.includes('run quick'), 'the run still stands in the text');
    });

    atLength('a finished run is shown in the text', async () => {
        await toggle(/^Engrave pocket/);
        await finish();
        await workbench.message('Run of Quick plate').getByRole('button', { name: 'Show', exact: true }).click();
        await page.getByRole('tab', { name: new RegExp(`^${runs()[0]}`), selected: true }).waitFor();
        rmSync(join(window.workshop, 'runs'), { recursive: true });
    });

    atLength('a run of a recipe whose file is gone is not written until it is saved again', async () => {
        const box = /^Engrave pocket/;
        await toggle(box);
        rmSync(join(window.workshop, 'quick.kerf'));
        await page
            .locator('.tab.dirty, .tab', { hasText: 'quick.kerf' })
            .locator('.strikethrough, .deleted')
            .or(page.locator('.tab .label-name.strikethrough, .tab .monaco-icon-label.strikethrough'))
            .first()
            .waitFor();
        await workbench.command('Kerfbook: Finish the Run');
        await writeAllTheSame().click();
        await workbench
            .message(/quick\.kerf is no longer there, so the run could not be written.* Every tick is kept\./)
            .waitFor();
        assert.equal(await ticked(box), true);
        await page.getByRole('tab', { name: /^quick\.kerf/ }).click();
        await workbench.command('File: Save');
        await eventually('the file to be there again', async () => existsSync(join(window.workshop, 'quick.kerf')));
        assert.equal(file(), quick);
        assert.equal(await ticked(box), true);
    });

    async function finish(): Promise<void> {
        await answerAll();
        await eventually('the run in a file', async () => runs().length === 1);
    }

    const writeAllTheSame = () => page.getByRole('button', { name: 'Write', exact: true });

    async function answerAll(): Promise<void> {
        await workbench.command('Kerfbook: Finish the Run');
        const open = writeAllTheSame();
        const asks = page.locator('.quick-input-title', { hasText: 'Finish the run of Quick plate' });
        const depth = page.locator('.quick-input-title', { hasText: 'depth of pocket' });
        await open.or(asks).or(depth).first().waitFor();
        if (await open.isVisible()) await open.click();
        await asks.or(depth).first().waitFor();
        // Enter leaves it out.
        if (await depth.isVisible()) await page.keyboard.press('Enter');
        await asks.waitFor();
        await page.keyboard.press('Enter');
    }
});
