import { strict as assert } from 'node:assert';
import type { Locator } from 'playwright-core';
import { eventually, lineOf, openPanels, openTray, session } from './shared.ts';

describe('the bench view with the keyboard alone', () => {
    before(openTray);

    it('walks along the film strip with the arrow keys', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        await page.getByRole('tab', { name: /^Bench: Heron serving tray/ }).click();
        const tabs = bench.getByRole('tab');
        await tabs.last().focus();
        await page.keyboard.press('Home');
        assert.equal(await focused(tabs.first()), true);
        await page.keyboard.press('ArrowRight');
        assert.equal(await focused(tabs.nth(1)), true);
        assert.equal(await tabs.nth(1).getAttribute('aria-selected'), 'true');
        assert.deepEqual(await tabs.evaluateAll((all) => all.filter((tab) => (tab as HTMLElement).tabIndex === 0).length), 1);
        await page.keyboard.press('End');
        assert.equal(await focused(tabs.last()), true);
    });

    it('comes to the picture, zooms it and shows it whole again', async () => {
        const { bench, page } = await session.open();
        const picture = bench.locator('.picture > svg');
        await bench.getByRole('tab').last().focus();
        await page.keyboard.press('Tab');
        assert.equal(await focused(picture), true);
        const scale = async () => (await picture.locator('> g').first().getAttribute('transform')) ?? '';
        const whole = await scale();
        await page.keyboard.press('+');
        assert.notEqual(await scale(), whole);
        const closer = await scale();
        await page.keyboard.press('ArrowRight');
        assert.notEqual(await scale(), closer);
        await page.keyboard.press('0');
        assert.equal(await scale(), whole);
    });

    it('moves the section line and hears where it is', async () => {
        const { bench, page } = await session.open();
        const line = bench.getByRole('slider', { name: 'Section line' });
        await page.keyboard.press('Tab');
        assert.equal(await focused(line), true);
        const before = await line.getAttribute('aria-valuetext');
        await page.keyboard.press('Shift+ArrowDown');
        assert.notEqual(await line.getAttribute('aria-valuetext'), before);
        await session.shot('keyboard-section-line');
    });

    it('reaches every control by Tab and none twice', async () => {
        const { bench, page } = await session.open();
        await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
        await openPanels(bench);
        const body = bench.locator('body');
        // Marked, since what is drawn meanwhile moves the others about.
        const wanted = await body.evaluate((whole) => {
            const stops = [...whole.querySelectorAll<HTMLElement>('button, input, select, summary, [tabindex="0"]')].filter(
                (each) =>
                    each.tabIndex === 0 &&
                    each.closest('details:not([open]) > :not(summary)') === null &&
                    // Of a group Tab comes to the one that is chosen, and the arrows to the others.
                    !each.matches('input[type=radio]:not(:checked)'),
            );
            for (const [index, each] of stops.entries()) each.dataset.stop = String(index);
            return stops.length;
        });
        await bench.locator('[data-stop="0"]').focus();
        const seen = new Set<string>();
        let before = '';
        for (let i = 0; i < 4 * wanted && seen.size < wanted; i += 1) {
            const name = await body.evaluate(
                ({ ownerDocument: { activeElement } }) => (activeElement as HTMLElement).dataset.stop ?? '',
            );
            // A date has fields of its own, which Tab goes through.
            assert.ok(name === '' || name === before || !seen.has(name), `the focus came back after ${seen.size} of ${wanted}`);
            before = name;
            if (name !== '') seen.add(name);
            await page.keyboard.press('Tab');
        }
        const missed = await body.evaluate(
            (whole, reached) =>
                [...whole.querySelectorAll<HTMLElement>('[data-stop]')]
                    .filter((each) => !reached.includes(each.dataset.stop ?? ''))
                    .map(({ outerHTML }) => outerHTML.slice(0, 160)),
            [...seen],
        );
        assert.deepEqual(missed, []);
        assert.equal(seen.size, wanted);
    });

    it('goes to a step in the text with Enter', async () => {
        const workbench = await session.open();
        const step = workbench.bench.locator('.steps').getByRole('button', { name: /^Peel bird/ });
        await step.focus();
        await workbench.page.keyboard.press('Enter');
        await workbench.atLine(lineOf('heron-tray.kerf', 'peel bird'));
        await eventually('the text to have the keyboard', () =>
            workbench.page.locator('.monaco-editor.focused').first().isVisible(),
        );
    });
});

function focused(element: Locator): Promise<boolean> {
    return element.evaluate((each) => each === each.ownerDocument.activeElement);
}
