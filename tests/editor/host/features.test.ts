import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { fileIn, open, placeOf, until } from './until';

/** What the editor itself gets from the language, asked for as its own views ask. */
describe('the editor, for a recipe,', () => {
    it('shows lenses above each recipe whose commands take it', async () => {
        const { document } = await open('tray-variants.kerf');
        const lenses = await until('the lenses of both variants', async () => {
            const all = await ask<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 50);
            const acting = all.filter(({ command }) => command?.command !== '');
            return acting.length >= 4 && all.some(({ command }) => /attended/.test(command?.title ?? '')) && acting;
        });
        const view = lenses.filter(({ command }) => command?.title === 'View')[1]!.command!;
        assert.deepEqual(view.arguments, [document.uri.toString(), 'class-tray']);
        await vscode.commands.executeCommand(view.command, ...view.arguments!);
        await until('the bench view of the second variant', () =>
            tabs().some(({ label }) => label === 'Bench: Heron tray of the evening class'),
        );
        const write = lenses.find(({ command }) => command?.title === 'Write files')!.command!;
        void vscode.commands.executeCommand(write.command, ...write.arguments!);
        await until(
            'the files of the first variant',
            async () =>
                await vscode.workspace.fs.stat(fileIn('made/large-tray/job-sheet.html')).then(
                    () => true,
                    () => undefined,
                ),
        );
        await vscode.workspace.fs.delete(fileIn('made/large-tray'), { recursive: true });
    });

    it('finds things by name over all files', async () => {
        const found = await until('the search', async () => {
            const all = await ask<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'walnut-12');
            return all.length > 0 && all;
        });
        assert.match(found[0]!.location.uri.path, /workshop\.kerf$/);
    });

    it('widens what is selected from the word to the file', async () => {
        const { document } = await open('heron-tray.kerf');
        const [widening] = await ask<vscode.SelectionRange[]>('vscode.executeSelectionRangeProvider', document.uri, [
            placeOf(document, 'depth 0.54 mm', 7),
        ]);
        const texts: string[] = [];
        for (let each: vscode.SelectionRange | undefined = widening; each !== undefined; each = each.parent) {
            texts.push(document.getText(each.range));
        }
        assert.ok(texts.includes('0.54 mm') && texts.includes('depth 0.54 mm'), texts.join(' | '));
        assert.ok(texts.some((text) => text.startsWith('engrave pocket on tray {') && text.endsWith('}')));
    });

    it('shows the colours of resins and writes one that was picked', async () => {
        const { document } = await open('workshop.kerf');
        const colours = await ask<vscode.ColorInformation[]>('vscode.executeDocumentColorProvider', document.uri);
        const blue = colours.find(({ range }) => document.getText(range) === '#1d5f7a');
        assert.ok(blue, colours.map(({ range }) => document.getText(range)).join());
        assert.ok(Math.abs(blue.color.blue - 0x7a / 255) < 0.01);
        const [shown] = await ask<vscode.ColorPresentation[]>(
            'vscode.executeColorPresentationProvider',
            new vscode.Color(1, 0, 0, 1),
            {
                uri: document.uri,
                range: blue.range,
            },
        );
        assert.equal(shown?.label.toLowerCase(), '#ff0000');
    });

    it('lays out a file, and a line as its brace is typed', async () => {
        const document = await vscode.workspace.openTextDocument({
            language: 'kerfbook',
            content: 'board a {\n      wood black-walnut\n      }\n',
        });
        const options = { tabSize: 2, insertSpaces: true };
        const whole = await ask<vscode.TextEdit[]>('vscode.executeFormatDocumentProvider', document.uri, options);
        assert.ok(whole.length >= 2);
        const typed = await ask<vscode.TextEdit[]>(
            'vscode.executeFormatOnTypeProvider',
            document.uri,
            new vscode.Position(2, 7),
            '}',
            options,
        );
        assert.deepEqual(
            typed.map(({ range }) => range.end.line),
            [2],
        );
    });

    it('colours names, folds blocks and lists its parts', async () => {
        const { document } = await open('heron-tray.kerf');
        const tokens = await ask<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document.uri);
        assert.ok(tokens.data.length > 5 * 20);
        const folds = await ask<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider', document.uri);
        assert.ok(folds.length > 5);
        const [recipe] = await ask<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri);
        assert.ok(recipe!.children.some(({ name }) => /pocket/.test(name)));
    });

    it('offers refactorings and the mending of everything by their kinds', async () => {
        const { document } = await open('heron-tray.kerf');
        const at = placeOf(document, 'depth 0.54 mm', 7);
        const kinds = async (kind: vscode.CodeActionKind): Promise<string[]> => {
            const range = new vscode.Range(at, at);
            const found = await ask<vscode.CodeAction[]>('vscode.executeCodeActionProvider', document.uri, range, kind.value);
            return found.map((action) => action.kind?.value ?? '');
        };
        const refactors = await until('a refactoring', async () => {
            const all = await kinds(vscode.CodeActionKind.Refactor);
            return all.length > 0 && all;
        });
        assert.ok(
            refactors.every((kind) => kind.startsWith('refactor')),
            refactors.join(),
        );
    });

    it('takes `art` along when its folder gets another name', async () => {
        const { document } = await open('gate-sign.kerf');
        const move = async (from: string, to: string): Promise<void> => {
            const edit = new vscode.WorkspaceEdit();
            edit.renameFile(fileIn(from), fileIn(to));
            assert.ok(await vscode.workspace.applyEdit(edit));
        };
        await move('art', 'drawings');
        try {
            await until('the new path', () => document.getText().includes('art sign "drawings/gate-sign.svg"'));
        } finally {
            await move('drawings', 'art');
        }
        await until('the old path', () => document.getText().includes('art sign "art/gate-sign.svg"'));
    });
});

async function ask<T>(command: string, ...args: unknown[]): Promise<T> {
    return vscode.commands.executeCommand<T>(command, ...args);
}

function tabs(): readonly vscode.Tab[] {
    return vscode.window.tabGroups.all.flatMap((group) => group.tabs);
}
