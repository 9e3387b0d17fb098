import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { fileIn, open, placeOf, until } from './until';

describe('coupons and settings in the editor', () => {
    it('makes the files of a coupon, and keeps what was filled in when it makes them again', async () => {
        const uri = fileIn('workshop.kerf');
        await open('workshop.kerf');
        const place = { uri, sheet: 'cherry-06', laser: 'loft' };
        const table = fileIn('made/coupon-cherry-06-loft/coupon.csv');
        // The command ends when its message is closed, which nobody does here.
        void vscode.commands.executeCommand('kerfbook.makeCoupon', place);
        const text = await until('the table', () => textOf(table));
        assert.match(text, /^square,power %,/);
        for (const name of ['coupon.svg', 'coupon.ngc', 'coupon.html', 'coupon.kerf'])
            await until(name, () => textOf(fileIn(`made/coupon-cherry-06-loft/${name}`)));
        await vscode.workspace.fs.writeFile(table, new TextEncoder().encode('mine'));
        await vscode.workspace.fs.delete(fileIn('made/coupon-cherry-06-loft/coupon.svg'));
        void vscode.commands.executeCommand('kerfbook.makeCoupon', place);
        await until('the drawing again', () => textOf(fileIn('made/coupon-cherry-06-loft/coupon.svg')));
        assert.equal(await textOf(table), 'mine');
    });

    it('makes the few squares that tell most, behind those that are measured, in a folder of their own', async () => {
        const uri = fileIn('workshop.kerf');
        await open('workshop.kerf');
        const place = { uri, sheet: 'walnut-12', laser: 'shed', beside: { next: true } };
        void vscode.commands.executeCommand('kerfbook.makeCoupon', place);
        const folder = await until('the folder', async () => {
            const made = await vscode.workspace.fs.readDirectory(fileIn('made')).then(
                (found) => found.map(([name]) => name),
                () => [],
            );
            return made.find((name) => /^coupon-walnut-12-shed-from-\d+$/.test(name));
        });
        const text = await until('the squares', () => textOf(fileIn(`made/${folder}/coupon.kerf`)));
        const first = Number(/\d+$/.exec(folder)![0]);
        assert.match(text, new RegExp(`// burn \\d+ % at .* gives … mm  // square ${first}\n`));
        assert.match(await until('the page', () => textOf(fileIn(`made/${folder}/coupon.html`))), /What these squares bring/);
    });

    it('shows solved figures as hints, pins them, and takes them out again', async () => {
        const { document } = await open('seed-box.kerf');
        const before = document.getText();
        const all = new vscode.Range(0, 0, document.lineCount, 0);
        const labels = async () => {
            const hints = await vscode.commands.executeCommand<vscode.InlayHint[]>(
                'vscode.executeInlayHintProvider',
                document.uri,
                all,
            );
            return hints.map(({ label }) => String(label));
        };
        await until('the hints', async () => (await labels()).some((label) => /^80 % at \d+ mm\/s, pitch 0\.08 mm$/.test(label)));
        await take(document, 'Pin the settings');
        assert.match(document.getText(), /depth 1\/32 in\n {4}power 80 %\n {4}speed \d+ mm\/s\n {4}pitch 0\.08 mm\n/);
        await until('fewer hints', async () => !(await labels()).some((label) => label.includes('pitch')));
        await vscode.commands.executeCommand('undo');
        assert.equal(document.getText(), before);
        await take(document, 'Unpin the settings');
        assert.equal(document.getText(), before.replace('    passes 4\n', ''));
        await vscode.commands.executeCommand('undo');
        assert.equal(document.getText(), before);
    });

    it('tells the fit of a coupon under the cursor', async () => {
        const { document } = await open('workshop.kerf');
        const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
            'vscode.executeHoverProvider',
            document.uri,
            placeOf(document, 'coupon walnut-12', 1),
        );
        const said = hovers.flatMap(({ contents }) => contents).map((part) => (typeof part === 'string' ? part : part.value));
        assert.match(said.join('\n'), /removal energy: .* ± .* J\/mm³/);
    });
});

/** So many actions the editor asks the edits of. */
const withEdits = 50;

/** Takes the code action of that name at the first engraving. */
async function take(document: vscode.TextDocument, title: string): Promise<void> {
    const at = placeOf(document, 'engrave', 1);
    const action = await until(title, async () => {
        const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
            'vscode.executeCodeActionProvider',
            document.uri,
            new vscode.Range(at, at),
            vscode.CodeActionKind.RefactorRewrite.value,
            withEdits,
        );
        return actions.find((each) => each.title.startsWith(title));
    });
    assert.ok(action.edit !== undefined && (await vscode.workspace.applyEdit(action.edit)));
}

async function textOf(uri: vscode.Uri): Promise<string | undefined> {
    try {
        return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
    } catch {
        return undefined;
    }
}
