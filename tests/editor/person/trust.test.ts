import { strict as assert } from 'node:assert';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser, windowAddress } from '../harness/browser.ts';
import { type CodeServer, startCodeServer } from '../harness/code-server.ts';
import { places } from '../harness/places.ts';
import { Workbench } from '../harness/workbench.ts';
import { session } from './shared.ts';

describe('a workspace that is not trusted', () => {
    const home = mkdtempSync(join(tmpdir(), 'kerfbook-trust-'));
    let server: CodeServer;
    let browser: Browser;
    let workbench: Workbench;

    before(async () => {
        server = await startCodeServer(home, true);
        browser = await launchBrowser();
        const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
        page.setDefaultTimeout(45_000);
        await page.goto(windowAddress(server, session.workshop, places.root));
        await page
            .getByText('Restricted Mode')
            .first()
            .waitFor()
            .catch(() => page.screenshot({ path: join(places.shots, 'trust-asked.png') }));
        workbench = new Workbench(page);
    });
    after(async () => {
        await browser?.close();
        server?.stop();
        rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    });

    it('has its recipes checked and shown', async () => {
        await workbench.openFile('heron-tray-faulty.kerf');
        await workbench.page.locator('.monaco-editor .squiggly-error').first().waitFor({ state: 'attached' });
        await workbench.openFile('seed-box.kerf');
        await workbench.openBench();
        await workbench.bench.getByRole('heading', { name: 'Seed box lid' }).waitFor();
    });

    it('has nothing written into it', async () => {
        rmSync(join(session.workshop, 'made'), { recursive: true, force: true });
        const { page } = workbench;
        await page.getByRole('tab', { name: /^seed-box\.kerf/ }).click();
        await workbench.command('Kerfbook: Write Files for Machine and Bench');
        await new Promise((resolve) => setTimeout(resolve, 5000));
        await page.screenshot({ path: join(places.shots, 'trust.png') });
        assert.equal(existsSync(join(session.workshop, 'made')), false);
    });
});
