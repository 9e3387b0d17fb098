import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { LOADING, launchBrowser, windowAddress, workbenchOn } from './browser.ts';
import { type CodeServer, startCodeServer } from './code-server.ts';
import { places } from './places.ts';
import { developInBrowser, type ServedExtension, serveExtension } from './served-extension.ts';
import { Workbench } from './workbench.ts';

/** One VS Code for all tests of a run, since starting it takes longer than the tests. */
export class Session {
    private server: CodeServer | undefined;
    private browser: Browser | undefined;
    private page: Page | undefined;
    private workbench: Workbench | undefined;
    private served: ServedExtension | undefined;
    /** Everything the window asked the network for. */
    readonly requests: string[] = [];
    readonly home: string;
    readonly workshop: string;

    constructor(home: string, workshop: string) {
        this.home = home;
        this.workshop = workshop;
    }

    async open(): Promise<Workbench> {
        if (this.workbench !== undefined) return this.workbench;
        // A second try goes on with what the first has started: a busy machine is not to carry two of each.
        this.server ??= await startCodeServer(this.home);
        this.browser ??= await launchBrowser();
        this.page ??= await this.newPage(this.browser);
        await this.load(this.page);
        this.workbench = new Workbench(this.page);
        return this.workbench;
    }

    private async newPage(browser: Browser): Promise<Page> {
        const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
        page.setDefaultTimeout(45_000);
        page.setDefaultNavigationTimeout(LOADING);
        page.on('request', (request) => this.requests.push(request.url()));
        return page;
    }

    /** The same window again, as after a restart of the editor: closed in order, so that everything it keeps is written. */
    async reload(): Promise<void> {
        const workbench = await this.open();
        const gone = workbench.page.waitForEvent('domcontentloaded');
        await workbench.command('Developer: Reload Window');
        await gone;
        await this.ready(workbench.page);
    }

    /** A second window, whose extensions run in the browser alone, without Node. */
    async openBrowserOnly(): Promise<Workbench> {
        await this.open();
        this.served = await serveExtension();
        // The page's own policy would forbid it to fetch an extension from another port.
        const page = await this.browser!.newPage({ viewport: { width: 1600, height: 1000 }, bypassCSP: true });
        page.setDefaultTimeout(45_000);
        await developInBrowser(page, this.served);
        await page.goto(windowAddress(this.server!, this.workshop));
        await this.ready(page);
        return new Workbench(page);
    }

    async shot(name: string): Promise<void> {
        const { page } = await this.open();
        await page.screenshot({ path: join(places.shots, `${name}.png`) });
    }

    /** Whatever window is in front, which may be one of a test's own. */
    async shotInFront(name: string): Promise<void> {
        const page = Workbench.latest?.isClosed() === false ? Workbench.latest : this.workbench?.page;
        await page?.screenshot({ path: join(places.shots, `${name}.png`) });
    }

    async close(): Promise<void> {
        await this.browser?.close();
        this.served?.stop();
        this.server?.stop();
    }

    private async load(page: Page): Promise<void> {
        await page.goto(windowAddress(this.server!, this.workshop, places.root), { waitUntil: 'domcontentloaded' });
        await this.ready(page);
    }

    private async ready(page: Page): Promise<void> {
        await workbenchOn(page);
    }
}
