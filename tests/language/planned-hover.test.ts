import { EmptyFileSystem, URI } from 'langium';
import { expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { createKerfServices } from '../../language/module';
import type { PlannedStep } from '../../language/planned/planned-step';

const step = 'engrave pocket on tray {\n    circle 9 mm\n    depth 0.5 mm\n    air off\n  }';
const text = `recipe thing {\n  blank tray { size 9 x 9 mm }\n  ${step}\n}\n`;
const hints = [
    { at: 'wish', label: '± 0.03 mm', tooltip: 'Settings: 80 % at 461 mm/s\nLaser: 4 min' },
    { at: 'wish', label: '80 % at 461 mm/s', tooltip: 'Settings: 80 % at 461 mm/s\nLaser: 4 min' },
] as const;
const plan: PlannedStep = {
    recipe: 'thing',
    text: step,
    figures: { whole: { uri: '', offset: 0, length: 0 }, pins: [], guess: false, hints },
};

/** What is said at `<|>`, once a file was planned. */
async function hover(marked: string): Promise<string> {
    const { kerf, shared } = createKerfServices(EmptyFileSystem, { planned: () => [plan] });
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const document = shared.workspace.LangiumDocumentFactory.fromString(
        marked.replace('<|>', ''),
        URI.parse('file:///shop/r.kerf'),
    );
    shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build([document], { validation: false });
    const said = await kerf.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(marked.indexOf('<|>')),
    });
    return (said?.contents as MarkupContent | undefined)?.value ?? '';
}

const solved = '**As planned:** ± 0.03 mm, 80 % at 461 mm/s\n\n- Settings: 80 % at 461 mm/s\n- Laser: 4 min';

it.each(['de<|>pth 0.5', 'depth 0.<|>5', 'eng<|>rave pocket', 'engrave poc<|>ket'])(
    'at %s stands what was solved',
    async (at) => {
        expect(await hover(text.replace(at.replace('<|>', ''), at))).toContain(solved);
    },
);

it.each(['circ<|>le 9', 'a<|>ir off', 'on tr<|>ay'])('at %s it does not', async (at) => {
    expect(await hover(text.replace(at.replace('<|>', ''), at))).not.toContain('As planned');
});

it('nor once the step says something else', async () => {
    expect(await hover(text.replace('depth 0.5', 'de<|>pth 0.6'))).not.toContain('As planned');
});
