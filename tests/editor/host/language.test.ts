import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { fileIn, findings, open, placeOf, until } from './until';

describe('a recipe in the editor', () => {
    it('shows the findings of a faulty one, with their rules and numbers', async () => {
        const editor = await open('heron-tray-faulty.kerf');
        const all = await until('the geometry findings', () => {
            const found = findings(editor.document.uri);
            return found.some(({ code }) => code === 'not-mirrored') && found;
        });
        const notMirrored = all.find(({ code }) => code === 'not-mirrored')!;
        assert.match(notMirrored.message, /cm²/);
        assert.ok(all.some(({ code }) => code === 'off-blank'));
    });

    it('stays silent on a good one', async () => {
        const editor = await open('heron-tray.kerf');
        await until('the plan of the tray', async () => (await hoverText(editor, 'depth 0.54 mm')) !== '');
        assert.deepEqual(
            findings(editor.document.uri).map(({ message }) => message),
            [],
        );
    });

    it('mends a forgotten mirror by its quick fix', async () => {
        const editor = await open('heron-tray.kerf');
        const { document } = editor;
        const line = document.lineAt(placeOf(document, '    mirror\n').line);
        await editor.edit((edit) => edit.delete(line.rangeIncludingLineBreak));
        const finding = await until('the finding', () => findings(document.uri).find(({ code }) => code === 'not-mirrored'));
        const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
            'vscode.executeCodeActionProvider',
            document.uri,
            finding.range,
            undefined,
            50,
        );
        const fix = actions.find(({ title, edit }) => edit !== undefined && /mirror/i.test(title));
        assert.ok(fix?.edit, `no fix among ${actions.map(({ title }) => title).join(', ')}`);
        assert.ok(
            actions.some(({ command }) => command?.command === 'kerfbook.explainFinding'),
            'no explanation offered',
        );
        await vscode.workspace.applyEdit(fix.edit);
        assert.match(document.getText(), /engrave relief on bird \{[^}]*\bmirror\b/);
        await until('the finding to go', () => findings(document.uri).every(({ code }) => code !== 'not-mirrored'));
    });

    it('explains what is under the pointer', async () => {
        const editor = await open('heron-tray.kerf');
        const text = await until('a hover', async () => (await hoverText(editor, 'walnut-12')) || undefined);
        assert.match(text, /black-walnut|12 mm/);
    });

    it('leads from a wood into the built-in stock', async () => {
        const editor = await open('workshop.kerf');
        const [place] = await until('a definition', async () => {
            const found = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
                'vscode.executeDefinitionProvider',
                editor.document.uri,
                placeOf(editor.document, 'black-walnut', 2),
            );
            return found.length > 0 && found;
        });
        const uri = 'targetUri' in place! ? place.targetUri : place!.uri;
        const range = 'targetUri' in place! ? (place.targetSelectionRange ?? place.targetRange) : place!.range;
        assert.equal(uri.scheme, 'kerfbook-stock');
        const stock = await vscode.workspace.openTextDocument(uri);
        assert.equal(stock.languageId, 'kerfbook');
        assert.match(stock.lineAt(range.start.line).text, /^wood black-walnut \{/);
        assert.deepEqual(findings(uri), []);
    });

    it('keeps the finding of one line while another is half written', async () => {
        const editor = await open('heron-tray-faulty.kerf');
        const { document } = editor;
        await until('the findings', () => findings(document.uri).some(({ code }) => code === 'off-blank'));
        const version = document.version;
        await editor.edit((edit) => edit.insert(placeOf(document, '  issue 1'), '  grain alo\n'));
        await until('the new finding', () =>
            findings(document.uri).some(({ range }) => document.getText(range).startsWith('grain')),
        );
        assert.ok(document.version > version);
        // Geometry findings follow those of the text.
        await until('the old finding', () => findings(document.uri).some(({ code }) => code === 'not-mirrored'));
        await vscode.commands.executeCommand('undo');
    });

    it('is checked again after the server has been restarted', async () => {
        const uri = fileIn('heron-tray-faulty.kerf');
        await vscode.commands.executeCommand('kerfbook.restartServer');
        await until('the findings', () => findings(uri).some(({ code }) => code === 'not-mirrored'));
    });
});

async function hoverText(editor: vscode.TextEditor, text: string): Promise<string> {
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        editor.document.uri,
        placeOf(editor.document, text, 1),
    );
    return hovers
        .flatMap(({ contents }) => contents)
        .map((part) => (typeof part === 'string' ? part : part.value))
        .join('\n');
}
