import { strict as assert } from 'node:assert';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { AT_LENGTH, places } from '../harness/places.ts';
import { Session } from '../harness/session.ts';
import type { Workbench } from '../harness/workbench.ts';

/** Set up by run.ts before the tests are loaded. */
export const session = new Session(process.env.KERFBOOK_HOME!, process.env.KERFBOOK_WORKSHOP!);

/** A test of which a shorter one sees most: `npm run editor` leaves it out, `npm run editor:all` does not. */
export function atLength(title: string, test: () => Promise<void>): void {
    it(`${title} (${AT_LENGTH})`, test);
}

/** A step of a test whose steps rest on each other: what fails is told with its name. */
export async function step(name: string, work: () => Promise<void>): Promise<void> {
    try {
        await work();
    } catch (error) {
        if (error instanceof Error) error.message = `${name}: ${error.message}`;
        // Now, since a window of the test's own is closed before anybody else can look.
        await session.shotInFront(`failed-${name.replaceAll(/\W+/g, '-')}`).catch(() => undefined);
        throw error;
    }
}

/** Names of the runs that have taken their place: until one is whole, it lies there under another name. */
export function runsIn(workshop: string): string[] {
    const folder = join(workshop, 'runs');
    return existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.kerf')) : [];
}

export async function eventually(what: string, look: () => Promise<boolean>): Promise<void> {
    const end = Date.now() + 45_000;
    while (!(await look())) {
        if (Date.now() > end) assert.fail(`Waited in vain: ${what}`);
        await new Promise((resolve) => setTimeout(resolve, 100));
    }
}

/** Puts a sample back as it is shipped: a test that failed may have left it half changed. */
function restore(name: string): void {
    const shipped = readFileSync(join(places.samples, name));
    const file = join(session.workshop, name);
    if (!shipped.equals(readFileSync(file))) writeFileSync(file, shipped);
}

/** The line of a sample, as it is shipped, that begins with these words; from 1. */
export function lineOf(name: string, words: string): number {
    const lines = readFileSync(join(places.samples, name), 'utf8').split('\n');
    const line = lines.findIndex((text) => text.trimStart().startsWith(words));
    assert.ok(line >= 0, `There is no “${words}” in ${name}.`);
    return line + 1;
}

/** The tray's recipe as it is shipped, with its bench view beside it, whatever was open before. */
export async function openTray(): Promise<Workbench> {
    const workbench = await session.open();
    restore('heron-tray.kerf');
    await workbench.page.keyboard.press('Control+1');
    await workbench.openFile('heron-tray.kerf');
    if (await workbench.page.locator('.tab.dirty.active', { hasText: 'heron-tray.kerf' }).first().isVisible())
        await workbench.command('File: Revert File');
    await workbench.openBench();
    await workbench.bench.getByRole('heading', { name: 'Heron serving tray' }).waitFor();
    return workbench;
}

/** Takes every tick away of the checklist that is shown, whatever was done before. */
export async function untickAll({ page }: Workbench): Promise<void> {
    const ticked = page.getByRole('treeitem').getByRole('checkbox', { checked: true });
    await eventually('no tick', async () => {
        const before = await ticked.count();
        if (before === 0) return true;
        await ticked
            .first()
            .click({ force: true, timeout: 2000 })
            .catch(() => undefined);
        for (let looks = 0; looks < 20 && (await ticked.count()) >= before; looks += 1) await page.waitForTimeout(100);
        return false;
    });
}

/**
 * Sets a tick with the pointer, or takes it away; a step that wants something measured asks instead. The tree may be drawn anew under the
 * pointer: a click that met the old row is made again. The editor shows the tip of a box that it gives the focus back to, and forgets it
 * where the box was drawn anew meanwhile: a key that nothing is bound to ends it.
 */
export async function setTick({ page }: Workbench, name: RegExp, wanted = true): Promise<void> {
    const box = page.getByRole('treeitem', { name }).getByRole('checkbox');
    // The command palette has no title.
    const asks = page.locator('.quick-input-title', { hasText: /\S/ }).first();
    const tip = page.locator('.hover-contents').first();
    const isSet = async () =>
        (await asks.isVisible()) ||
        (await box.getAttribute('aria-checked', { timeout: 2000 }).catch(() => '')) === String(wanted);
    await eventually(`${name} ${wanted ? 'ticked' : 'not ticked'}`, async () => {
        if (await isSet()) return true;
        await page.mouse.move(900, 700);
        await tip.waitFor({ state: 'hidden', timeout: 1000 }).catch(() => page.keyboard.press('ScrollLock'));
        await box.click({ force: true, timeout: 2000 }).catch(() => undefined);
        for (let looks = 0; looks < 20 && !(await isSet()); looks += 1) await page.waitForTimeout(100);
        // A row that was drawn anew a moment later shows what the extension knows.
        await page.waitForTimeout(400);
        return isSet();
    });
}

/** Chooses from a menu, which takes no click before it has stood a moment. */
export async function choose({ page }: Workbench, name: string): Promise<void> {
    const item = page.getByRole('menuitem', { name });
    await item.waitFor();
    await eventually('the menu to take the choice', async () => {
        await item.click({ timeout: 1000 }).catch(() => undefined);
        return !(await item.isVisible());
    });
}

/** Has what a laser step and an inlay show only when asked for: the toolpath, and both halves pressed together. */
export async function openPanels(bench: FrameLocator): Promise<void> {
    for (const [shown, asking] of [
        ['.toolpath canvas', '.toolpath button'],
        ['.press-section', '.press .pressing button'],
    ] as const) {
        if (!(await bench.locator(shown).isVisible())) await bench.locator(asking).first().click();
        await bench.locator(shown).first().waitFor();
    }
}
