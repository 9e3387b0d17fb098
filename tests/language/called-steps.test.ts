import type { LangiumDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { textFindings } from '../../language/text-findings';
import { openAt } from './cursor';
import { open, services } from './services';

const base = `board oak { wood white-oak  thickness 12 mm }
recipe tray "Tray" {
  blank lid { of oak  size 300 x 200 mm  grain along width }
  engrave pocket on lid { circle 30 mm  depth 1 mm }
  sand lid called coarse { take 0.1 mm  grits 120 }
  sand lid called fine { take 0.05 mm  grits 240 }
  wait called rest 2 h "it dries"
}
`;
const variant = `use "called-tray.kerf"
recipe large based on tray {
  sand lid called fine { grits 320 }
  without sand lid called coarse
  after sand lid called fine { seal lid called fine with shellac }
  before wait called rest { mask lid }
}
recipe larger based on large {
  without seal lid called fine
  sand lid called fine { take 0.1 mm }
}
`;
const home = 'file:///shop/called-tray.kerf';
const away = 'file:///shop/called-variants.kerf';
const at = (marked: string, uri: string) => openAt(marked, uri);

/** The lines of a file that a rename changes, as they are then. */
async function renamed(
    marked: string,
    uri: string,
    newName: string,
    [other, where] = ['', ''],
): Promise<Record<string, string[]>> {
    const { document, at: place } = await at(marked, uri);
    if (other !== '') await open(other, where);
    const edit = await services.lsp.RenameProvider!.rename(document, { ...place, newName });
    const lines: Record<string, string[]> = {};
    for (const [address, changes] of Object.entries(edit?.changes ?? {})) {
        const file = services.shared.workspace.LangiumDocuments.all.find((each) => each.uri.toString() === address)!;
        const text = TextDocument.applyEdits(file.textDocument, changes).split('\n');
        const before = file.textDocument.getText().split('\n');
        lines[address] = text.filter((line, index) => line !== before[index]).map((line) => line.trim());
    }
    return lines;
}

const errors = (document: LangiumDocument) => textFindings(document, services).filter(({ severity }) => severity === 'error');

describe('the name of one step', () => {
    it('is sound as it is used here', async () => {
        expect(errors(await open(base, home))).toEqual([]);
        expect(errors(await open(variant, away))).toEqual([]);
    });

    it('is renamed wherever a variant means it, and no other step of that name is', async () => {
        expect(await renamed(base.replace('called fine', 'called fi<|>ne'), home, 'last', [variant, away])).toEqual({
            [home]: ['sand lid called last { take 0.05 mm  grits 240 }'],
            [away]: [
                'sand lid called last { grits 320 }',
                'after sand lid called last { seal lid called fine with shellac }',
                'sand lid called last { take 0.1 mm }',
            ],
        });
    });

    it('is renamed from where it is used, too', async () => {
        await open(base, home);
        expect(await renamed(variant.replace('wait called rest', 'wait called re<|>st'), away, 'pause')).toEqual({
            [home]: ['wait called pause 2 h "it dries"'],
            [away]: ['before wait called pause { mask lid }'],
        });
        expect(
            await renamed(variant.replace('without sand lid called coarse', 'without sand lid called coa<|>rse'), away, 'rough'),
        ).toEqual({
            [home]: ['sand lid called rough { take 0.1 mm  grits 120 }'],
            [away]: ['without sand lid called rough'],
        });
    });

    it('of a step that a variant puts in is renamed in the variants of that one', async () => {
        await open(base, home);
        expect(await renamed(variant.replace('seal lid called fine', 'seal lid called fi<|>ne'), away, 'first')).toEqual({
            [away]: ['after sand lid called fine { seal lid called first with shellac }', 'without seal lid called first'],
        });
    });

    it('leads to where the step is written, and is found from there', async () => {
        await open(base, home);
        const { document, at: place } = await at(
            variant.replace('after sand lid called fine', 'after sand lid called fi<|>ne'),
            away,
        );
        const links = await services.lsp.DefinitionProvider!.getDefinition(document, place);
        const target = services.shared.workspace.LangiumDocuments.all.find(({ uri }) => uri.toString() === home)!;
        expect(
            links?.map(({ targetUri, targetSelectionRange }) => [targetUri, target.textDocument.getText(targetSelectionRange)]),
        ).toEqual([[home, 'fine']]);
        const context = { includeDeclaration: true };
        const found = await services.lsp.ReferencesProvider!.findReferences(document, { ...place, context });
        expect(found).toHaveLength(4);
        const marked = await services.lsp.DocumentHighlightProvider!.getDocumentHighlight(document, place);
        expect(marked).toHaveLength(3);
    });

    it('is not given twice, nor one that cannot be read', async () => {
        await open(variant, away);
        const { document, at: place } = await at(base.replace('called fine', 'called fi<|>ne'), home);
        const rename = services.lsp.RenameProvider!;
        await expect(rename.rename(document, { ...place, newName: 'coarse' })).rejects.toThrow('already a step called "coarse"');
        await expect(rename.rename(document, { ...place, newName: '2 x' })).rejects.toThrow('letters');
    });
});

describe('an engraving that is renamed', () => {
    it('is renamed in its runs, in files of their own too, whether they say its name or an earlier one', async () => {
        const folder = 'file:///called-runs';
        const recipe = base.replace('engrave pocket on lid {', 'engrave hollow on lid { was pocket ');
        const run = 'run tray 2026-11-28 {\n  hollow depth 1 mm\n}\nrun tray 2026-11-27 {\n  pocket depth 1 mm\n}\n';
        await open(recipe, `${folder}/tray.kerf`);
        const runs = await open(run, `${folder}/runs/a.kerf`);
        expect(errors(runs)).toEqual([]);
        const lines = await renamed(recipe.replace('engrave hollow', 'engrave hol<|>low'), `${folder}/tray.kerf`, 'bed');
        expect(lines[`${folder}/runs/a.kerf`]).toEqual(['bed depth 1 mm', 'bed depth 1 mm']);
        expect(lines[`${folder}/tray.kerf`]).toEqual(['engrave bed on lid { was pocket  circle 30 mm  depth 1 mm }']);
    });
});
