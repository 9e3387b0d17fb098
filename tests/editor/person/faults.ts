import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, FrameLocator } from 'playwright-core';
import type { Workbench } from '../harness/workbench.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const themes = [
    { label: 'Light 2026', name: 'light', body: 'vscode-light' },
    { label: 'Dark High Contrast', name: 'contrast-dark', body: 'vscode-high-contrast' },
    { label: 'Light High Contrast', name: 'contrast-light', body: 'vscode-high-contrast-light' },
    { label: 'Dark 2026', name: 'dark', body: 'vscode-dark' },
];

interface Violation {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

type WithAxe = { readonly axe: { run(on?: Element): Promise<{ violations: Violation[] }> } };

/** An accessibility checker finds nothing in a page in which scripts run. */
export async function faultless(bench: FrameLocator): Promise<void> {
    const body = bench.locator('body');
    await body.evaluate((_body, source) => new Function(source)(), axe);
    none(await body.evaluate(async (element) => (await (globalThis as unknown as WithAxe).axe.run(element)).violations));
}

/** The same of a page outside of the editor whose policy lets no checker in: it looks at a copy, without what the page runs. */
export async function faultlessPage(browser: Browser, how: BrowserContextOptions, html: string): Promise<void> {
    const context = await browser.newContext(how);
    try {
        const copy = await context.newPage();
        await copy.setContent(html.replace(/<meta http-equiv[^>]*>/g, '').replaceAll(/<script>[\s\S]*?<\/script>/g, ''));
        await copy.evaluate((source) => new Function(source)(), axe);
        none(await copy.evaluate(async () => (await (globalThis as unknown as WithAxe).axe.run()).violations));
    } finally {
        await context.close();
    }
}

/** The same of a page in which nothing runs: the checker looks at a copy of it, colours and all. */
export async function faultlessCopy(workbench: Workbench, page: FrameLocator): Promise<void> {
    const html = await page.locator('html').evaluate((element) => element.outerHTML);
    const copy = await workbench.page.context().browser()!.newPage();
    try {
        await copy.setContent(html.replace(/<meta http-equiv[^>]*>/g, ''));
        await copy.evaluate((source) => new Function(source)(), axe);
        none(await copy.evaluate(async () => (await (globalThis as unknown as WithAxe).axe.run()).violations));
    } finally {
        await copy.close();
    }
}

function none(violations: readonly Violation[]): void {
    const told = violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 120)} ${nodes[0]!.failureSummary ?? ''}`);
    assert.deepEqual(told, []);
}
