import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchBrowser } from '../harness/browser.ts';
import { places } from '../harness/places.ts';
import { faultlessPage } from './faults.ts';
import { quickPlate } from './quick-plate.ts';
import { eventually, runsIn, session } from './shared.ts';

const recipe = quickPlate('3 s "the smoke clears"').replace('  wait', '  check pocket { depth 0.25 .. 0.35 mm }\n  wait');

/** A telephone in a gloved hand, with no network. */
const hand = { viewport: { width: 390, height: 800 }, hasTouch: true, isMobile: true, acceptDownloads: true } as const;
/** What a finger in a glove meets, px. */
const finger = 44;

describe('the page for a tablet', () => {
    let browser: Browser;
    let context: BrowserContext;
    let page: Page;
    const out = mkdtempSync(join(tmpdir(), 'kerfbook-tablet-'));
    const address = pathToFileURL(join(out, 'quick', 'tablet.html')).toString();

    before(async () => {
        writeFileSync(join(session.workshop, 'quick.kerf'), recipe);
        const cli = join(places.root, 'dist/cli.cjs');
        execFileSync(process.execPath, [cli, 'build', 'quick.kerf', '--out', out], { cwd: session.workshop, stdio: 'ignore' });
        browser = await launchBrowser();
    });
    after(async () => {
        await browser.close();
        rmSync(out, { recursive: true, force: true });
        rmSync(join(session.workshop, 'runs'), { recursive: true, force: true });
    });
    beforeEach(async () => {
        context = await browser.newContext(hand);
        await context.setOffline(true);
        page = await context.newPage();
        await page.goto(address);
    });
    afterEach(() => context.close());

    for (const colorScheme of ['light', 'dark'] as const) {
        it(`has no fault that an accessibility checker finds, and targets for gloved hands (${colorScheme})`, async () => {
            await page.emulateMedia({ colorScheme });
            await page.locator('.tick').first().tap();
            await page.locator('summary').first().tap();
            await faultlessPage(browser, { ...hand, colorScheme }, await page.content());
            const small = await page.evaluate((least) => {
                const touched = [
                    ...document.querySelectorAll('.tick, button, summary, input:not([type=checkbox]), select, textarea'),
                ];
                return touched
                    .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < least)
                    .map(({ outerHTML }) => outerHTML.slice(0, 80));
            }, finger);
            assert.deepEqual(small, []);
            const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
            assert.ok(wide <= 0, `${wide} px stick out`);
        });
    }

    it('is ticked, counts a wait down, rings, and is as it was after it has been closed', async () => {
        await page.getByLabel('Engrave pocket').tap();
        await page.getByLabel(/^depth of pocket/).fill('0,4');
        await page.getByText('More than it should be').waitFor();
        await page.getByLabel(/^depth of pocket/).fill('0,31');
        await page.getByText('More than it should be').waitFor({ state: 'detached' });
        await page.getByLabel('Wait 3 s').tap();
        await page.getByText(/0:0\d left/).waitFor();
        await page.getByText('The wait is over', { exact: true }).waitFor();
        assert.match((await page.locator('#say').textContent()) ?? '', /the wait is over\.$/);
        await page.close();
        page = await context.newPage();
        await page.goto(address);
        await page.getByText('2 of 3 done').waitFor();
        assert.equal(await page.getByLabel('Engrave pocket').isChecked(), true);
        assert.equal(await page.getByLabel(/^depth of pocket/).inputValue(), '0,31');
    });

    it('gives back a run, which the editor takes in; a second time changes nothing', async () => {
        await page.getByLabel('Engrave pocket').tap();
        await page.getByLabel(/^depth of pocket/).fill('0.31');
        await page.getByLabel('What went well or wrong?').fill('On the tablet.');
        const [download] = await Promise.all([
            page.waitForEvent('download'),
            page.getByRole('button', { name: 'Save the run' }).tap(),
        ]);
        const name = download.suggestedFilename();
        assert.match(name, /^\d{4}-\d\d-\d\d-quick-[a-z2-9]{5}\.kerf$/);
        const saved = join(out, name);
        await download.saveAs(saved);

        const workbench = await session.open();
        await (await workbench.inExplorer('quick.kerf')).dblclick();
        await workbench.page.getByRole('tab', { name: /^quick\.kerf/, selected: true }).waitFor();
        for (const said of ['taken in as', 'has been taken in before']) {
            await workbench.command('Notifications: Clear All Notifications');
            await workbench.command('Kerfbook: Take In a Run');
            await workbench.page.locator('.quick-input-title', { hasText: 'as it was saved on the tablet' }).waitFor();
            const take = workbench.page.getByRole('button', { name: 'Take In' });
            // A dialog that still reads its folder takes no click, and puts the folder's name over what was typed.
            await eventually('the dialog to take the file', async () => {
                await workbench.page.locator('.quick-input-widget input[type="text"]').fill(saved);
                await take.click({ timeout: 1000 }).catch(() => undefined);
                return take.waitFor({ state: 'hidden', timeout: 2000 }).then(
                    () => true,
                    () => false,
                );
            });
            await workbench.page.getByText(said).first().waitFor();
            assert.deepEqual(runsIn(session.workshop), [name]);
        }
        const run = readFileSync(join(session.workshop, 'runs', name), 'utf8');
        assert.match(run, /^run quick .*\n {2}of plan [0-9a-f]{8}\n/);
        assert.match(run, /engrave pocket of walnut-12 .* depth 0\.31 mm\n {2}note "On the tablet\."\n\}/);
        await session.shot('tablet-taken-in');
    });
});
