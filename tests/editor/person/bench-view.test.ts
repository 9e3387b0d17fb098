import { strict as assert } from 'node:assert';
import { eventually, lineOf, session } from './shared.ts';

describe('the bench view', () => {
    it('shows the piece after each step, its facts and its totals', async () => {
        const workbench = await session.open();
        await workbench.openFile('heron-tray.kerf');
        await workbench.openBench();
        const { bench } = workbench;
        await bench.getByRole('heading', { name: 'Heron serving tray' }).waitFor();
        assert.equal(await bench.getByRole('tab').count(), 10);
        await bench.getByText('issue 3 · makes 4').waitFor();
        await bench
            .getByText(/0\.54 mm ±/)
            .first()
            .waitFor();
        assert.match((await bench.getByLabel('Times in all').textContent()) ?? '', /Laser\d.*Hands on\d.*Waiting\d/);
        await bench.getByRole('heading', { name: 'Before you start' }).waitFor();
        await bench
            .locator('.steps .of-caution')
            .getByText(/^The laser runs for \d+ min/)
            .first()
            .waitFor();
    });

    it('opens a frame that is clicked, with the piece that its step works on', async () => {
        const { bench } = await session.open();
        await bench.getByRole('tab', { name: /Engrave relief/ }).click();
        assert.equal(await bench.getByRole('radio', { name: 'bird' }).isChecked(), true);
        await bench.getByText('Engrave relief: burnt through').waitFor();
        await bench.getByRole('radio', { name: 'tray' }).check();
        await bench.getByText(/Engrave pocket: dug out/).waitFor();
    });

    it('leads from a step, and from a number, to its place in the text', async () => {
        const workbench = await session.open();
        await workbench.bench
            .locator('.steps')
            .getByRole('button', { name: /^Sand tray/ })
            .click();
        await workbench.atLine(lineOf('heron-tray.kerf', 'sand tray'));
        await workbench.bench.getByRole('button', { name: /^depth 0\.54 mm/ }).click();
        await workbench.atLine(lineOf('heron-tray.kerf', 'depth 0.54 mm'));
    });

    it('lights the step under the cursor and turns to its frame', async () => {
        const workbench = await session.open();
        await workbench.goToLine('heron-tray.kerf', lineOf('heron-tray.kerf', 'inlay relief'));
        await workbench.bench.locator('.steps > li.lit', { hasText: 'Let relief into pocket' }).waitFor();
        await eventually('the frame to turn', async () => {
            const tab = workbench.bench.getByRole('tab', { name: /Let relief into pocket/ });
            return (await tab.getAttribute('aria-selected')) === 'true';
        });
    });

    it('cuts the section elsewhere when its line is dragged', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        const caption = bench.locator('.section figcaption');
        const before = await caption.textContent();
        const end = bench.getByRole('slider', { name: 'Section line' }).locator('.end');
        // The steps, where the click before this was, can lie below the fold.
        await end.scrollIntoViewIfNeeded();
        const grip = await end.boundingBox();
        await page.mouse.move(grip!.x + 5, grip!.y + grip!.height / 2);
        await page.mouse.down();
        await page.mouse.move(grip!.x + 5, grip!.y - 60, { steps: 5 });
        await page.mouse.up();
        await eventually('another section', async () => (await caption.textContent()) !== before);
    });

    it('says what lies under the pointer, and in a place that is typed', async () => {
        const { bench, page } = await session.open();
        const said = bench.locator('.lies output');
        const picture = await bench.locator('.picture > svg').boundingBox();
        await page.mouse.move(picture!.x + picture!.width / 2, picture!.y + picture!.height / 2, { steps: 3 });
        await said.getByText(/^From the top: /).waitFor();
        await bench.getByRole('spinbutton', { name: 'from the left' }).fill('5');
        await bench.getByRole('spinbutton', { name: 'from the top' }).fill('6');
        await said.getByText(/^From the top: [\d.]+ mm walnut-12\.$/).waitFor();
        assert.equal(await said.getAttribute('aria-live'), 'polite');
        await session.shot('what-lies-there');
    });

    it('turns the relief over into its pocket', async () => {
        const { bench } = await session.open();
        await bench.getByRole('button', { name: 'Turn over and lay in' }).click();
        await bench.getByRole('button', { name: 'Take apart' }).waitFor();
        assert.equal(await bench.getByRole('slider', { name: 'Turning over' }).getAttribute('aria-valuetext'), 'laid in');
        await session.shot('inlay-laid-in');
    });

    it('jumps instead of moving for those who want less motion', async () => {
        const { bench, page } = await session.open();
        await page.emulateMedia({ reducedMotion: 'reduce' });
        const lie = bench.getByRole('slider', { name: 'Turning over' });
        await bench.getByRole('button', { name: 'Take apart' }).click();
        assert.equal(await lie.getAttribute('aria-valuetext'), 'side by side');
        await page.emulateMedia({ reducedMotion: 'no-preference' });
    });

    it('lists the findings of a faulty recipe and explains them', async () => {
        const workbench = await session.open();
        const { bench, page } = workbench;
        // The keyboard is in the bench view; a file would be opened beside it there.
        await page.keyboard.press('Control+1');
        await workbench.openFile('heron-tray-faulty.kerf');
        await workbench.goToLine('heron-tray-faulty.kerf', 11);
        await page.keyboard.press('Control+k');
        await page.keyboard.press('b');
        await bench.getByRole('heading', { name: /Heron tray, everything wrong/ }).waitFor();
        // The worst three lie above the picture, the others behind a button.
        await bench.getByRole('button', { name: /^Show \d+ more/ }).click();
        await bench.getByText(/is not mirrored: turned over/).waitFor();
        assert.ok((await bench.locator('.ring').count()) > 0);
        await session.shot('findings');
        await bench.getByRole('button', { name: 'Explain not-mirrored' }).click();
        await page.getByRole('tab', { name: /Preview not-mirrored/ }).waitFor();
        await page
            .frameLocator('iframe.webview.ready')
            .nth(1)
            .frameLocator('iframe#active-frame')
            .getByRole('heading')
            .first()
            .waitFor()
            .catch(() => undefined);
        await session.shot('explanation');
        await page.keyboard.press('Control+F4');
        await page.getByRole('tab', { name: /^heron-tray\.kerf/ }).click();
    });

    it('asks nothing of the world outside', async () => {
        const outside = session.requests.filter((url) => !/^(https?:\/\/127\.0\.0\.1[:/]|data:|blob:|vscode-)/.test(url));
        assert.deepEqual(
            outside.filter((url) => !/^https:\/\/[^/]+\.vscode-(cdn|resource)\.net\//.test(url)),
            [],
        );
    });

    it('runs no script and fetches nothing but its own', async () => {
        const { bench } = await session.open();
        const ran = await bench.locator('body').evaluate(async (body) => {
            const refused: string[] = [];
            document.addEventListener('securitypolicyviolation', (event) => refused.push(event.effectiveDirective));
            const script = document.createElement('script');
            script.textContent = 'globalThis.smuggled = true';
            const picture = document.createElement('img');
            picture.src = 'https://example.com/picture.png';
            body.append(script, picture);
            await fetch('https://example.com/data').catch(() => undefined);
            await new Promise((resolve) => setTimeout(resolve, 200));
            script.remove();
            picture.remove();
            return { smuggled: 'smuggled' in globalThis, refused: refused.sort() };
        });
        assert.deepEqual(ran, { smuggled: false, refused: ['connect-src', 'img-src', 'script-src-elem'] });
    });
});
