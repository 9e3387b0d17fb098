import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from '../harness/browser.ts';
import { places } from '../harness/places.ts';

/** Width and height between the margins, in mm. */
const papers = { A4: [182, 268], Letter: [187.9, 250.4] } as const;

/** Pages that a sheet may take: one more for each handful of steps. */
const most: Readonly<Record<string, number>> = {
    'heron-tray-faulty': 10,
    moonrise: 9,
    'show-moonrise': 9,
    'winter-token': 6,
    'yard-tag': 6,
    'quay-trivet': 8,
};

describe('a job sheet on paper', () => {
    let browser: Browser;
    let page: Page;
    const out = mkdtempSync(join(tmpdir(), 'kerfbook-print-'));

    before(async () => {
        execFileSync(process.execPath, [join(places.root, 'dist/cli.cjs'), 'build', '--force', '--out', out], {
            cwd: places.samples,
            stdio: 'ignore',
        });
        browser = await launchBrowser();
        page = await browser.newPage();
    });
    after(async () => {
        await browser.close();
        rmSync(out, { recursive: true, force: true });
    });

    for (const paper of ['A4', 'Letter'] as const) {
        it(`fits ${paper}: nothing sticks out, no step is longer than a page, cautions first`, async () => {
            const [width, height] = papers[paper].map((mm) => Math.floor((mm * 96) / 25.4)) as [number, number];
            await page.emulateMedia({ media: 'print' });
            await page.setViewportSize({ width, height });
            for (const recipe of readdirSync(out)) {
                await page.goto(pathToFileURL(join(out, recipe, 'job-sheet.html')).toString());
                const wrong = await page.evaluate((tallest) => {
                    const all = [...document.querySelectorAll('body *')];
                    const wide = all.filter(
                        (each) => each.getBoundingClientRect().right > document.documentElement.clientWidth + 1,
                    );
                    const tall = [...document.querySelectorAll('li, tr')].filter(
                        (each) => each.getBoundingClientRect().height > tallest,
                    );
                    return [...wide, ...tall].map((each) => `${each.tagName} ${each.textContent?.slice(0, 60)}`);
                }, height);
                assert.deepEqual(wrong, [], recipe);
                const headings = await page.locator('h2').allTextContents();
                assert.equal(headings[0], 'Cautions', recipe);
                const boxes = await page.locator('.steps > li > .box').count();
                assert.equal(boxes, await page.locator('.steps > li').count());
                const pdf = (await page.pdf({ format: paper })).toString('latin1');
                const pages = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
                assert.ok(pages >= 1 && pages <= (most[recipe] ?? 5), `${recipe}: ${pages} pages`);
            }
        });
    }
});
