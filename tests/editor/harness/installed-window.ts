import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { LOADING, launchBrowser, windowAddress, workbenchOn } from './browser.ts';
import { startCodeServer } from './code-server.ts';
import { places } from './places.ts';
import { Workbench } from './workbench.ts';

/** A window on a workshop of its own, with the extension installed as its users have it: here the editor shows messages. */
export interface InstalledWindow {
    readonly workbench: Workbench;
    readonly workshop: string;
    /** Closes the window in order, so that everything it keeps is written, and opens it again after a while (ms). */
    reopen(later: number): Promise<void>;
    close(): Promise<void>;
}

/** @param restricted whether the workshop is not trusted */
export async function openInstalled(restricted = false): Promise<InstalledWindow> {
    const home = mkdtempSync(join(tmpdir(), 'kerfbook-installed-'));
    const workshop = join(home, 'workshop');
    cpSync(places.samples, workshop, { recursive: true });
    const server = await startCodeServer(home, { restricted, installed: true });
    const browser = await launchBrowser();
    const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
    page.setDefaultTimeout(45_000);
    page.setDefaultNavigationTimeout(LOADING);
    const workbench = new Workbench(page);
    const open = async () => {
        await page.goto(windowAddress(server, workshop), { waitUntil: 'domcontentloaded' });
        await workbenchOn(page);
    };
    const reopen = async (later: number) => {
        const gone = page.waitForEvent('domcontentloaded');
        await workbench.command('Developer: Reload Window');
        await gone;
        await page.goto('about:blank');
        await sleep(later);
        await open();
    };
    const close = async () => {
        await browser.close();
        server.stop();
        rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    };
    await open().catch(async (error) => {
        await close();
        throw error;
    });
    return { workbench, workshop, reopen, close };
}
