import { strict as assert } from 'node:assert';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { eventually, runsIn, session, setTick, step, untickAll } from './shared.ts';

const file = () => readFileSync(join(session.workshop, 'quick.kerf'), 'utf8');
const runs = () => runsIn(session.workshop);
const day = () => new Date().toLocaleDateString('sv');

/** A recipe of our own, with a wait that is over while one looks on. */
const quick = `use "workshop.kerf"

recipe quick "Quick plate" {
  revision 1
  laser shed
  art heron "art/heron.svg" { width 60 mm }
  blank plate { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on plate { art heron  depth 0.3 mm  scan across grain  air off }
  check pocket { depth 0.25 .. 0.35 mm }
  wait 6 s "the smoke clears"
  sand plate { take 0.05 mm  grits 180, 240 }
}
`;

describe('a run at the bench', () => {
    before(async () => {
        writeFileSync(join(session.workshop, 'quick.kerf'), quick);
        const workbench = await session.open();
        await (await workbench.inExplorer('quick.kerf')).dblclick();
        await workbench.page.getByRole('tab', { name: /^quick\.kerf/, selected: true }).waitFor();
        await workbench.command('Kerfbook: Focus on Checklist View');
        await workbench.page.getByText('Quick plate, issue 1').waitFor();
    });

    const box = async (name: RegExp) => (await session.open()).page.getByRole('treeitem', { name }).getByRole('checkbox');
    const ticked = async (name: RegExp) => (await (await box(name)).getAttribute('aria-checked')) === 'true';

    const tick = async (name: RegExp) => setTick(await session.open(), name);

    it('is ticked with the keyboard alone', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        await untickAll(workbench);
        await page.getByRole('treeitem', { name: /^Check pocket/ }).click();
        await page.keyboard.press('ArrowUp');
        await page.keyboard.press('Space');
        await eventually('the tick', () => ticked(/^Engrave pocket/));
        await page.keyboard.press('Space');
        await eventually('no tick', async () => !(await ticked(/^Engrave pocket/)));
        await page.keyboard.press('Space');
        await eventually('the tick', () => ticked(/^Engrave pocket/));
        await page.getByText('1 of 4 steps done').waitFor();
    });

    it('asks what a check wants measured, and says when it is not as wished', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        if (await ticked(/^Check pocket/)) await untickAll(workbench);
        await tick(/^Check pocket/);
        const input = page.locator('.quick-input-widget input[type="text"]');
        await page.locator('.quick-input-title', { hasText: 'depth of pocket' }).waitFor();
        await input.fill('deep');
        await page.locator('.quick-input-message', { hasText: 'A length, such as 0.52 mm' }).waitFor();
        await input.fill('0.4 mm');
        await page.locator('.quick-input-message', { hasText: '0.4 mm is more than it should be' }).waitFor();
        await session.shot('run-measure');
        await input.fill('0.31 mm');
        await page.keyboard.press('Enter');
        await page.getByRole('treeitem', { name: /^Check pocket.*measured depth 0\.31 mm/ }).waitFor();
    });

    it('shows that a wait is over', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        if (await ticked(/^Wait 6 s/)) await untickAll(workbench);
        await tick(/^Wait 6 s/);
        await page.getByRole('treeitem', { name: /^Wait 6 s.*left/ }).waitFor();
        await page.getByRole('treeitem', { name: /^Wait 6 s.*wait is over/ }).waitFor();
        await session.shot('run-wait-over');
    });

    /** Every step ticked, whatever was done before, and what the check wants measured told. */
    const tickAll = async () => {
        const { page } = await session.open();
        const done = page.getByText('4 of 4 steps done');
        // A run that was undone just before gives its ticks back in its own time: one of them may go again under the pointer.
        for (let rounds = 0; rounds < 3 && !(await done.isVisible()); rounds++) {
            for (const name of [/^Engrave pocket/, /^Check pocket/, /^Wait 6 s/, /^Sand plate/]) {
                if (await ticked(name)) continue;
                await tick(name);
                const asks = page.locator('.quick-input-title', { hasText: 'depth of pocket' });
                if (!(await asks.isVisible())) continue;
                await page.locator('.quick-input-widget input[type="text"]').fill('0.31 mm');
                await page.keyboard.press('Enter');
                await asks.waitFor({ state: 'hidden' });
            }
            await done.waitFor({ timeout: 3000 }).catch(() => undefined);
        }
        await done.waitFor();
    };

    it('is written into a file of its own when it is finished, and taken back with it', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        rmSync(join(session.workshop, 'runs'), { recursive: true, force: true });
        await workbench.command('Notifications: Clear All Notifications'); // a try before may have left its message
        await tickAll();
        const before = file();
        await step('finish', async () => {
            await finish('Clean at the first go.');
            await eventually('the run in a file', async () => runs().length === 1);
            const [name = ''] = runs();
            assert.match(name, new RegExp(`^${day()}-quick-[a-z2-9]{5}\\.kerf$`));
            const run = readFileSync(join(session.workshop, 'runs', name), 'utf8');
            assert.ok(run.startsWith(`run quick ${day()} {\n  of plan `), run);
            assert.match(run, /pocket of walnut-12 \d+ % at \d+ mm\/s.* planned 0\.3\d* mm \+- 0\.\d+ mm depth 0\.31 mm\n/);
            assert.match(run, /note "Clean at the first go\."/);
            assert.equal(file(), before);
            await eventually('no tick', async () => !(await ticked(/^Engrave pocket/)));
            await session.shot('run-finished');
        });
        await step('take back', async () => {
            const back = page.getByRole('button', { name: 'Take Back' });
            // A message that nobody answers goes into the list of messages after a while.
            if (!(await back.isVisible())) await workbench.command('Notifications: Show Notifications');
            await back.click();
            await eventually('no file', async () => runs().length === 0);
            await eventually('the ticks again', () => ticked(/^Sand plate/));
            await page.getByText('4 of 4 steps done').waitFor();
        });
    });

    it('is written below the recipe where the settings say so, and comes back with undo and redo', async () => {
        const workbench = await session.open();
        const { page } = workbench;
        const settings = join(session.workshop, '.vscode', 'settings.json');
        writeFileSync(join(session.workshop, 'quick.kerf'), quick);
        await tickAll();
        mkdirSync(join(session.workshop, '.vscode'), { recursive: true });
        writeFileSync(settings, '{ "kerfbook.checklist.writeRuns": "belowRecipe" }');
        try {
            await new Promise((resolve) => setTimeout(resolve, 8000)); // nothing on the page shows that it was read
            await finish('Below.');
            await eventually('the run in the file', async () => file().includes(`run quick ${day()} {`));
            await eventually('no tick', async () => !(await ticked(/^Engrave pocket/)));
            await workbench.goToLine('quick.kerf', 3);
            await page.keyboard.press('Control+z');
            await eventually('the ticks', () => ticked(/^Engrave pocket/));
            await page.keyboard.press('Control+Shift+z');
            await eventually('no tick again', async () => !(await ticked(/^Engrave pocket/)));
            await page.keyboard.press('Control+z');
            await eventually('the ticks again', () => ticked(/^Sand plate/));
        } finally {
            rmSync(settings, { force: true });
        }
    });

    async function finish(note: string): Promise<void> {
        const workbench = await session.open();
        await workbench.command('Kerfbook: Finish the Run');
        await workbench.page.locator('.quick-input-title', { hasText: 'Finish the run of Quick plate' }).waitFor();
        await workbench.page.locator('.quick-input-widget input[type="text"]').fill(note);
        await workbench.page.keyboard.press('Enter');
    }
});
