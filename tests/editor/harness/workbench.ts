import type { FrameLocator, Locator, Page } from 'playwright-core';

/** A VS Code window as a person uses it. */
export class Workbench {
    readonly page: Page;
    /** The window opened last: what a person would be looking at when something goes wrong. */
    static latest: Page | undefined;

    constructor(page: Page) {
        this.page = page;
        Workbench.latest = page;
    }

    /** The inside of the bench view: a page in a page in the page. */
    get bench(): FrameLocator {
        return this.page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
    }

    get status(): Locator {
        return this.page.locator('footer.statusbar, .part.statusbar').first();
    }

    /** Opens a file by its name, not by the file tree, which may lie behind another view. */
    async openFile(name: string): Promise<void> {
        await this.ask(name);
        await this.page
            .locator('.quick-input-list .monaco-list-row', { has: this.page.getByText(name, { exact: true }) })
            .first()
            .click();
        // It may stand open in a second group as well.
        await this.page
            .getByRole('tab', { name: new RegExp(`^${name}`), selected: true })
            .first()
            .waitFor();
        await this.page.locator(`.editor-instance .monaco-editor[data-uri$="/${name}"]`).first().waitFor();
    }

    /** A file's row in the explorer, its folder unfolded. */
    async inExplorer(name: string, folder?: string): Promise<Locator> {
        await this.command('File: Focus on Files Explorer');
        const row = this.page.getByRole('treeitem', { name: new RegExp(`^${name.replaceAll('.', '\\.')}`) }).first();
        const around = this.page.getByRole('treeitem', { name: folder ?? name, exact: true }).first();
        const seen = row.or(around).first();
        // The editor's watchers lose a change now and then, and rows out of sight are not drawn: it is asked to look again, from the top.
        const isSeen = await seen.waitFor({ timeout: 8000 }).then(
            () => true,
            () => false,
        );
        if (!isSeen) {
            // Its buttons show under the pointer.
            await this.page.locator('.explorer-folders-view').first().hover();
            await this.page.getByRole('button', { name: 'Refresh Explorer' }).first().click();
            await this.command('File: Focus on Files Explorer');
            await this.page.keyboard.press('Home');
        }
        await seen.waitFor();
        if (!(await row.isVisible())) await around.click();
        await row.waitFor();
        return row;
    }

    async openBench(): Promise<void> {
        await this.page.getByRole('button', { name: 'Open Bench View to the Side' }).first().click();
        await this.bench.getByRole('tablist', { name: /Film strip/ }).waitFor();
    }

    /** Waits until the text shows its cursor at a line, whether or not it has the keyboard. */
    async atLine(line: number): Promise<void> {
        await this.page
            .locator('.active-line-number', { hasText: new RegExp(`^${line}$`) })
            .first()
            .waitFor();
    }

    /** A message that the editor shows, by a part of its words. */
    message(words: string | RegExp): Locator {
        return this.page.locator('.notification-toast .notification-list-item', { hasText: words });
    }

    /** Answers a message with the keyboard alone. */
    async answer(words: string | RegExp, button: string): Promise<void> {
        const answer = this.message(words).getByRole('button', { name: button, exact: true });
        await answer.waitFor();
        await this.commandByKeys('Notifications: Focus Notification Toast');
        for (let tabs = 0; tabs < 10; tabs += 1) {
            if (await answer.evaluate((each) => each === each.ownerDocument.activeElement)) break;
            await this.page.keyboard.press('Tab');
        }
        await this.page.keyboard.press('Enter');
    }

    /** Runs a command by its title. In a window that has just come up the palette may not know it yet, so it is asked again. */
    async command(title: string): Promise<void> {
        const row = this.page.locator('.quick-input-list .monaco-list-row', { hasText: new RegExp(`^${title}`) }).first();
        for (let attempt = 0; attempt < 4; attempt += 1) {
            await this.ask(`>${title}`);
            const clicked = await row.click({ timeout: 10_000 }).then(
                () => true,
                () => false,
            );
            if (clicked) return;
            await this.page.keyboard.press('Escape');
        }
        throw new Error(`The command palette does not know “${title}”.`);
    }

    /** Saves all, and waits until it is on disk: a command is done before the editor has written. */
    async saveAll(): Promise<void> {
        await this.command('File: Save All');
        await this.page.locator('.tab.dirty').first().waitFor({ state: 'hidden' });
    }

    /** Runs a command without the mouse. */
    async commandByKeys(title: string): Promise<void> {
        const row = this.page.locator('.quick-input-list .monaco-list-row.focused', { hasText: title }).first();
        for (let attempt = 0; attempt < 4; attempt += 1) {
            await this.ask(`>${title}`);
            const found = await row.waitFor({ timeout: 10_000 }).then(
                () => true,
                () => false,
            );
            await this.page.keyboard.press(found ? 'Enter' : 'Escape');
            if (found) return;
        }
        throw new Error(`The command palette does not know “${title}”.`);
    }

    /** Opens the command palette with a text. It closes by itself when the focus moves meanwhile, so once more then. */
    private async ask(text: string): Promise<Locator> {
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        for (let attempt = 0; attempt < 5; attempt += 1) {
            await this.page.keyboard.press('F1');
            const filled = await input.fill(text, { timeout: 4000 }).then(
                () => true,
                () => false,
            );
            if (filled) return input;
        }
        throw new Error(`The command palette did not open for “${text}”.`);
    }

    async theme(label: string, bodyClass: string): Promise<void> {
        await this.command('Preferences: Color Theme');
        // The list comes in two halves; High Contrast is in the second.
        await this.page.locator('.quick-input-list .monaco-list-row', { hasText: 'High Contrast' }).first().waitFor();
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        await input.fill(label);
        // The one in focus is taken, which may still be that of the list as it was before.
        await this.page.locator('.quick-input-list .monaco-list-row.focused', { hasText: label }).first().waitFor();
        await input.press('Enter');
        await this.bench.locator(`body.${bodyClass}`).waitFor();
    }

    /** Puts the cursor into the text at a line, and the keyboard with it. */
    goToLine(file: string, line: number): Promise<void> {
        return this.goTo(file, line);
    }

    /** The same, at a column when given; both count from 1. On a busy machine a line can be chosen before it is there, so once more then. */
    async goTo(file: string, line: number, column = 1): Promise<void> {
        const there = this.status.getByText(new RegExp(`^Ln ${line}, Col ${column}$`));
        for (let attempt = 0; attempt < 5; attempt += 1) {
            await this.page
                .getByRole('tab', { name: new RegExp(`^${file}`) })
                .first()
                .click();
            const input = await this.ask(`:${line}:${column}`);
            const row = this.page.locator('.quick-input-list .monaco-list-row', { hasText: `line ${line}` }).first();
            await row.waitFor({ timeout: 5000 }).catch(() => undefined);
            await input.press('Enter');
            await input.waitFor({ state: 'hidden', timeout: 5000 }).catch(() => undefined);
            const arrived = await there.waitFor({ timeout: 3000 }).then(
                () => true,
                () => false,
            );
            if (arrived && (await this.page.locator('.editor-instance .monaco-editor.focused').first().isVisible())) return;
        }
        throw new Error(`The cursor did not come to line ${line}, column ${column} of ${file}.`);
    }
}
