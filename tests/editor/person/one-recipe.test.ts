import { strict as assert } from 'node:assert';
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Workbench } from '../harness/workbench.ts';
import { faultless, themes } from './faults.ts';
import { choose, eventually, session, setTick, step, untickAll } from './shared.ts';

const plate = (name: string, title: string) => `recipe ${name} "${title}" {
  laser shed
  art heron "art/heron.svg" { width 60 mm }
  blank plate { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on plate { art heron  depth 0.3 mm  scan across grain  air off }
  wait 2 h "the smoke clears"
}
`;
const two = `use "workshop.kerf"\n\n${plate('lid', 'Lid of a box')}\n${plate('side', 'Side of a box')}`;
const lineIn = (words: string) => two.split('\n').findIndex((line) => line.startsWith(words)) + 2;

describe('one current recipe', () => {
    let workbench: Workbench;
    const file = (name: string) => join(session.workshop, name);

    beforeEach(async () => {
        rmSync(file('plates.kerf'), { force: true });
        writeFileSync(file('box.kerf'), two);
        workbench = await session.open();
        await workbench.command('View: Close All Editors');
        // It is new, and the list of files to open by name may not have it yet.
        await (await workbench.inExplorer('box.kerf')).dblclick();
        await workbench.page.getByRole('tab', { name: /^box\.kerf/, selected: true }).waitFor();
        await workbench.command('Kerfbook: Focus on Checklist View');
        await workbench.page.getByText(/^(Lid|Side) of a box, issue 1/).waitFor();
        await untickAll(workbench);
    });

    const shows = async (title: string, name: string) => {
        const { bench, page, status } = workbench;
        await bench.getByRole('heading', { name: title }).waitFor();
        await page.getByText(new RegExp(`^${title}, issue 1`)).waitFor();
        await status.getByText(new RegExp(`${name} ·`)).waitFor();
    };

    it('is the same in text, bench view, checklist and status bar, and stays where it is pinned', async () => {
        const { bench, page } = workbench;
        await workbench.goToLine('box.kerf', lineIn('recipe lid'));
        await workbench.openBench();
        await step('by the cursor', async () => {
            await shows('Lid of a box', 'lid');
            await workbench.goToLine('box.kerf', lineIn('recipe side'));
            await shows('Side of a box', 'side');
        });
        await step('by choosing', async () => {
            await bench.getByRole('combobox', { name: 'Recipe' }).selectOption('lid');
            await shows('Lid of a box', 'lid');
            await session.shot('one-recipe');
        });
        await step('by a pin', async () => {
            await workbench.command('Kerfbook: Pin the Current Recipe');
            await workbench.goToLine('box.kerf', lineIn('recipe side'));
            await page.waitForTimeout(500);
            await shows('Lid of a box', 'lid');
            await workbench.command('Kerfbook: Unpin the Current Recipe');
            await shows('Side of a box', 'side');
        });
        await step('for commands while the bench view is in front', async () => {
            await bench.getByRole('heading', { name: 'Side of a box' }).click();
            await page.getByRole('button', { name: 'Write Files for Machine and Bench' }).first().click();
            await eventually('the files', async () => existsSync(file('made/side/job-sheet.html')));
            assert.ok(!existsSync(file('made/lid')), 'the other recipe was written too');
        });
    });

    it('is mended from the bench view, which takes the fix back too', async () => {
        const { bench, page } = workbench;
        const text = () => page.locator('.editor-instance .view-lines').first();
        writeFileSync(file('box.kerf'), two.replace('depth 0.3 mm', 'depth 0.3'));
        await workbench.goToLine('box.kerf', lineIn('recipe lid'));
        await workbench.openBench();
        await bench.getByRole('heading', { name: 'Lid of a box' }).waitFor();
        await bench.getByRole('button', { name: /^1 error/ }).click();
        await bench
            .getByRole('button', { name: /^Fix: / })
            .first()
            .click();
        await text().getByText('0.3 mm').nth(1).waitFor();
        await bench.getByText('Nothing to mend.').waitFor();
        await bench.getByRole('heading', { name: 'Lid of a box' }).click();
        await page.keyboard.press('Control+z');
        await bench.getByRole('button', { name: /^1 error/ }).waitFor();
        assert.equal(await text().getByText('0.3 mm').count(), 1);
    });

    it('shows in the bench view how far its run is, and finishes it there', async () => {
        const { bench, page } = workbench;
        await workbench.goToLine('box.kerf', lineIn('recipe lid'));
        await workbench.openBench();
        await bench.getByRole('heading', { name: 'Lid of a box' }).waitFor();
        await setTick(workbench, /^Engrave pocket/);
        await bench.getByText('1 of 2 steps done, next: Wait 2 h').waitFor();
        await bench.getByRole('tab', { name: /Engrave pocket.*, done/ }).waitFor();
        await setTick(workbench, /^Wait 2 h/);
        await bench.getByRole('tab', { name: /Wait 2 h.*left/ }).waitFor();
        await session.shot('run-in-bench');
        await bench.getByRole('button', { name: 'Finish the Run' }).click();
        // A box whose title is there already takes no key until it is the one in use.
        for (const asked of ['Engrave pocket: depth of pocket', 'Finish the run of Lid of a box']) {
            const box = page.locator('.quick-input-title', { hasText: asked });
            await box.waitFor();
            await eventually(`an answer to ${asked}`, async () => {
                await page.keyboard.press('Enter');
                return box.waitFor({ state: 'hidden', timeout: 2000 }).then(
                    () => true,
                    () => false,
                );
            });
        }
        await bench.getByText('Every step is done.').waitFor({ state: 'hidden' });
        rmSync(file('runs'), { recursive: true, force: true });
    });

    it('says what other passes would cost, where it is asked', async () => {
        const { bench } = workbench;
        await workbench.goToLine('box.kerf', lineIn('recipe lid'));
        await workbench.openBench();
        await bench.getByRole('heading', { name: 'Lid of a box' }).waitFor();
        const ways = bench.getByText('passes to choose from').first();
        await ways.scrollIntoViewIfNeeded();
        await ways.click();
        await bench.getByRole('img', { name: /^Ways to the depth of Engrave pocket/ }).waitFor();
        await bench.getByText(/as planned$/).waitFor();
        for (const { label, name, body } of themes) {
            await workbench.theme(label, body);
            await session.shot(`passes-${name}`);
            await faultless(bench);
        }
        await workbench.theme(themes[0]!.label, themes[0]!.body);
    });

    it('goes on from a depth that was measured after a pass, from the menu of its step', async () => {
        const { page } = workbench;
        await workbench.goToLine('box.kerf', lineIn('recipe lid'));
        await page.getByText(/^Lid of a box, issue 1/).waitFor();
        await page.getByRole('treeitem', { name: /^Engrave pocket/ }).click({ button: 'right' });
        await choose(workbench, 'Measure and Go On…');
        const title = page.locator('.quick-input-title', { hasText: 'Engrave pocket: depth after one pass' });
        await title.waitFor();
        await page.keyboard.type('0.16');
        await eventually('the depth in the text', async () => {
            await page.keyboard.press('Enter');
            const text = page.locator('.editor-instance .view-lines').first();
            return (await text.getByText('reached 0.16 mm after 1').count()) > 0;
        });
        await session.shot('measured-and-goes-on');
        await workbench.command('File: Revert File');
    });

    it('goes with its file, with ticks, bench view and comparison, and is none once the file is gone', async () => {
        const { page, bench, status } = workbench;
        await workbench.goToLine('box.kerf', lineIn('recipe side'));
        await workbench.openBench();
        await shows('Side of a box', 'side');
        await setTick(workbench, /^Wait 2 h/);
        await page.getByText('1 of 2 steps done').waitFor();
        await step('renamed', async () => {
            await (await workbench.inExplorer('box.kerf')).click();
            await page.keyboard.press('F2');
            const input = page.locator('.explorer-item-edited input, .explorer-item input').first();
            await input.fill('plates.kerf');
            await input.press('Enter');
            await eventually('the file', async () => existsSync(file('plates.kerf')) && !existsSync(file('box.kerf')));
            await workbench.command('Kerfbook: Focus on Checklist View');
            await page.getByText(/^Side of a box, issue 1: 1 of 2 steps done/).waitFor();
        });
        await step('still of the text', async () => {
            writeFileSync(
                file('plates.kerf'),
                readFileSync(file('plates.kerf'), 'utf8').replace('Side of a box', 'Side of a chest'),
            );
            await bench.getByRole('heading', { name: 'Side of a chest' }).waitFor();
            await session.shot('renamed-file');
        });
        await step('gone', async () => {
            await workbench.command('View: Close All Editors');
            renameSync(file('plates.kerf'), join(session.workshop, '..', 'plates.kerf'));
            await page.getByText(/^Side of a chest, issue 1/).waitFor({ state: 'hidden' });
            await workbench.openFile('tide-coaster.kerf');
            await status.getByText(/tide-coaster ·/).waitFor();
            rmSync(join(session.workshop, '..', 'plates.kerf'));
        });
    });
});
