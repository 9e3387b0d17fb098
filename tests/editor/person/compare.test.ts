import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { places } from '../harness/places.ts';
import type { Workbench } from '../harness/workbench.ts';
import { faultlessCopy, themes } from './faults.ts';
import { atLength, choose, eventually, session } from './shared.ts';

const file = 'heron-tray.kerf';

const who = ['-c', 'user.name=A', '-c', 'user.email=a@shop.example'];

/** Runs git in the workshop. An editor that looks into the repository at this moment may hold its lock, so again then. */
async function git(...args: string[]): Promise<void> {
    for (let tries = 0; ; tries += 1) {
        try {
            execFileSync('git', [...who, ...args], { cwd: session.workshop, stdio: 'pipe' });
            return;
        } catch (error) {
            if (tries === 20 || !/\.lock': File exists/.test(String((error as { stderr?: Buffer }).stderr))) throw error;
            await new Promise((resolve) => setTimeout(resolve, 250));
        }
    }
}

const shipped = readdirSync(places.samples).filter((name) => name.endsWith('.kerf'));

const committed = (name: string) => execFileSync('git', ['show', `HEAD:${name}`], { cwd: session.workshop, encoding: 'utf8' });

/** The text as it was committed. */
let lines: readonly string[] = [];

/** Types over a line of the committed text, in place of what stands there now. */
async function typeOver(workbench: Workbench, words: string, instead: string): Promise<void> {
    const line = lines.findIndex((text) => text.includes(words));
    await workbench.goTo(file, line + 1, lines[line]!.indexOf(words) + 1);
    await workbench.page.keyboard.press('Home');
    await workbench.page.keyboard.press('Shift+End');
    await workbench.page.keyboard.type(lines[line]!.trim().replace(words, instead));
}

describe('comparing a recipe with what was committed', () => {
    let workbench: Workbench;
    let page: FrameLocator;

    before(async () => {
        workbench = await session.open();
        page = workbench.bench;
        await workbench.saveAll();
        await git('init', '--quiet', '--initial-branch', 'main');
        // Whatever other tests have written. Where the editor is writing at that moment, a file may be committed half, so again then.
        await eventually('the samples to be committed as they are shipped', async () => {
            cpSync(places.samples, session.workshop, { recursive: true });
            await git('add', '--all');
            await git('commit', '--quiet', '--allow-empty', '--message', 'as it was');
            return shipped.every((name) => readFileSync(join(places.samples, name), 'utf8') === committed(name));
        });
        lines = committed(file).split('\n');
        await git('tag', 'first');
    });

    /** The workshop as it was committed, with this file open and nothing else. */
    async function begin(name = file): Promise<void> {
        await workbench.saveAll();
        await git('reset', '--quiet', '--hard', 'first');
        await workbench.command('View: Close All Editors');
        await workbench.openFile(name);
    }

    const changed = () => page.getByRole('row', { name: /^depth 0\.54 mm 0\.58 mm/ });

    /** A depth typed over, with its comparison beside it: as an earlier test has left it, or from the start. */
    async function beginComparison(): Promise<void> {
        if (await changed().isVisible()) return;
        await begin();
        await typeOver(workbench, 'depth 0.54 mm', 'depth 0.58 mm');
        await workbench.command('Kerfbook: Compare with Committed');
        await changed().waitFor({ state: 'attached' });
    }

    it('shows what was typed and not yet saved, with pictures', async () => {
        await begin();
        await typeOver(workbench, 'depth 0.54 mm', 'depth 0.60 mm');
        await workbench.command('Kerfbook: Compare with Committed');
        await page.getByRole('heading', { name: 'Engrave pocket' }).waitFor();
        await page.getByRole('row', { name: /^depth 0\.54 mm 0\.6 mm \+0\.06 mm/ }).waitFor();
        await page.getByRole('img', { name: /^tray/ }).first().waitFor();
        await workbench.page.getByRole('tab', { name: /^Compare: heron-tray\.kerf/ }).waitFor();
    });

    it('follows the text and stays where it was scrolled to', async () => {
        await beginComparison();
        const deep = page.getByText('The piece, step by step');
        await deep.scrollIntoViewIfNeeded();
        const before = (await deep.boundingBox())!.y;
        // What has as many rows: one more would stand above and move the rest.
        await typeOver(workbench, 'depth 0.54 mm', 'depth 0.59 mm');
        await page.getByRole('row', { name: /^depth 0\.54 mm 0\.59 mm/ }).waitFor({ state: 'attached' });
        await eventually('the page to be where it was', async () => {
            const box = await deep.boundingBox();
            return box !== null && Math.abs(box.y - before) < 60;
        });
    });

    for (const { label, name, body } of themes) {
        (name === 'contrast-light' ? it : atLength)(`${name}: has no fault that an accessibility checker finds`, async () => {
            await beginComparison();
            await workbench.theme(label, body);
            await page.locator('h1').first().scrollIntoViewIfNeeded();
            await session.shot(`compare-${name}`);
            await page.getByText('The piece, step by step').scrollIntoViewIfNeeded();
            await session.shot(`compare-${name}-film`);
            await faultlessCopy(workbench, page);
        });
    }

    it('leads from a change to its line', async () => {
        await beginComparison();
        const line = lines.findIndex((text) => text.includes('depth 0.54 mm')) + 1;
        await workbench.goToLine(file, 1);
        await page
            .getByRole('row', { name: /^depth 0\.54 mm/ })
            .getByRole('link', { name: 'depth' })
            .click();
        await workbench.atLine(line);
    });

    const nothing = () => page.getByText('Nothing that matters differs.');

    /** A change that is committed differs no more, and again once the commit is taken back. */
    async function seesNewCommit(): Promise<void> {
        await git('commit', '--quiet', '--all', '--message', 'deeper');
        await nothing().waitFor({ state: 'attached' });
        await git('reset', '--quiet', 'HEAD~1');
        await changed().waitFor({ state: 'attached' });
    }

    it('sees a new commit by itself', async () => {
        await beginComparison();
        await workbench.saveAll();
        await seesNewCommit();
    });

    atLength('sees a new commit also where git keeps its own outside of the workspace', async () => {
        await beginComparison();
        await workbench.saveAll();
        const [store, outside] = [join(session.workshop, '.git'), `${session.workshop}.store`];
        renameSync(store, outside);
        writeFileSync(store, `gitdir: ${outside}\n`);
        try {
            await workbench.command('View: Close All Editors');
            await workbench.openFile(file);
            await workbench.command('Kerfbook: Compare with Committed');
            await changed().waitFor({ state: 'attached' });
            await seesNewCommit();
        } finally {
            rmSync(store);
            renameSync(outside, store);
        }
    });

    it('compares with a revision that is chosen', async () => {
        await begin();
        await workbench.command('Kerfbook: Compare with Revision…');
        await workbench.page.locator('.quick-input-list .monaco-list-row', { hasText: 'first' }).first().click();
        await page.getByText('Nothing that matters differs.').waitFor();
        await workbench.page.getByRole('tab', { name: /^Compare: heron-tray\.kerf with first/ }).waitFor();
    });

    async function showVariants(): Promise<void> {
        await begin('tray-variants.kerf');
        await workbench.command('Kerfbook: Show Variants Side by Side');
        await page.getByRole('columnheader', { name: 'Large heron tray' }).waitFor();
    }

    async function showHistory(): Promise<void> {
        await begin();
        await workbench.command('Kerfbook: Show History of Runs');
        await page.getByRole('heading', { name: /^2026-11-20, issue 3, on shed/ }).waitFor();
    }

    it('sets the variants of a recipe side by side', async () => {
        await showVariants();
        await page.getByRole('row', { name: /^size 300 x 200 mm 360 x 206 mm 300 x 200 mm/ }).waitFor();
        await faultlessCopy(workbench, page);
    });

    it('shows how the runs went, against the revision that they followed', async () => {
        await showHistory();
        await page.getByRole('row', { name: /^pocket of walnut-12 depth 0\.54 mm ± 0\.\d+ mm 0\.53 mm 98 %/ }).waitFor();
        await page.getByRole('img', { name: /^walnut-12 on shed, power by all runs/ }).waitFor();
        await faultlessCopy(workbench, page);
        await page.getByRole('link', { name: /^2026-10-02/ }).click();
        const line = lines.findIndex((text) => text.startsWith('run heron-tray 2026-10-02')) + 1;
        await workbench.atLine(line);
    });

    for (const [what, show] of [
        ['variants', showVariants],
        ['history', showHistory],
    ] as const) {
        atLength(`${what}: have no fault in any theme`, async () => {
            await show();
            for (const { label, name, body } of themes) {
                await workbench.theme(label, body);
                await session.shot(`${what}-${name}`);
                await faultlessCopy(workbench, page);
            }
        });
    }

    describe('from menus', () => {
        it('compares two files that are selected in the explorer', async () => {
            await begin();
            await workbench.command('View: Close All Editors');
            await workbench.command('View: Show Explorer');
            const tree = workbench.page.getByRole('tree', { name: 'Files Explorer' });
            // The tree may be drawn anew between two clicks, and forget what was selected.
            await eventually('a menu for both', async () => {
                await workbench.page.keyboard.press('Escape');
                await tree.getByRole('treeitem', { name: 'heron-tray.kerf' }).click();
                await tree.getByRole('treeitem', { name: 'tide-coaster.kerf' }).click({ modifiers: ['Control'] });
                await tree.getByRole('treeitem', { name: 'tide-coaster.kerf' }).click({ button: 'right' });
                const item = workbench.page.getByRole('menuitem', { name: 'Compare Selected Recipes' });
                return item.waitFor({ timeout: 5000 }).then(
                    () => true,
                    () => false,
                );
            });
            await choose(workbench, 'Compare Selected Recipes');
            await page.getByText('heron-tray → tide-coaster: heron-tray.kerf → tide-coaster.kerf').waitFor();
            await session.shot('compare-selected');
        });

        it('is offered where source control shows a change', async () => {
            await begin();
            await workbench.command('View: Close All Editors');
            const deeper = lines.map((text) => text.replace('depth 0.54 mm', 'depth 0.58 mm')).join('\n');
            writeFileSync(join(session.workshop, file), deeper);
            // The tests' editor leaves git alone otherwise.
            mkdirSync(join(session.workshop, '.vscode'), { recursive: true });
            writeFileSync(join(session.workshop, '.vscode/settings.json'), '{ "git.enabled": true }');
            try {
                await session.reload();
                const row = workbench.page.locator('.scm-view .monaco-list-row', { hasText: file }).first();
                const tab = workbench.page.getByRole('tab', { name: /^Source Control/ }).first();
                // A window that comes up may bring back the view that was in front; a second click on what is in front would hide it.
                for (let looks = 0; looks < 6 && !(await row.isVisible()); looks += 1) {
                    if ((await tab.getAttribute('aria-selected')) !== 'true') await tab.click();
                    await row.waitFor({ timeout: 10_000 }).catch(() => undefined);
                }
                await row.click({ button: 'right' });
                await choose(workbench, 'Compare with Committed');
                await page.getByRole('row', { name: /^depth 0\.54 mm 0\.58 mm/ }).waitFor();
                await session.shot('compare-from-source-control');
            } finally {
                rmSync(join(session.workshop, '.vscode'), { recursive: true, force: true });
                await git('checkout', '--', '.');
                await workbench.page
                    .getByRole('tab', { name: /^Explorer/ })
                    .first()
                    .click();
            }
        });
    });
});
